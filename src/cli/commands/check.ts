/** `check FILE`: every check, worst first. Cautions and what was not checked do not fail a coach; they are said. */
import { design } from '../../checks/index.js'
import type { Check, Verdict } from '../../derive/nouns.js'
import { checksJson } from '../../documents/json/design-json.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { list, marginText } from '../say-numbers.js'

/** Worst first: what fails, what wants an eye, what nobody looked at, then what passes, least margin first. */
const RANK: Readonly<Record<Verdict, number>> = { fail: 0, caution: 1, 'not-checked': 2, pass: 3 }

export function worstFirst(checks: readonly Check[]): readonly Check[] {
  const margin = (c: Check): number => c.margin ?? Number.POSITIVE_INFINITY
  return [...checks].sort((a, b) => RANK[a.verdict] - RANK[b.verdict] || byNumber(margin(a), margin(b)) || (a.id < b.id ? -1 : 1))
}

const byNumber = (a: number, b: number): number => (a === b ? 0 : a - b)

export function countVerdicts(checks: readonly Check[]): Record<Verdict, number> {
  const counts: Record<Verdict, number> = { fail: 0, caution: 0, 'not-checked': 0, pass: 0 }
  for (const c of checks) counts[c.verdict]++
  return counts
}

export function verdictSentence(checks: readonly Check[]): string {
  const n = countVerdicts(checks)
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
        counts: countVerdicts(checks),
        checks: checksJson(checks),
        notCovered: made.notCovered,
      }),
    )
  } else {
    terminal.out(
      [
        `${name}, revision ${made.revision}. ${verdictSentence(checks)}`,
        '',
        ...checks.flatMap(checkLines),
        '',
        ...notCovered(made.notCovered),
      ].join('\n'),
    )
  }
  return failed ? 1 : 0
}

const WORD: Readonly<Record<Verdict, string>> = { fail: 'FAIL', caution: 'caution', 'not-checked': 'not checked', pass: 'pass' }

function checkLines(check: Check): readonly string[] {
  const head = `${WORD[check.verdict].padEnd(11)} ${marginText(check.margin).padStart(8)}  `
  return [`${head}${check.says}`, ...(check.mend && check.verdict !== 'pass' ? [`${' '.repeat(head.length)}${check.mend}`] : [])]
}

function notCovered(what: readonly string[]): readonly string[] {
  return what.length === 0 ? [] : ['Not covered by any check of this version:', ...what.map((each) => `  ${each}`)]
}
