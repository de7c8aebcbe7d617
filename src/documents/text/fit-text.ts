/** The study of meeting holes as a person reads it on a screen: one joint in full, or every joint on a line. */
import type { Design } from '../../derive/design.js'
import type { Cause, Fit, FitStudy } from '../../studies/fit/nouns.js'
import { lengthWords } from '../drawing/units.js'
import { chanceWords, FIT_CAUTION, helpWords, ROLE_WORDS, reamWords } from './fit-words.js'

const CAUSES: Readonly<Record<Cause, string>> = {
  punching: 'punching',
  warmth: 'warmth',
  drift: 'drift along the sheet',
  thickness: 'thickness',
  jig: 'setting of the jig',
}

/** What would print as nothing is left out, m. */
const LEAST = 0.000005

export function fitText(design: Pick<Design, 'definition' | 'revision'>, study: FitStudy): string {
  const { coach } = design.definition
  const head = `${coach.name}, revision ${design.revision}. Will the holes meet?`
  if (study.notComputed !== null) return [head, `Not computed. ${study.notComputed}`].join('\n')
  const whole = study.joints.length === 1
  return [
    `${head} ${study.trials} trials, seed ${study.seed}.`,
    ...(whole ? [] : ['', line(['to ream', 'of', 'not placed', 'centred', 'best', 'holes', 'joint'])]),
    ...study.joints.flatMap((fit) => (whole ? ['', ...inFull(fit)] : [joint(fit)])),
    ...(study.sheets.length > 0 ? ['', 'Whole sheets on their frames'] : []),
    ...study.sheets.map(joint),
    '',
    ...study.assumptions,
    FIT_CAUTION,
  ].join('\n')
}

const WIDTHS = [8, 5, 12, 12, 12]
const line = (cells: readonly string[]): string =>
  `${cells
    .slice(0, 5)
    .map((c, i) => c.padStart(WIDTHS[i]))
    .join(' ')}  ${(cells[5] ?? '').padEnd(25)} ${cells[6] ?? ''}`

function joint(fit: Fit): string {
  const roles = [...new Set(fit.rows.map((r) => ROLE_WORDS[r.role]))].join(', ')
  const { reaming, fasteners, noFit, leastSquares, minimax } = fit
  return line([reamWords(reaming), String(fasteners), ...[noFit, leastSquares, minimax].map(chanceWords), roles, `${fit.id}: ${fit.says}`])
}

function inFull(fit: Fit): readonly string[] {
  return [
    `${fit.id}: ${fit.says}. ${fit.fasteners} fasteners through ${fit.layers} layers at most; placed one at a time: ${fit.bodies.join(', ')}.`,
    `Every fastener goes in: ${chanceWords(fit.noFit)} with nothing moved, ${chanceWords(fit.leastSquares)} with each sheet centred, ${chanceWords(fit.minimax)} at the best placement there is. ${reamWords(fit.reaming)} holes to ream, centred.`,
    `The worst hole is put out, once in twenty coaches, by ${fit.causes
      .filter((c) => c.size >= LEAST)
      .map((c) => `${lengthWords(c.size, 'metric', 1)} (${CAUSES[c.cause]})`)
      .join(', ')}.`,
    ...fit.rows.map((r) => `${r.row}: ${ROLE_WORDS[r.role]}. ${r.reason}`),
    'What would help, best first:',
    ...fit.helps.map((h) => `  ${helpWords(h)}`),
  ]
}
