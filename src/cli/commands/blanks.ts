/** `blanks FILE`: the flat blanks of formed gores and caps: how far each is stretched, how thin it gets, what it is cut from. */
import type { Check } from '../../derive/nouns.js'
import { checksJson } from '../../documents/json/design-json.js'
import { rounded } from '../../documents/json/rounded.js'
import { formatLength } from '../../quantity/format.js'
import type { BlankStudy, FormedBlank } from '../../studies/blanks/nouns.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'
import { list } from '../say-numbers.js'
import { blanksOf } from '../studies/blanks-of.js'

export const blanksCommand: Command<{ readonly json?: boolean; readonly inch?: boolean }> = async (file, options, terminal) => {
  const { definition } = openCoach(file)
  const { coach, ends } = definition
  if (ends.make !== 'formed')
    throw refuse(
      'ends.make',
      `The gores of ${coach.name} are ${ends.make}, bent without stretching: only formed panels need a blank worked out.`,
    )
  const stop = new AbortController()
  const onStop = (): void => stop.abort()
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, onStop)
  const told = (line: string): void => {
    if (terminal.isWatched) terminal.err(`\r${line.padEnd(60)}${line === '' ? '\r' : ''}`)
  }
  const study = await blanksOf(definition, {
    signal: stop.signal,
    onProgress: ({ done, of, says }) => told(`${done + 1} of ${of}  ${says}`),
  }).finally(() => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, onStop)
  })
  told('')
  if (!study) {
    terminal.err('Stopped.')
    return 130
  }
  if (options.json) terminal.out(json(rounded({ coach: { name: coach.name }, ...study, blanks: study.blanks.map(blankJson) })))
  else terminal.out(blanksText(study, coach.name, options.inch === true))
  return study.blanks.some((b) => b.checks.some(failed)) ? 1 : 0
}

const failed = (check: Check): boolean => check.verdict === 'fail'

/** As everything that is printed as JSON: checks without their inner working. */
const blankJson = (blank: FormedBlank): unknown => ({ ...blank, checks: checksJson(blank.checks) })

function blanksText(study: BlankStudy, coach: string, inch: boolean): string {
  const size = (m: number): string => formatLength(m, inch ? 'inch' : 'metric')
  const percent = (x: number): string => `${(100 * x).toFixed(1)} %`
  return [
    `${coach}: blanks of the formed end panels, with their laps, tabs and flanges. Nose and tail are made on one tool set.`,
    ...study.blanks.flatMap((b) => [
      '',
      `${capital(b.says)}: ${size(b.length)} by ${size(b.width)}, ${b.stock === null ? 'larger than any stock sheet' : `from ${b.stock}`}.`,
      `  Serves ${list(b.parts.map((p) => `${p.part}${p.turned !== b.parts[0].turned ? ' (turned over)' : ''}`))}.`,
      `  Stretched ${percent(b.stretch.peak)} at most, at ${b.stretch.says}; ${percent(b.stretch.mean)} on average; it must shrink ${percent(b.shrink)} at its edges.`,
      `  Least thickness ${(b.leastThickness * 1000).toFixed(3)} mm of ${(b.thickness * 1000).toFixed(2)} mm.`,
      `  ${b.springback.says}`,
      ...b.checks.filter((c) => c.verdict !== 'pass').map((c) => `  ${c.verdict.toUpperCase()}  ${c.says}${c.mend ? ` ${c.mend}` : ''}`),
    ]),
    ...study.waiting.flatMap((w) => ['', `${w.part}: ${w.says}`]),
    '',
    ...study.says,
  ].join('\n')
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
