/**
 * One end's skin in space. A gore is walked by u, from its right-hand edge to its left one, and v, from the cap's row to the toe; beyond
 * 0 and 1 both run straight on over its laps, so that one step is a whole lap. Local axes of the end until `stand` puts it on the coach.
 */
import { edgeDepth, type Ground } from '../../derive/ends/ground.js'
import type { Standing } from '../../derive/ends/parts.js'
import type { Wrapped } from '../../derive/ends/wrapped.js'
import { sheetAtHeight, sheetTop } from '../../derive/ends/wrapped-cut.js'
import { onHand, ownPhi } from '../../derive/ends/wrapped-skin.js'
import { loftAt, normalOf, pointInside, sigmaAtZ } from '../../maths/loft.js'
import { add, cross, scale, sub, unit, type Vec3 } from '../../maths/vec.js'

export interface EndSurface {
  readonly at: (u: number, v: number) => Vec3
  /** u and v of a place of the skin, in local axes; null where it is off the end */
  readonly placeOf: (p: Vec3) => readonly [u: number, v: number] | null
  /** shares of its way down at which it bends; null where it bends as the loft does */
  readonly levels: readonly number[] | null
  /** where a neighbour laps over it */
  readonly isUnder: (u: number, v: number) => boolean
}

/** From the local axes of an end to the coach. */
export const stand =
  ({ end, joint }: Standing) =>
  ([x, y, z]: Vec3): Vec3 => [end === 'nose' ? joint - x : joint + x, y, z]

/** Levels of a sheet are told apart to such a share of its way down. */
const FINE = 120

const clamp = (v: number): number => Math.min(1, Math.max(0, v))
/** How far past its own edges a place lies: -1 for a whole lap before the first, 1 for one past the last. */
const past = (v: number): number => (v < 0 ? v : v > 1 ? v - 1 : 0)

/** A share of the way, but beyond its ends in laps: `before` and `after` say how many. */
const beside = (share: number, before: number, after: number): number => (share < 0 ? before : share > 1 ? 1 + after : share)

/** Unit directions of the loft: down it, and round it to the right of travel. */
function waysAt(ground: Ground, phi: number, sigma: number): { readonly down: Vec3; readonly right: Vec3; readonly out: Vec3 } {
  const p = loftAt(ground.loft, phi, sigma)
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  return {
    down: unit([p.rSigma * c, p.rSigma * s, p.zSigma]),
    right: unit([p.rPhi * c - p.r * s, p.rPhi * s + p.r * c, 0]),
    out: normalOf(p, phi),
  }
}

/** Gore `k`, from 1 at the right joint. */
export function goreSurface(ground: Ground, wrapped: Wrapped | null, k: number): EndSurface {
  const { ends, shell } = ground.input
  const [p, q] = [ground.edges[k - 1], ground.edges[k]]
  const lapOf = (edge: number): number => (edge === 0 || edge === ground.gores ? shell.joint.overlap : ends.lap) / 2
  const lap = { right: lapOf(k - 1), left: lapOf(k), top: ends.lap / 2, foot: ground.handed.sheetEdge - ground.toe }
  const phiAt = (u: number): number => p + (q - p) * clamp(u)
  const beyond = (u: number, v: number, { down, right }: { readonly down: Vec3; readonly right: Vec3 }): Vec3 => {
    const [a, b] = [past(u), past(v)]
    return add(scale(right, a < 0 ? -a * lap.right : -a * lap.left), scale(down, b * (b < 0 ? lap.top : lap.foot)))
  }
  const placeBy =
    (span: (phi: number) => readonly [top: number, foot: number], levelOf: (z: number) => number | null): EndSurface['placeOf'] =>
    ([x, y, z]) => {
      const phi = Math.atan2(y, x)
      const level = levelOf(z)
      if (level === null) return null
      const [top, foot] = span(phi)
      const out = Math.hypot(x, y)
      return [
        beside((phi - p) / (q - p), ((phi - p) * out) / -lap.right, ((phi - q) * out) / -lap.left),
        beside((level - top) / (foot - top), (Math.abs(level - top) / lap.top) * -1, Math.abs(level - foot) / lap.foot),
      ]
    }
  const [deepP, deepQ] = [edgeDepth(ground, k, 'right'), edgeDepth(ground, k, 'left')]
  const t = ends.skin.thickness.value
  // the cap laps over every gore; beside it lies what is less than half a thickness deep
  const isUnder = (u: number, v: number): boolean => v <= 0 || (u <= 0 && deepP > t) || (u >= 1 && deepQ > t)
  const gore = wrapped?.gores[k - 1]
  if (gore?.sheet) {
    const { sheet } = gore
    const last = sheet.strip.rulings[sheet.strip.rulings.length - 1]
    // the foot is the last ruling: where it crosses the plane of an azimuth
    const foot = (phi: number): number => {
      const [n0, n1] = [-Math.sin(phi), Math.cos(phi)]
      const far = (point: Vec3): number => point[0] * n0 + point[1] * n1
      const share = far(last.from) / (far(last.from) - far(last.to))
      return last.from[2] + share * (last.to[2] - last.from[2])
    }
    const span = (phi: number): readonly [number, number] => [sheetTop(sheet, ownPhi(gore, phi)).point[2], foot(ownPhi(gore, phi))]
    // a sheet bends at its rulings, sharply where they fan out of a corner: they are walked down both edges
    const down = (side: 'from' | 'to'): number[] => {
      const z = sheet.strip.rulings.map((ruling) => ruling[side][2])
      return z.map((here) => (z[0] - here) / (z[0] - z[z.length - 1]))
    }
    return {
      isUnder,
      levels: [...down('from'), ...down('to')].map((v) => Math.round(v * FINE) / FINE),
      at: (u, v) => {
        const phi = phiAt(u)
        const [top, low] = span(phi)
        const on = onHand(gore, sheetAtHeight(sheet, ownPhi(gore, phi), top + (low - top) * clamp(v)))
        // along the ruling and square to it, as the flat sheet goes on past its edges
        const right = unit(cross(on.out, cross([-Math.sin(phi), Math.cos(phi), 0], on.out)))
        const down = cross(right, on.out)
        return add(sub(on.point, scale(on.out, sheet.thickness / 2)), beyond(u, v, { right, down: down[2] > 0 ? scale(down, -1) : down }))
      },
      placeOf: placeBy(span, (z) => z),
    }
  }
  return {
    isUnder,
    levels: null,
    at: (u, v) => {
      const phi = phiAt(u)
      const top = ground.capSigma(phi)
      const sigma = top + (ground.toe - top) * clamp(v)
      // its upper lap lies under the cap
      const deep = deepP + (deepQ - deepP) * clamp(u) + (v < 0 ? t : 0)
      const on = pointInside(ground.loft, phi, sigma, deep)
      return past(u) === 0 && past(v) === 0 ? on : add(on, beyond(u, v, waysAt(ground, phi, sigma)))
    },
    placeOf: placeBy(
      (phi) => [ground.capSigma(phi), ground.toe],
      (z) => sigmaAtZ(ground.loft.section, z),
    ),
  }
}

