/** The study of meeting holes as CSV, one line a row of fasteners in a joint or of a whole sheet on its frames. Lengths mm, chances 0 to 1. */
import type { Design } from '../../derive/design.js'
import type { Fit, FitStudy } from '../../studies/fit/nouns.js'
import { csvLine } from './csv.js'
import { FIT_CAUTION, helpWords, ROLE_WORDS } from './fit-words.js'
import type { TextOptions } from './heading.js'
import { mmText } from './heading.js'

const COLUMNS = [
  'joint',
  'what',
  'fasteners',
  'layers',
  'clearance mm',
  'chance not placed',
  'chance least squares',
  'chance minimax',
  'to ream',
  'governing error',
  'worst hole out mm',
  'row',
  'fastener',
  'row fasteners',
  'row chance',
  'row to ream',
  'chance pilots drill out',
  'role',
  'reason',
  'helps most',
  'helps next',
]

export function fitCsv(design: Pick<Design, 'definition' | 'revision'>, study: FitStudy, options: TextOptions = {}): string {
  const { coach } = design.definition
  const head = [
    '# Will the holes meet? Joints and whole sheets, most holes to ream first',
    `# coach: ${coach.name} by ${coach.maker}`,
    `# unit number: ${options.unit ?? 'MASTER'}`,
    `# revision: ${design.revision}`,
    `# date: ${options.date ?? coach.date}`,
    ...(options.program ? [`# made by: ${options.program}`] : []),
    `# caution: ${FIT_CAUTION}`,
    ...(study.notComputed === null
      ? [`# trials: ${study.trials}, seed ${study.seed}`, ...study.assumptions.map((a) => `# ${a}`)]
      : [`# not computed: ${study.notComputed}`]),
  ]
  const lines = [...study.joints, ...study.sheets].flatMap(linesOf)
  return [...head, csvLine(COLUMNS), ...lines.map(csvLine)].map((l) => `${l}\n`).join('')
}

const chance = (p: number): string => p.toFixed(4)

function linesOf(fit: Fit): readonly (readonly string[])[] {
  const [cause] = fit.causes
  const [most, next] = fit.helps
  return fit.rows.map((row) => [
    fit.id,
    fit.says,
    String(fit.fasteners),
    String(fit.layers),
    mmText(fit.clearance, 2),
    chance(fit.noFit),
    chance(fit.leastSquares),
    chance(fit.minimax),
    fit.reaming.toFixed(2),
    cause?.cause ?? '',
    cause ? mmText(cause.size, 2) : '',
    row.row,
    row.fastener,
    String(row.count),
    chance(row.chance),
    row.reaming.toFixed(2),
    chance(row.pilots),
    ROLE_WORDS[row.role],
    row.reason,
    most ? helpWords(most) : '',
    next ? helpWords(next) : '',
  ])
}
