/** A wrapped end: its sheets, the skin they make, and a ground whose mid ribs follow them. */
import type { WrappedGoreFacts } from '../nouns.js'
import type { Ground } from './ground.js'
import { type RibCurve, ribCurve } from './rib-curve.js'
import type { EndSkin } from './skin.js'
import { wrappedFacts } from './wrapped-facts.js'
import { wrappedOuter } from './wrapped-outer.js'
import { type LaidSheet, laidSheets } from './wrapped-parts.js'
import { type Cuts, cutsOf, wrappedRib, wrappedSkin } from './wrapped-skin.js'
import { type GoreSheet, type WrappedGore, wrappedGores } from './wrapped-strip.js'

export interface Wrapped {
  readonly gores: readonly WrappedGore[]
  readonly cuts: Cuts
  readonly ground: Ground
  readonly skin: EndSkin
  /** curve of gore `number`'s mid rib, `depth` m inside the skin's outer face */
  readonly laid: ReadonlyMap<GoreSheet, LaidSheet>
  readonly facts: readonly WrappedGoreFacts[]
  readonly midRib: (number: number, depth: number) => RibCurve
}

export function wrappedEnd(lofted: Ground): Wrapped {
  const gores = wrappedGores(lofted)
  const cuts = cutsOf()
  const midRib = (number: number, depth: number): RibCurve => {
    const phi = lofted.mids[number - 1]
    const gore = gores[number - 1]
    return gore.sheet ? wrappedRib(lofted, { ...gore, sheet: gore.sheet }, cuts, phi, depth) : ribCurve(lofted.loft, phi, depth)
  }
  const ground: Ground = { ...lofted, midCurves: lofted.mids.map((_, i) => midRib(i + 1, 0)), outer: wrappedOuter(lofted, gores, cuts) }
  return {
    gores,
    cuts,
    ground,
    skin: wrappedSkin(ground, gores, cuts),
    laid: laidSheets(ground, gores, cuts),
    facts: wrappedFacts(ground, gores),
    midRib,
  }
}
