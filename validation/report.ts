/** Every validation case run, and the report of them as text: the same cases, the same bytes. */
import { ac4313 } from './ac-43-13-1b.js'
import { asmeY145 } from './asme-y14-5.js'
import { blanks } from './blanks.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { channels } from './channels.js'
import { closedForm } from './closed-form.js'
import { curtissP40 } from './curtiss-p-40.js'
import { faa8083 } from './faa-h-8083-31.js'
import { holeFit } from './hole-fit.js'
import { milHdbk5j } from './mil-hdbk-5j.js'
import { navedtra } from './navedtra-14018.js'
import { plates } from './plates.js'
import { ride } from './ride.js'
import { roadRules } from './road-rules.js'
import { strips } from './strips.js'
import { towing } from './towing.js'
import { warmth } from './warmth.js'
import { weight } from './weight.js'

export const FILES: readonly ValidationFile[] = [
  ac4313,
  navedtra,
  faa8083,
  curtissP40,
  milHdbk5j,
  plates,
  asmeY145,
  holeFit,
  warmth,
  closedForm,
  blanks,
  strips,
  towing,
  ride,
  roadRules,
  channels,
  weight,
]

export interface Outcome {
  readonly it: ValidationCase
  readonly ours: number
  readonly pass: boolean
}

export function runAll(files: readonly ValidationFile[] = FILES): readonly Outcome[] {
  return files
    .flatMap((file) => file.cases)
    .map((it) => {
      const ours = it.ours()
      // the last bits of a figure that should be exact are not a difference
      return { it, ours, pass: Math.abs(ours - it.expected) <= it.tolerance + 1e-12 * Math.abs(it.expected) }
    })
}

const LEGEND = [
  '- **R** read in the source itself',
  '- **R2** read in a transcription of the source',
  '- **D** worked out by hand from first principles, independently of the program',
  '- **M** from memory, to be confirmed from the printed source',
]

export function reportText(outcomes: readonly Outcome[]): string {
  const failed = outcomes.filter((each) => !each.pass).length
  const rows = outcomes.map(
    ({ it, ours, pass }) =>
      `| ${it.case} | ${it.source}, ${it.at} | ${it.status} | ${figure(it.expected)} ${it.unit} | ${figure(ours)} ${it.unit} | ${difference(it.expected, ours)} | ${pass ? 'pass' : '**FAIL**'} |`,
  )
  return [
    '# Validation',
    '',
    `Outside figures against what the program computes: ${outcomes.length} cases, ${outcomes.length - failed} pass, ${failed} fail. Written by \`npm run validation\`.`,
    '',
    'A pass says that the arithmetic agrees with the figure named. It does not say that an allowable is current or that it fits your joint.',
    '',
    'How far each figure has been verified:',
    '',
    ...LEGEND,
    '',
    '| case | source | status | expected | ours | difference | verdict |',
    '|---|---|---|---|---|---|---|',
    ...rows,
    '',
    '## Sources',
    '',
    ...FILES.map((file) => `- ${file.bibliography}`),
    '',
  ]
    .join('\n')
    .replace(/ +\|/g, ' |')
}

/** Seven figures: enough to see any difference that matters, too few to show another machine's last bit. */
function figure(value: number): string {
  const rounded = Number(value.toPrecision(7))
  return String(rounded)
}

function difference(expected: number, ours: number): string {
  const share = expected === 0 ? ours : (ours - expected) / Math.abs(expected)
  return Math.abs(share) < 1e-9 ? '0' : `${share > 0 ? '+' : ''}${Number((share * 100).toPrecision(2))} %`
}
