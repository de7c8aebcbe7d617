/** `fit FILE [--joint ID]`: will the holes meet, joint by joint, and what would help. */
import { revisionOf } from '../../definition/revision.js'
import { derive } from '../../derive/index.js'
import { rounded } from '../../documents/json/rounded.js'
import { fitText } from '../../documents/text/fit-text.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'
import { fitOf } from '../studies/fit-of.js'

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
  const stop = new AbortController()
  const onStop = (): void => stop.abort()
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, onStop)
  const told = (line: string): void => {
    if (terminal.isWatched) terminal.err(`\r${line.padEnd(60)}${line === '' ? '\r' : ''}`)
  }
  const study = await fitOf(
    { definition, trials, seed, joint: joint ?? null },
    { signal: stop.signal, onProgress: ({ done, says }) => told(`${done} % ${says}`) },
  ).finally(() => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, onStop)
  })
  told('')
  if (!study) {
    terminal.err('Stopped.')
    return 130 as const
  }
  if (study.notComputed !== null) throw refuse(definition.process === null ? 'process' : 'fit', study.notComputed)
  const coach = { name: definition.coach.name, revision: made.revision }
  if (options.json) terminal.out(json(rounded({ coach, ...study })))
  else terminal.out(fitText(made, study))
  return 0 as const
}
