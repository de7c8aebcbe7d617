/**
 * The gores of an end, bent over their ribs without stretching: gore by gore as the definition places them, placed to deviate
 * equally, and as many as it takes to stay within a distance; with what each costs. Heavy: seconds, so not part of derive.
 */

import { edgeAzimuths } from '../../derive/end-names.js'
import type { Ground } from '../../derive/ends/ground.js'
import { wrapRadius } from '../../derive/ends/wrap.formulas.js'
import type { Derived } from '../../derive/index.js'
import { findAlloy } from '../../tables/alloys.js'
import { costOf, type GoreCost } from './cost.js'
import { factsOf, type Inside, insideOf, jointKink, type Kink, type Panel, panelBetween, seamKink } from './panel.js'
import { fewestGores, insideBetween, type Placement, placeGores } from './placement.js'

export interface GoreFinding {
  readonly gore: number
  readonly width: number
  /** null where it cannot be bent; then `refused` says why and where */
  readonly inside: Inside | null
  readonly refused: string | null
  /** largest fall of a ruling from one seam to the other, and smallest radius it is bent to, m */
  readonly drop: number | null
  readonly bend: number | null
  readonly rulings: number
}

export interface GoreLayout {
  readonly says: string
  readonly seams: readonly number[]
  readonly gores: readonly GoreFinding[]
  readonly kinks: readonly (Kink & { readonly seam: number })[]
  /** against the barrel, on the right */
  readonly joint: Kink | null
  /** the most any gore lies inside the loft, m; null where one cannot be bent */
  readonly inside: number | null
  readonly cost: GoreCost
}

export interface GoreStudy {
  readonly make: 'formed' | 'wrapped'
  /** smallest radius the end skin springs back from, m */
  readonly elastic: number
  readonly within: number
  readonly now: GoreLayout
  readonly even: GoreLayout
  /** null where more gores than anybody rivets would be wanted */
  readonly enough: GoreLayout | null
}

export interface GoreStudyOptions {
  /** how many gores to place evenly; the definition's count unless told */
  readonly gores?: number
  /** how far inside the loft a gore may lie, m; the definition's unless told */
  readonly within?: number
  readonly onProgress?: (share: number) => void
}

/** The gores as the definition places them only: quick enough for every packet. */
export function goresAsPlaced(derived: Derived): Pick<GoreStudy, 'make' | 'elastic' | 'within' | 'now'> {
  const { ground } = derived.endSections.local
  const { ends } = derived.definition
  return Object.freeze({
    make: ends.make,
    elastic: elasticRadius(ends.skin.alloy, ends.skin.thickness.value),
    within: ends.within,
    now: layoutOf(ground, ends.seams, 'as the definition places them'),
  })
}

export function goreStudy(derived: Derived, options: GoreStudyOptions = {}): GoreStudy {
  const { ground } = derived.endSections.local
  const { ends } = derived.definition
  const within = options.within ?? ends.within
  const tell = options.onProgress ?? (() => undefined)
  const inside = insideBetween(ground)
  const placedNow = goresAsPlaced(derived)
  const { now } = placedNow
  tell(0.1)
  const even = placeGores(inside, options.gores ?? ground.gores, now.inside ?? 0.03)
  tell(0.4)
  const enough = fewestGores(inside, within)
  tell(0.9)
  const study: GoreStudy = {
    ...placedNow,
    within,
    even: placed(ground, even, 'placed to deviate equally'),
    enough: enough && placed(ground, enough, `as many as stay within ${mm(within)} mm`),
  }
  tell(1)
  return Object.freeze(study)
}

const placed = (ground: Ground, placement: Placement, says: string): GoreLayout => layoutOf(ground, placement.seams, says)
const mm = (metres: number): string => (metres * 1000).toFixed(1)

function elasticRadius(alloy: string, thickness: number): number {
  const found = findAlloy(alloy, thickness)
  if (!found.ok) throw new Error(found.says)
  return wrapRadius.eval({ E: found.row.E.value, t: thickness, F_ty: found.row.Fty.value })
}

function layoutOf(ground: Ground, seams: readonly number[], says: string): GoreLayout {
  const edges = edgeAzimuths(seams)
  // the left half mirrors the right one: panels are bent once and read twice
  const half = Math.ceil((edges.length - 1) / 2)
  const right = edges.slice(1, half + 1).map((left, i) => panelBetween(ground, edges[i], left))
  const findings = right.map((panel, i) => findingOf(ground, panel, i + 1))
  const count = edges.length - 1
  const gores = Array.from({ length: count }, (_, i) => ({ ...findings[i < half ? i : count - 1 - i], gore: i + 1 }))
  const kinks = right.slice(1).flatMap((panel, i) => {
    const kink = seamKink(ground, right[i], panel)
    return kink ? [{ ...kink, seam: i + 1 }] : []
  })
  if (count % 2 === 0) {
    const kink = seamKink(ground, right[half - 1], panelBetween(ground, edges[half], edges[half + 1]))
    if (kink) kinks.push({ ...kink, seam: half })
  }
  const depths = findings.map((f) => f.inside?.depth)
  return {
    says,
    seams,
    gores,
    kinks,
    joint: jointKink(ground, right[0], 'right'),
    inside: depths.every((d) => d !== undefined) ? Math.max(...(depths as number[])) : null,
    cost: costOf(ground, seams),
  }
}

function findingOf(ground: Ground, panel: Panel, gore: number): GoreFinding {
  const { strip } = panel
  const facts = strip.kind === 'developable' ? factsOf(strip) : null
  return {
    gore,
    width: panel.right - panel.left,
    inside: insideOf(ground, panel),
    refused: strip.kind === 'refused' ? strip.says : null,
    drop: facts?.drop.most ?? null,
    bend: facts?.bend?.radius ?? null,
    rulings: strip.kind === 'developable' ? strip.rulings.length : 0,
  }
}
