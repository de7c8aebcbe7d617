/** `check FILE`: every check, worst first. Cautions and what was not checked do not fail a coach; they are said. */
import { design } from '../../checks/index.js'
import type { Market } from '../../definition/types.js'
import type { Check, Verdict } from '../../derive/nouns.js'
import { placeWords } from '../../documents/drawing/words.js'
import { checksJson } from '../../documents/json/design-json.js'
import { verdictCounts, worstFirst } from '../../documents/sheets/checks-list.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { list, marginText } from '../say-numbers.js'

export function verdictSentence(checks: readonly Check[]): string {
  const n = verdictCounts(checks)
  const said = [
    ...(n.fail > 0 ? [`${n.fail} fail`] : []),
    ...(n.caution > 0 ? [`${n.caution} to look at with care`] : []),
    ...(n['not-checked'] > 0 ? [`${n['not-checked']} not checked`] : []),
    `${n.pass} pass`,
  ]
  const whole = checks.length === 0 ? 'No checks were made.' : `Of ${checks.length} checks ${list(said)}.`
  return n.fail > 0 ? `${whole} Do not build it as it is.` : whole
}

export const checkCommand: Command<{ readonly json?: boolean }> = (file, options, terminal) => {
  const made = design(openCoach(file).definition)
  const checks = worstFirst(made.checks)
  const failed = checks.some((c) => c.verdict === 'fail')
  const { name } = made.definition.coach
  if (options.json) {
    terminal.out(
      json({
        coach: { name, revision: made.revision },
        verdict: failed ? 'fail' : 'pass',
        counts: verdictCounts(checks),
        checks: checksJson(checks),
        notCovered: made.notCovered,
      }),
    )
  } else {
    terminal.out(
      [
        `${name}, revision ${made.revision}. ${verdictSentence(checks)}`,
        '',
        ...checks.flatMap((c) => checkLines(c, made.definition.coach.market)),
        '',
        ...notCovered(made.notCovered),
      ].join('\n'),
    )
  }
  return failed ? 1 : 0
}

const WORD: Readonly<Record<Verdict, string>> = { fail: 'FAIL', caution: 'caution', 'not-checked': 'not checked', pass: 'pass' }

function checkLines(check: Check, market: Market): readonly string[] {
  const head = `${WORD[check.verdict].padEnd(11)} ${marginText(check.margin).padStart(8)}  `
  const line = (text: string): string => `${' '.repeat(head.length)}${text}`
  if (check.verdict === 'pass') return [`${head}${check.says}`]
  const where = check.places.length === 0 ? [] : [line(`At ${check.places.map((p) => placeWords(p, market)).join(' and ')}.`)]
  return [`${head}${check.says}`, ...where, ...(check.mend ? [line(check.mend)] : [])]
}

function notCovered(what: readonly string[]): readonly string[] {
  return what.length === 0 ? [] : ['Not covered by any check of this version:', ...what.map((each) => `  ${each}`)]
}
