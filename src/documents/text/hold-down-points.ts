/** Where a panel is held on the router's bed: screws through holes it has anyway, clear of everything the cutter passes. */
import type { Pattern } from '../../derive/nouns.js'
import { distanceToOutline } from '../../maths/outline.js'
import { netOutline } from '../drawing/net-outline.js'

export interface HoldDown {
  readonly x: number
  readonly y: number
}

/** Head of a hold-down screw with its washer, and room beside it. Our choice. m */
export const KEEP_OUT = 0.03
/** One to every so many metres along and across. Common practice, no source. */
const SPREAD = 0.6

/** Bolt holes spread over the panel, each so far from every edge that neither cutter nor spindle nose meets its screw. */
export function holdDownPoints(pattern: Pattern, rows: ReadonlySet<string>, cutter: number): readonly HoldDown[] {
  const net = netOutline(pattern)
  const edges = [...net.contours, ...net.windows.map((w) => w.outline)]
  const { holes } = pattern
  const kept: HoldDown[] = []
  holes.x.forEach((x, i) => {
    if (!rows.has(holes.rows[holes.row[i]])) return
    const y = holes.y[i]
    if (kept.some((k) => Math.hypot(k.x - x, k.y - y) < SPREAD)) return
    if (edges.some((edge) => distanceToOutline(edge, x, y) < KEEP_OUT + 2 * cutter)) return
    kept.push({ x, y })
  })
  return kept
}
