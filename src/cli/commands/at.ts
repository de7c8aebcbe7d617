/** `at FILE ADDRESS`: what is at a place on the coach. */
import { type AtPlace, at, type Thing } from '../../checks/at/at.js'
import { revisionOf } from '../../definition/revision.js'
import { derive } from '../../derive/index.js'
import { rounded } from '../../documents/json/rounded.js'
import { formatLength } from '../../quantity/format.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'

export interface AtArguments {
  readonly address: string
  readonly inch?: boolean
  readonly json?: boolean
}

export const atCommand: Command<AtArguments> = (file, { address, inch, ...options }, terminal) => {
  const { definition } = openCoach(file)
  const result = at(derive(definition), address)
  if (!result.ok) throw refuse('address', result.says, { expected: 'an address such as R 5745 WL 1160', found: address })
  if (options.json) {
    terminal.out(
      json(
        rounded({
          coach: { name: definition.coach.name, revision: revisionOf(definition) },
          address: result.found.place.address,
          ...result.found,
        }),
      ),
    )
  } else terminal.out(atText(definition.coach.name, result.found, inch === true))
  return 0
}

function atText(coach: string, found: AtPlace, inch: boolean): string {
  const { place } = found
  const size = (m: number): string => formatLength(m, inch ? 'inch' : 'metric')
  const frames = place.frames.map((f) =>
    f.lies === 'here' ? `at frame ${f.id}` : `${size(f.distance)} ${f.lies === 'forward' ? 'behind' : 'ahead of'} ${f.id}`,
  )
  return [
    `${coach}, ${place.address}`,
    `${place.bay ? `In bay ${place.bay}, ` : ''}${frames.join(', ')}. The skin there is ${size(place.y)} from the centre plane, heading ${((place.heading * 180) / Math.PI).toFixed(1)} deg${place.liningGirth === null ? '' : `; square through it the lining reads g ${size(place.liningGirth)}`}.`,
    ...section('Outside', found.outside, size),
    ...section('Through the skin', found.through, size),
    ...section('Inside', found.inside, size),
  ].join('\n')
}

function section(head: string, things: readonly Thing[], size: (m: number) => string): readonly string[] {
  const lines = things.map((t) => `  ${(t.distance === 0 ? 'here' : size(t.distance)).padStart(11)}  ${t.sentence}`)
  return ['', head, ...(lines.length > 0 ? lines : ['               nothing is derived here'])]
}
