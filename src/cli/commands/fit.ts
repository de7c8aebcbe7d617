/** `fit FILE [--joint ID]`: will the holes meet, joint by joint, and what would help. */
import { revisionOf } from '../../definition/revision.js'
import { derive } from '../../derive/index.js'
import { rounded } from '../../documents/json/rounded.js'
import { fitText } from '../../documents/text/fit-text.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'
import { runFit } from '../run-fit.js'

export interface FitArguments {
  readonly joint?: string
  readonly trials?: number
  readonly seed?: number
  readonly json?: boolean
}

/** Enough for a chance to be within 1.5 % in two cases of three where it is even; common practice, no source. */
const TRIALS = 1000
const SEED = 1

export const fitCommand: Command<FitArguments> = async (file, options, terminal) => {
  const { definition } = openCoach(file)
  const made = { ...derive(definition), revision: revisionOf(definition) }
  const { joint, trials = TRIALS, seed = SEED } = options
  if (joint !== undefined && !made.joints.some((j) => j.id === joint)) {
    const known = made.joints.slice(0, 6).map((j) => j.id)
    throw refuse(
      '--joint',
      `There is no joint ${joint}; there are ${known.join(', ')} and others: run fit without --joint to see them all.`,
      {
        found: joint,
      },
    )
  }
  const study = await runFit({ definition, options: { trials, seed, ...(joint ? { joint } : {}) } }, (percent) => {
    if (terminal.isWatched) terminal.err(`\r${`${percent} % of the trials`.padEnd(40)}`)
  })
  if (terminal.isWatched) terminal.err(`\r${''.padEnd(40)}\r`)
  if (study.notComputed !== null) throw refuse(definition.process === null ? 'process' : 'fit', study.notComputed)
  const coach = { name: definition.coach.name, revision: made.revision }
  if (options.json) terminal.out(json(rounded({ coach, ...study })))
  else terminal.out(fitText(made, study))
  return 0 as const
}
