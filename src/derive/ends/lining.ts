/**
 * The lining of an end: panels between neighbouring ribs, from the header ring to the lining's gap over the floor, and one inside
 * the ring. Their areas are taken on the lining's own mid surface, the lining's depth inside the mould line. Does NOT cover their
 * flat patterns (see lining-flats.ts).
 */

import { pointInside } from '../../maths/loft.js'
import { cross, length, sub, type Vec3 } from '../../maths/vec.js'
import { densityOf } from '../common/density.js'
import { endLiningDepth } from '../common/lining-depth.js'
import { sheetMass } from '../common/mass.formulas.js'
import type { Part } from '../nouns.js'
import type { Ground } from './ground.js'
import type { LocalEnd } from './local.js'
import { endPart, type Standing } from './parts.js'
import { sigmaAt } from './surface.js'

const WAITS = 'Its flat pattern is worked out apart from the rest; the packet waits for it.'
const WRAPPED = 'Ribs of a wrapped end follow their sheets, and its lining is fitted on them: its flat pattern is not worked out.'
const DOMED = 'It is domed: cut it on the header ring, and ease it into place there.'
/** Steps a panel is summed in, down and across. */
const DOWN = 18
const ACROSS = 3

export interface LiningPatch {
  readonly id: string
  readonly says: string
  readonly area: number
  readonly centre: Vec3
  readonly girth: number
}

/** Where a panel lies: between two azimuths, and from one section girth to another. */
export interface LiningBounds {
  readonly id: string
  readonly right: number
  readonly left: number
  readonly range: (phi: number) => readonly [top: number, foot: number]
}

/** Depth of the middle of the lining, behind one end skin, a mid rib and its tape. m */
export const liningMiddle = ({ input }: Ground): number => endLiningDepth(input) + input.lining.thickness.value / 2

const footOf = ({ loft, input }: Ground): number => sigmaAt(loft, input.lining.floorGap)

/** Between neighbouring ribs from the right joint to the left one, and the panel inside the header ring last. */
export function liningBounds(ground: Ground): readonly LiningBounds[] {
  const { capSigma, loft } = ground
  const foot = footOf(ground)
  const ribs = [...ground.edges, ...ground.mids].sort((a, b) => b - a)
  return [
    ...ribs
      .slice(1)
      .map((left, i): LiningBounds => ({ id: `lining-${i + 1}`, right: ribs[i], left, range: (phi) => [capSigma(phi), foot] })),
    { id: CROWN, right: Math.PI / 2, left: -Math.PI / 2, range: (phi) => [loft.ridge, capSigma(phi)] },
  ]
}

const CROWN = 'lining-crown'

/** Panels of one end in local axes, from the right joint to the left one, and the crown panel last. */
export function liningPatches(ground: Ground): LiningPatch[] {
  const { ends } = ground.input
  const depth = liningMiddle(ground)
  const bounds = liningBounds(ground)
  const foot = footOf(ground)
  const at = (phi: number, share: number, from: number, to: number): Vec3 =>
    pointInside(ground.loft, phi, from + share * (to - from), depth)
  const patch = ({ right, left, range }: LiningBounds): { area: number; centre: Vec3 } => {
    const net = Array.from({ length: ACROSS + 1 }, (_, i) => {
      const phi = right + ((left - right) * i) / ACROSS
      const [from, to] = range(phi)
      return Array.from({ length: DOWN + 1 }, (_, k) => at(phi, k / DOWN, from, to))
    })
    let area = 0
    const sum: [number, number, number] = [0, 0, 0]
    for (let i = 0; i < ACROSS; i++)
      for (let k = 0; k < DOWN; k++) {
        const [a, b, c, d] = [net[i][k], net[i + 1][k], net[i + 1][k + 1], net[i][k + 1]]
        // half the cross product of the diagonals is a quadrangle's area
        const piece = length(cross(sub(c, a), sub(d, b))) / 2
        area += piece
        for (let axis = 0; axis < 3; axis++) sum[axis] += (piece * (a[axis] + b[axis] + c[axis] + d[axis])) / 4
      }
    return { area, centre: [sum[0] / area, sum[1] / area, sum[2] / area] }
  }
  // the left half mirrors the right one; there are as many panels on each side of the centre line
  const [between, inRing] = [bounds.slice(0, -1), bounds[bounds.length - 1]]
  const half = between.length / 2
  const made = between.slice(0, half).map(patch)
  const panels = between.map(({ id }, i): LiningPatch => {
    const { area, centre } = made[i < half ? i : 2 * half - 1 - i]
    const girth = (ends.cap + ground.midCurves[Math.floor(i / 2)].lengthAt(foot)) / 2
    return {
      id,
      says: `lining panel ${i + 1}`,
      area,
      centre: i < half ? centre : [centre[0], -centre[1], centre[2]],
      girth,
    }
  })
  return [...panels, { id: inRing.id, says: 'crown lining panel', ...patch(inRing), girth: 0 }]
}

export function liningParts(local: LocalEnd, at: Standing): Part[] {
  const { lining, ends } = local.ground.input
  const waits = ends.make === 'wrapped' ? WRAPPED : WAITS
  const rho = densityOf(lining.alloy, lining.thickness.value)
  return local.lining.map(({ id, says, area, centre, girth }) =>
    endPart(at, {
      id: `${at.end}-${id}`,
      says: `${at.end} ${says}`,
      kind: 'end-lining',
      material: lining.alloy,
      thickness: lining.thickness,
      centre,
      girth,
      area,
      mass: sheetMass({ rho, t: lining.thickness.value, A: area }),
      patterns: [],
      notes: ['Net area between the ribs; add laps when it is ordered.'],
      notComputed: id === CROWN ? DOMED : waits,
    }),
  )
}
