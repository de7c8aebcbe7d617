import { type Development, developed } from '../../maths/development.js'
import type { OpeningShape } from './opening-shape.js'

/** A stretch of a member and what it stops at, at either end. */
export interface Stretch {
  readonly from: number
  readonly to: number
  readonly fromMark: string
  readonly toMark: string
}

/** A stretch less gaps; what is left shorter than the least stub is not made. */
export function lessGaps(whole: Stretch, gaps: readonly { from: number; to: number; id: string }[], least: number): Stretch[] {
  const out: Stretch[] = []
  let at = whole.from
  let mark = whole.fromMark
  for (const gap of gaps) {
    if (gap.to <= at || gap.from >= whole.to) continue
    if (gap.from - at >= least) out.push({ from: at, to: gap.from, fromMark: mark, toMark: gap.id })
    at = Math.max(at, gap.to)
    mark = gap.id
  }
  if (whole.to - at >= least) out.push({ from: at, to: whole.to, fromMark: mark, toMark: whole.toMark })
  return out
}

/** A straight-sided cut across a strip, so that a severed frame is drawn and measured like any other cut plate. */
export function severed(skin: Development, whole: [number, number], stretches: readonly Stretch[], x0: number, x1: number): OpeningShape[] {
  const cuts: OpeningShape[] = []
  let at = whole[0]
  const add = (from: number, to: number, id: string): void => {
    if (to - from < 1e-9) return
    cuts.push({
      id,
      says: id,
      surface: 'wheel',
      side: 'centre',
      x0: x0 - 1,
      x1: x1 + 1,
      v0: developed(skin, from),
      v1: developed(skin, to),
      corner: 0,
      definition: null,
    })
  }
  for (const s of stretches) {
    add(at, s.from, s.fromMark)
    at = s.to
  }
  add(at, whole[1], stretches.length > 0 ? stretches[stretches.length - 1].toMark : 'all')
  return cuts
}
