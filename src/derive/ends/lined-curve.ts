/**
 * Where the lining of an end lies on a rib: the line of its rivets, on the far side of the web from the skin's. The web stands upright
 * and its flanges lean with the skin, so the line keeps to an upright plane too: the mould line's own cut by that plane, moved inward
 * in it by the height of the rib. A layer taken along the skin's normal would miss the flange where the skin leans most.
 *
 * A wrapped end's mid ribs follow their sheet: there the line is taken on the curve of the rib itself, and turned beside it.
 */
import { glanceAt } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { type Ground, mirrored } from './ground.js'
import { curveFrom, type RibCurve } from './rib-curve.js'
import type { Located } from './skin.js'

export interface LinedCurve {
  /** on the lining's mid surface, from the ring's row of it; by section girth, m */
  readonly lengthAt: (sigma: number) => number
  readonly sigmaAt: (length: number) => number
  /** on the mid surface of the inner flange, but for a length that is the same down the whole rib */
  readonly flangeAt: (sigma: number) => number
  /** the place of the outer face over the line */
  readonly place: (sigma: number) => Pick<Located, 'point' | 'phi'>
}

/** What of a rib says where its lining lies. */
export interface Lined {
  readonly phi: number
  readonly under: number
  readonly outer: RibCurve
}

/**
 * From the plane of the skin's rivets, which runs through the crown, to that of the lining's: the web stands half way between them.
 * Toward the joint; from the rib on the centre line to the right. m
 */
export const linedBeside = ({ shell }: Ground['input']): number => 2 * shell.frame.rowOffset

/** Section girth at which the lining's row round the header ring crosses a rib: across the ring's web from the skin's row. */
export const ringSigma = ({ input }: Ground, { outer }: Lined): number => outer.sigmaAt(input.ends.cap - linedBeside(input))

/** A right-hand rib's, or that of the centre line. */
export function linedCurve(ground: Ground, rib: Lined): LinedCurve {
  const { frame, tape } = ground.input.shell
  const { thickness } = ground.input.lining
  const cut = cutBeside(ground, rib, 1e-5)
  const inward = inwardOf(ground)
  const { lengthAt, sigmaAt } = curveFrom(ground.loft, ringSigma(ground, rib), (sigma) => spaceOf(ground, rib, cut(sigma), inward))
  // the flange is a parallel of the line in one plane: it gains its distance times what both turn
  const out = (thickness.value + frame.thickness.value) / 2 + tape
  return {
    lengthAt,
    sigmaAt,
    flangeAt: (sigma) => {
      const on = cut(sigma)
      return lengthAt(sigma) + out * Math.atan2(on.outR, on.outZ)
    },
    place: (sigma) => {
      const on = cut(sigma)
      return { point: inSpace(ground, rib, on.r, on.z), phi: on.azimuth }
    },
  }
}

/** The line as an edge of a panel, `over` m farther in than the panel that lies on the rib. Exact enough to find rulings from. */
export function linedEdge(ground: Ground, rib: Lined, over: number): RibCurve {
  if (rib.phi < -1e-9) return mirrored(linedEdge(ground, { ...rib, phi: -rib.phi, outer: mirrored(rib.outer) }, over))
  const cut = cutBeside(ground, rib, 1e-9)
  const depth = inwardOf(ground) + over
  const atSigma = (sigma: number): Vec3 => spaceOf(ground, rib, cut(sigma), depth)
  return { phi: rib.phi, depth, atSigma, ...curveFrom(ground.loft, ringSigma(ground, rib), atSigma) }
}

/** The left-hand twin of a rib's. */
export const mirroredLined = (curve: LinedCurve): LinedCurve => ({
  ...curve,
  place: (sigma) => {
    const { point, phi } = curve.place(sigma)
    return { point: [point[0], -point[1], point[2]], phi: -phi }
  },
})

/** From the outer face of the rib to the middle of the lining on it. */
const inwardOf = ({ input: { shell, lining } }: Ground): number => shell.frame.height + shell.tape + lining.thickness.value / 2

/** A place of the mould line in the plane of the lining's rivets: r outward along the rib's azimuth. m, rad. */
interface Cut {
  readonly azimuth: number
  readonly r: number
  readonly z: number
  /** outward normal of the cut in the plane */
  readonly outR: number
  readonly outZ: number
  /** of the rib's outer face inside it, in the plane */
  readonly under: number
}

/** Each place is looked for from the rib's own azimuth, to within `near` rad, and set right by its slope: whoever asks before, it is the same. */
function cutBeside({ loft, input }: Ground, { phi, under }: Lined, near: number): (sigma: number) => Cut {
  const beside = linedBeside(input)
  return (sigma) => {
    // the radius changes little on the way aside: what it does change by the surface's own slope makes the first step all but the last
    let way = 0
    for (let i = 0; ; i++) {
      const on = glanceAt(loft, phi + way, sigma)
      if (i === 0) {
        const aside = beside / on.r
        way = (beside - on.rPhi * aside * aside) / on.r
        continue
      }
      const [s, c] = [Math.sin(way), Math.cos(way)]
      // the plane's own way out of itself, as the azimuth grows
      const across = on.rPhi * s + on.r * c
      const step = (beside - on.r * s) / across
      way += step
      if (Math.abs(step) > near && i < 20) continue
      const rSigma = (on.rSigma * on.r * c) / across
      const [down, fall] = [rSigma / c, on.zSigma]
      const speed = Math.sqrt(down * down + fall * fall)
      const lean = ((fall / speed) * (on.rPhi * c - on.r * s)) / across
      const r = on.r + on.rPhi * step
      return {
        azimuth: phi + way,
        r: Math.sqrt(r * r - beside * beside),
        z: on.z,
        outR: -fall / speed,
        outZ: down / speed,
        under: under * Math.sqrt(1 + lean * lean),
      }
    }
  }
}

function spaceOf(ground: Ground, rib: Lined, { r, z, outR, outZ, under }: Cut, inward: number): Vec3 {
  const depth = under + inward
  return inSpace(ground, rib, r - depth * outR, z - depth * outZ)
}

function inSpace({ input }: Ground, { phi }: Lined, r: number, z: number): Vec3 {
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  const beside = linedBeside(input)
  return [r * c - beside * s, r * s + beside * c, z]
}

/** Of a wrapped end: `deep` gives the rib's own curve some depth in. */
export function wrappedLined(ground: Ground, rib: Lined, deep: (depth: number) => RibCurve): LinedCurve {
  const { shell } = ground.input
  const line = deep(rib.under + inwardOf(ground))
  const flange = deep(rib.under + shell.frame.height - shell.frame.thickness.value / 2)
  const hand = rib.phi > -1e-9 ? 1 : -1
  return {
    lengthAt: line.lengthAt,
    sigmaAt: line.sigmaAt,
    flangeAt: flange.lengthAt,
    // straight aside: over so short a way a wrapped sheet leaves its rib's line by a fraction of a millimetre
    place: (sigma) => {
      const [x, y, z] = rib.outer.atSigma(sigma)
      const aside = hand * linedBeside(ground.input)
      const point: Vec3 = [x - aside * Math.sin(rib.phi), y + aside * Math.cos(rib.phi), z]
      return { point, phi: Math.atan2(point[1], point[0]) }
    },
  }
}
