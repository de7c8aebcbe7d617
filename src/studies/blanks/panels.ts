/** The formed panels of an end that differ: the left half mirrors the right one, the tail mirrors the nose, and all have one cap. */
import { capPart, type End, gorePart } from '../../derive/end-names.js'
import { capPanel, hasCap } from './cap-patch.js'
import { gorePanel } from './gore-patch.js'
import type { Panel } from './panel.js'
import { depthAtEdge, type Shape } from './shape.js'

/** A part made from a panel. */
export interface Serves {
  readonly part: string
  readonly end: End
  /** it is on the other hand from the panel: its azimuths are the panel's with the sign changed */
  readonly mirrored: boolean
  /** seen from outside, its blank is the panel's turned over */
  readonly turned: boolean
}

export interface DistinctPanel {
  readonly panel: Panel
  readonly serves: readonly Serves[]
}

/** Gores from the right joint to the centre line, those of the left that have no twin, and the cap. */
export function distinctPanels(shape: Shape): readonly DistinctPanel[] {
  const gores: { k: number; key: string; mirrored: number[] }[] = []
  for (let k = 1; k <= shape.gores; k++) {
    const twin = gores.find((g) => g.key === keyOf(shape, k, true) && g.k !== k)
    if (twin) twin.mirrored.push(k)
    else gores.push({ k, key: keyOf(shape, k, false), mirrored: [] })
  }
  const both = (name: (end: End) => string, mirrored: boolean): Serves[] =>
    (['nose', 'tail'] as const).map((end) => ({ part: name(end), end, mirrored, turned: mirrored !== (end === 'nose') }))
  return [
    ...gores.map(({ k, mirrored }) => ({
      panel: gorePanel(shape, k),
      serves: [...both((end) => gorePart(end, k), false), ...mirrored.flatMap((m) => both((end) => gorePart(end, m), true))],
    })),
    ...(hasCap(shape) ? [{ panel: capPanel(shape), serves: both(capPart, false) }] : []),
  ]
}

/** What makes a gore the shape it is; alike for two that are each other's mirror image when one is asked `mirrored`. */
function keyOf(shape: Shape, k: number, mirrored: boolean): string {
  const [right, left] = [shape.edges[k - 1], shape.edges[k]]
  const [deepRight, deepLeft] = [depthAtEdge(shape, k, 'right'), depthAtEdge(shape, k, 'left')]
  const figures = mirrored ? [-left, -right, deepLeft, deepRight] : [right, left, deepRight, deepLeft]
  return figures.map((f) => (f + 0).toFixed(9)).join(' ')
}
