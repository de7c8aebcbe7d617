/**
 * Proves one of our patterns on a hole list a shop already trusts: the best placement, every difference, the verdict.
 *
 * The verdict is `agrees` only when every listed hole is within tolerance of its own hole of ours and, unless the list is
 * plainly a sample, none of ours is missing from it. It is `undecided` whenever a second placement that pairs the list with
 * other holes fits as well. It does not judge diameters: they are compared and said.
 */

import { canBeTold, tellingHole } from './ask-for.js'
import { holesInExtent } from './extent.js'
import { holeFinder } from './hole-finder.js'
import type { AskFor, Compared, Fitted, HoleList, ListUnit, OurPattern, ProveReport } from './nouns.js'
import { pairDistances } from './pair-distances.js'
import { pairUp } from './pair-up.js'
import type { Points, Rigid } from './rigid.js'
import { fitMinimax, moveX, moveY, toPlacement, worstOver } from './rigid.js'
import type { Found, Ours } from './search.js'
import { searchPlacements } from './search.js'
import { stretchOf } from './stretch.js'
import { summaryOf } from './summary.js'

export interface ProveOptions {
  /** m; 0.3 mm unless told */
  readonly tolerance?: number
  /** true: the list is only some of the holes and leaves nothing missing; guessed when absent */
  readonly sample?: boolean
}

/** Twice the sheared-edge tolerance of a hand shear; common practice, no source. m. */
const CORNER_TOLERANCE = 0.001
/** Nearer than this to a hole of ours, a hole cannot tell two placements apart, m. */
const LEAST_APART = 0.0015
/** A listed hole farther than this from every hole of ours is another hole, not a misplaced one, m. */
const REACH = 0.005
/** A list that lacks more than this share of ours within its extent was never meant to be whole. Our choice. */
const SAMPLE = 0.1
/** When half the list fits nowhere, it is laid as well as it can be by looking wider; the verdict keeps its tolerance. */
const LOOSER = [1, 4, 8] as const
/** Wider than this one hole of a 12 mm pitch is taken for the next, m. */
const LOOSEST = 0.0025
const SCALE: Readonly<Record<ListUnit, number>> = { mm: 0.001, in: 0.0254 }

interface Laid extends Found {
  readonly unit: ListUnit
  readonly list: Points
}

function pointsOf(pairs: readonly (readonly [number, number])[], scale: number): Points {
  return { x: Float64Array.from(pairs, (p) => p[0] * scale), y: Float64Array.from(pairs, (p) => p[1] * scale) }
}

function prepare(pattern: OurPattern): Ours {
  const points = pointsOf(
    pattern.holes.map((h) => [h.x, h.y] as const),
    1,
  )
  const corners = [pattern.outline, ...pattern.cuts].flatMap((o) => o.map((v) => [v[0], v[1]] as const))
  return { points, finder: holeFinder(points), pairs: pairDistances(points), corners: holeFinder(pointsOf(corners, 1)) }
}

/** Fewest misfits, then closest; among those as close to a micrometre, the one a person would try first. */
function plainer(a: Laid, b: Laid): number {
  const micrometres = (f: Laid): number => Math.round(f.rms * 1e6)
  const turn = (f: Laid): number => Math.abs(Math.atan2(f.rigid.s, f.rigid.c))
  return a.misfits - b.misfits || micrometres(a) - micrometres(b) || b.rigid.hand - a.rigid.hand || turn(a) - turn(b) || a.rms - b.rms
}

/** Every placement in every unit the list may be in, best first. */
function placements(list: HoleList, ours: Ours, tolerance: number): readonly Laid[] {
  let allowed = Math.floor((list.readings.length + list.corners.length) / 2)
  const all: Laid[] = []
  // millimetres first: a list in inches read as millimetres is small and falls out at once; the other way round it is too long
  for (const unit of list.unit ? [list.unit] : (['mm', 'in'] as const)) {
    const points = pointsOf(
      list.readings.map((r) => [r.x, r.y] as const),
      SCALE[unit],
    )
    const corners = pointsOf(list.corners, SCALE[unit])
    const found = searchPlacements(
      { list: points, corners, tolerance, cornerTolerance: Math.max(CORNER_TOLERANCE, tolerance), allowed },
      ours,
    )
    for (const f of found) all.push({ ...f, unit, list: points })
    if (found.length) allowed = Math.min(allowed, found[0].misfits)
  }
  return all.filter((f) => f.misfits <= allowed).sort(plainer)
}

function compare(list: HoleList, laid: Laid, ours: Ours, pattern: OurPattern, to: Int32Array, tolerance: number): readonly Compared[] {
  return list.readings.map((reading, i) => {
    const at = [moveX(laid.rigid, laid.list.x[i], laid.list.y[i]), moveY(laid.rigid, laid.list.x[i], laid.list.y[i])] as const
    const j = to[i]
    const mine = { label: reading.label, line: reading.line, at }
    if (j < 0) return { ...mine, hole: null, dx: null, dy: null, distance: null, within: false, diameterDifference: null }
    const dx = at[0] - ours.points.x[j],
      dy = at[1] - ours.points.y[j]
    const distance = Math.hypot(dx, dy)
    const diameterDifference = reading.diameter === null ? null : reading.diameter * SCALE[laid.unit] - pattern.holes[j].diameter
    return { ...mine, hole: pattern.holes[j].id, dx, dy, distance, within: distance <= tolerance, diameterDifference }
  })
}