/** The crown cap: v from the crown to the cap's row. */
export function capSurface(ground: Ground): EndSurface {
  const { ends, shell } = ground.input
  const t = ends.skin.thickness.value
  const under = shell.joint.over === 'barrel' ? shell.skin.thickness.value + t / 2 : -1.5 * t
  /** It is on the mould line but beside the joint, where it goes under the barrel, or over it. */
  const depthAt = (u: number): number => t / 2 + (under - t / 2) * Math.max(0, 1 - 20 * Math.min(clamp(u), 1 - clamp(u)))
  return {
    levels: null,
    isUnder: (u) => under > t && (u <= 0 || u >= 1),
    at: (u, v) => {
      const phi = Math.PI / 2 - Math.PI * clamp(u)
      const sigma = ground.loft.ridge + (ground.capSigma(phi) - ground.loft.ridge) * clamp(v)
      const on = pointInside(ground.loft, phi, sigma, depthAt(u))
      const [a, b] = [past(u), past(v)]
      if (a === 0 && b === 0) return on
      // round a dome the tab at the joint runs straight back, off the end
      const down = waysAt(ground, phi, ground.capSigma(phi)).down
      return add(on, [
        (-Math.abs(a) * shell.joint.overlap) / 2 + ((b * ends.lap) / 2) * down[0],
        ((b * ends.lap) / 2) * down[1],
        ((b * ends.lap) / 2) * down[2],
      ])
    },
    placeOf: ([x, y, z]) => {
      const phi = Math.atan2(y, x)
      const sigma = sigmaAtZ(ground.loft.section, z)
      const foot = ground.capSigma(phi)
      if (sigma === null) return null
      const v = (sigma - ground.loft.ridge) / (foot - ground.loft.ridge)
      return [(Math.PI / 2 - phi) / Math.PI, beside(v, 0, (sigma - foot) / (ends.lap / 2))]
    },
  }
}

/** A panel of the lining between two azimuths, `depth` in, from one section girth to another. */
export function liningSurface(
  ground: Ground,
  [p, q]: readonly [number, number],
  depth: number,
  range: (phi: number) => readonly [number, number],
): EndSurface {
  return {
    levels: null,
    isUnder: () => false,
    at: (u, v) => {
      const phi = p + (q - p) * u
      const [from, to] = range(phi)
      return pointInside(ground.loft, phi, from + (to - from) * v, depth)
    },
    placeOf: ([x, y, z]) => {
      const phi = Math.atan2(y, x)
      const v = shareOf(ground, z, ...range(phi))
      return v === null ? null : [(phi - p) / (q - p), v]
    },
  }
}

function shareOf({ loft }: Ground, z: number, from: number, to: number): number | null {
  const sigma = sigmaAtZ(loft.section, z)
  return sigma === null ? null : (sigma - from) / (to - from)
}
