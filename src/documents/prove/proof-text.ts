/** A proof as plain text for a terminal or a letter, and its differences as CSV. Millimetres. */
import type { Compared, ProveReport } from '../../checks/prove/nouns.js'
import { csvLine } from '../text/csv.js'
import { mmText } from '../text/heading.js'

export const VERDICT_WORDS: Readonly<Record<ProveReport['verdict'], string>> = {
  agrees: 'AGREES',
  disagrees: 'DISAGREES',
  undecided: 'UNDECIDED: ONE MORE HOLE',
}

const off = (metres: number | null): string => (metres === null ? '' : mmText(metres, 3))

/** Worst first; holes that are not ours before all. */
export function worstFirst(compared: readonly Compared[]): readonly Compared[] {
  const size = (c: Compared): number => c.distance ?? Infinity
  return [...compared].sort((a, b) => (size(a) === size(b) ? a.line - b.line : size(b) - size(a)))
}

function columns(lines: readonly (readonly string[])[]): readonly string[] {
  const widths = lines[0].map((_, i) => Math.max(...lines.map((l) => l[i].length)))
  return lines.map((l) =>
    l
      .map((cell, i) => (i < 2 ? cell.padEnd(widths[i]) : cell.padStart(widths[i])))
      .join('  ')
      .trimEnd(),
  )
}

/** `most` lines of the table; all when absent. */
export function proofText(report: ProveReport, most = Number.POSITIVE_INFINITY): string {
  const head = [
    `Proof of ${report.part}, ${report.face}, revision ${report.revision}, on the list ${report.list}`,
    `${VERDICT_WORDS[report.verdict]} at ${mmText(report.tolerance, 2)} mm`,
    '',
    ...report.summary,
  ]
  if (!report.best) return `${head.join('\n')}\n`
  const sorted = worstFirst(report.best.compared)
  const lines = sorted
    .slice(0, most)
    .map((c) => [c.label, c.hole ?? 'not ours', off(c.dx), off(c.dy), off(c.distance), c.within ? '' : 'outside'])
  const more = sorted.length > lines.length ? [`and ${sorted.length - lines.length} more, each closer than these`] : []
  return `${[...head, '', ...columns([['listed', 'ours', 'dx mm', 'dy mm', 'off mm', ''], ...lines]), ...more].join('\n')}\n`
}

/** Every listed hole in the list's order; x and y where the list puts it in our axes, then list minus ours. */
export function proofCsv(report: ProveReport): string {
  const head = ['line', 'listed', 'ours', 'x mm', 'y mm', 'dx mm', 'dy mm', 'off mm', 'within']
  const lines = (report.best?.compared ?? []).map((c) => [
    String(c.line),
    c.label,
    c.hole ?? '',
    mmText(c.at[0]),
    mmText(c.at[1]),
    off(c.dx),
    off(c.dy),
    off(c.distance),
    c.within ? 'yes' : 'no',
  ])
  const missing = report.missing.map((m) => ['', 'missing from the list', m.hole, mmText(m.x), mmText(m.y), '', '', '', 'no'])
  return [head, ...lines, ...missing].map((l) => `${csvLine(l)}\n`).join('')
}