function fitted(list: HoleList, laid: Laid, ours: Ours, pattern: OurPattern, tolerance: number): Fitted & { readonly to: Int32Array } {
  const to = pairUp(laid.rigid, laid.list, ours.finder, ours.points, REACH)
  const compared = compare(list, laid, ours, pattern, to, tolerance)
  const near = compared.filter((c) => c.distance !== null).map((c) => c.distance!)
  return {
    unit: laid.unit,
    placement: toPlacement(laid.rigid),
    agree: compared.filter((c) => c.within).length,
    of: compared.length,
    rms: near.length ? Math.sqrt(near.reduce((sum, d) => sum + d * d, 0) / near.length) : 0,
    worst: worstOver(laid.rigid, laid.list, ours.points, to),
    leastWorst: fitMinimax(laid.rigid, laid.list, ours.points, to).worst,
    stretch: stretchOf(laid.rigid.hand, laid.list, ours.points, to),
    compared,
    to,
  }
}

function ask(
  best: Laid,
  rivals: readonly Laid[],
  ours: Ours,
  pattern: OurPattern,
  taken: ReadonlySet<number>,
  least: number,
): AskFor | null {
  const others = rivals.map((r) => inUnitOf(r, best))
  // a hole that is a centimetre out is easier to be sure of than one that is two millimetres out
  const told = [0.01, 0.005, least].map((clear) => tellingHole(best.rigid, others, ours, best.list, taken, clear)).find((t) => t !== null)
  if (!told) return null
  const hole = pattern.holes[told.hole]
  const scale = SCALE[best.unit]
  return {
    hole: hole.id,
    x: hole.x,
    y: hole.y,
    listed: [told.listed[0] / scale, told.listed[1] / scale],
    listUnit: best.unit,
    apart: told.apart,
  }
}

/** A rival read in the other unit, as a move of the best one's metres (turn and shift, and a scale inside c and s). */
function inUnitOf(rival: Laid, best: Laid): Rigid {
  const k = SCALE[rival.unit] / SCALE[best.unit]
  return { ...rival.rigid, c: rival.rigid.c * k, s: rival.rigid.s * k }
}

/** Proves the list on the pattern. Throws when either has fewer than two holes: a reader must have refused it before. */
export function provePattern(pattern: OurPattern, list: HoleList, revision: string, options: ProveOptions = {}): ProveReport {
  const tolerance = options.tolerance ?? 0.0003
  if (!(tolerance > 0) || list.readings.length < 2 || pattern.holes.length < 2) {
    throw new RangeError(`provePattern: tolerance ${tolerance}, ${list.readings.length} listed holes, ${pattern.holes.length} of ours`)
  }
  const ours = prepare(pattern)
  const all = LOOSER.map((k) => Math.min(k * tolerance, Math.max(tolerance, LOOSEST))).reduce<readonly Laid[]>(
    (found, wide) => (found.length ? found : placements(list, ours, wide)),
    [],
  )
  const head = { part: pattern.part, face: pattern.face, list: list.name, revision, tolerance }
  if (!all.length) {
    const nowhere = {
      ...head,
      verdict: 'disagrees' as const,
      best: null,
      second: null,
      rivals: 0,
      selfAlike: false,
      askFor: null,
      sample: false,
      lacking: 0,
      missing: [],
      extra: [],
    }
    return { ...nowhere, summary: summaryOf(nowhere, list, pattern) }
  }
  const least = Math.max(5 * tolerance, LEAST_APART)
  const others = all.slice(1).filter((f) => f.misfits <= all[0].misfits)
  const rivals = others.filter((f) => canBeTold(all[0].rigid, inUnitOf(f, all[0]), ours, least))
  const { to, ...best } = fitted(list, all[0], ours, pattern, tolerance)
  const taken = new Set(to)
  const covered = holesInExtent(all[0].rigid, all[0].list, ours.points, 2 * tolerance)
  const lacking = covered.filter((j) => !taken.has(j))
  const sample = options.sample ?? lacking.length > SAMPLE * covered.length
  const missing = sample ? [] : lacking.map((j) => ({ hole: pattern.holes[j].id, x: pattern.holes[j].x, y: pattern.holes[j].y }))
  const extra = best.compared.filter((c) => c.hole === null).map((c) => ({ label: c.label, line: c.line, x: c.at[0], y: c.at[1] }))
  const second = rivals.length ? fitted(list, rivals[0], ours, pattern, tolerance) : null
  const secondFit = second && (({ to: _, ...rest }) => rest)(second)
  const verdict = rivals.length ? 'undecided' : best.agree === best.of && !missing.length ? 'agrees' : 'disagrees'
  const askFor = rivals.length ? ask(all[0], rivals, ours, pattern, taken, least) : null
  const report = {
    ...head,
    verdict,
    best,
    second: secondFit,
    rivals: rivals.length,
    selfAlike: others.length > rivals.length,
    askFor,
    sample,
    lacking: lacking.length,
    missing,
    extra,
  } as const
  return { ...report, summary: summaryOf(report, list, pattern) }
}
