/** Holes the punch's clamps are in the way of: those within the shop's margin of the clamped edge of the blank. */
import type { Pattern } from '../../derive/nouns.js'
import { boundsOf } from '../drawing/view.js'
import { mmText } from './heading.js'

export type ClampedEdge = 'low x' | 'high x' | 'low y' | 'high y'

interface Spot {
  readonly no: number
  readonly x: number
  readonly y: number
}

function holesInClampZone<T extends Spot>(
  pattern: Pick<Pattern, 'outline'>,
  holes: readonly T[],
  edge: ClampedEdge,
  margin: number,
): readonly T[] {
  const { x0, x1, y0, y1 } = boundsOf([pattern.outline])
  const away: Readonly<Record<ClampedEdge, (h: Spot) => number>> = {
    'low x': (h) => h.x - x0,
    'high x': (h) => x1 - h.x,
    'low y': (h) => h.y - y0,
    'high y': (h) => y1 - h.y,
  }
  return holes.filter((h) => away[edge](h) < margin)
}

/** `1-4, 7, 9-12` */
export function numberRuns(numbers: readonly number[]): string {
  const sorted = [...numbers].sort((a, b) => a - b)
  const runs: [number, number][] = []
  for (const n of sorted) {
    const last = runs[runs.length - 1]
    if (last && n === last[1] + 1) last[1] = n
    else runs.push([n, n])
  }
  return runs.map(([a, b]) => (a === b ? `${a}` : `${a}-${b}`)).join(', ')
}

export function clampWords(
  pattern: Pick<Pattern, 'outline'>,
  holes: readonly Spot[],
  edge: ClampedEdge,
  margin: number,
): readonly string[] {
  const near = holesInClampZone(pattern, holes, edge, margin)
  const where = `clamps taken to hold the ${edge} edge, margin ${mmText(margin, 1)} mm`
  if (!near.length) return [`${where}: no hole stands in it`]
  return [
    `caution: ${where}: ${near.length} ${near.length === 1 ? 'hole stands' : 'holes stand'} in it; move the clamps or the sheet before these: ${numberRuns(near.map((h) => h.no))}`,
  ]
}
