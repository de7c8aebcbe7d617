/** `weight FILE`: every load case against every limit, what may still be added where, and what something added would do. */
import { design } from '../../checks/index.js'
import { type Put, roomFor, withAdded } from '../../checks/weight/added.js'
import type { Definition } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import type { WeightDerived } from '../../derive/weight-nouns.js'
import { rounded } from '../../documents/json/rounded.js'
import { weightJson } from '../../documents/json/weight-json.js'
import { weightText } from '../../documents/text/weight-text.js'
import { parseQuantity } from '../../quantity/doors.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'

export interface WeightArguments {
  readonly add?: readonly string[]
  readonly listOnly?: boolean
  readonly inch?: boolean
  readonly json?: boolean
}

export const weightCommand: Command<WeightArguments> = (file, options, terminal) => {
  const { definition } = openCoach(file)
  const coach = options.listOnly ? alone(definition) : definition
  const put = (options.add ?? []).map(readPut)
  const before = weighed(design(coach))
  const made = put.length === 0 ? null : design(withAdded(coach, put))
  const after = made ? weighed(made) : before
  const fails = (made ?? design(coach)).checks.filter((check) => check.id.startsWith('weight.') && check.verdict === 'fail')
  const added = put.map((each, i) => ({ says: (options.add ?? [])[i] as string, mass: each.mass, room: roomFor(before, each) }))
  if (options.json)
    terminal.out(
      json(
        rounded({
          coach: { name: coach.coach.name },
          ...weightJson({ weight: after }),
          added: added.map(({ says, room }) => ({ says, room })),
        }),
      ),
    )
  else
    terminal.out(
      [
        ...weightText(coach.coach.name, after, options.inch ? 'inch' : 'metric', added, made ? before : null),
        ...(fails.length > 0
          ? ['', ...fails.flatMap((check) => [`FAIL ${check.says}`, ...(check.mend ? [`     ${check.mend}`] : [])])]
          : []),
      ].join('\n'),
    )
  return fails.length > 0 ? 1 : 0
}

function alone(definition: Definition): Definition {
  return { ...definition, weight: definition.weight && { ...definition.weight, listOnly: true } }
}

function weighed({ weight, definition }: Design): WeightDerived {
  if ('notComputed' in weight)
    throw refuse('weight', `${definition.coach.name} was not weighed. ${weight.notComputed}`, { expected: 'weight, gear and masses' })
  return weight
}

/** `25 kg@7000,0,500`: mass, then station, buttock line and waterline, in millimetres unless they say. */
function readPut(written: string): Put {
  const wrong = (found: string) =>
    refuse('--add', `--add: expected a mass and its place such as "25 kg@7000,0,500" (station, y, waterline in mm), found ${found}.`, {
      found: written,
    })
  const [kg, where, ...more] = written.split('@')
  const places = where?.split(',') ?? []
  if (kg === undefined || more.length > 0 || places.length !== 3) throw wrong(`"${written}"`)
  const mass = parseQuantity(kg.trim(), 'mass')
  if (!mass.ok) throw wrong(mass.found)
  if (!(mass.value > 0)) throw wrong(`"${kg}", which adds nothing`)
  const [station, y, waterline] = places.map((each) => {
    const text = each.trim()
    const read = parseQuantity(/^-?[\d.]+$/.test(text) ? `${text} mm` : text, 'length')
    if (!read.ok) throw wrong(read.found)
    return read.value
  }) as [number, number, number]
  return { mass: mass.value, station, y, waterline }
}
