/**
 * How far a spot on the skin is from the metal of a plate, measured along the skin, m; 0 where the plate has metal behind it.
 * Exact for members cut through, for rings, and for sheets with openings in them; across a cut that runs out over a plate's
 * edge it is the distance to the cut's own outline.
 */

import { type OpeningShape, signedDistance } from '../../derive/shell/opening-shape.js'
import type { Plate } from '../../derive/shell/plates.js'
import { type Development, developed } from '../../maths/development.js'

/** Station and length along the skin's mid surface. */
export interface Foot {
  readonly x: number
  readonly v: number
}

interface Rectangle {
  readonly x0: number
  readonly x1: number
  readonly v0: number
  readonly v1: number
}

export function distanceToMetal(plate: Plate, skin: Development, foot: Foot): number {
  const whole: Rectangle = { x0: plate.x0, x1: plate.x1, v0: developed(skin, plate.g0), v1: developed(skin, plate.g1) }
  if (plate.ring)
    return Math.max(
      0,
      signedDistance(plate.ring.outer, foot.x, foot.v),
      -signedDistance(plate.ring.inner, foot.x, foot.v),
      toRectangle(whole, foot),
    )
  let pieces: readonly Rectangle[] = [whole]
  const holes: OpeningShape[] = []
  for (const cut of plate.cuts) {
    if (cut.x0 <= whole.x0 && cut.x1 >= whole.x1)
      pieces = pieces.flatMap((p) => [
        { ...p, v1: Math.min(p.v1, cut.v0) },
        { ...p, v0: Math.max(p.v0, cut.v1) },
      ])
    else if (cut.corner === 0 && cut.v0 <= whole.v0 && cut.v1 >= whole.v1)
      pieces = pieces.flatMap((p) => [
        { ...p, x1: Math.min(p.x1, cut.x0) },
        { ...p, x0: Math.max(p.x0, cut.x1) },
      ])
    else holes.push(cut)
  }
  const solid = pieces.filter((p) => p.x1 - p.x0 > 1e-9 && p.v1 - p.v0 > 1e-9)
  const toPiece = Math.min(...solid.map((p) => toRectangle(p, foot)))
  return Math.max(toPiece, ...holes.map((hole) => -signedDistance(hole, foot.x, foot.v)))
}

function toRectangle(r: Rectangle, { x, v }: Foot): number {
  return Math.hypot(Math.max(r.x0 - x, 0, x - r.x1), Math.max(r.v0 - v, 0, v - r.v1))
}
