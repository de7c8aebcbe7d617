/** From an address on an end to the place of its skin that it names, or a sentence why there is none or more than one. */
import { sideOfLetter } from '../../definition/sides.js'
import { type Ground, goreAt } from '../../derive/ends/ground.js'
import { meridianGirth, sigmaAtMeridian } from '../../derive/ends/meridian.js'
import type { Derived } from '../../derive/index.js'
import { type Loft, loftAt, pointOf, sigmaAtZ } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import type { Standing } from '../ends/ground.js'
import { END_EXAMPLES, type EndAddress } from './end-address.js'
import { lengthText } from './lengths.js'

/** A place on the outer face of an end: azimuth from the centre line and the section's girth at its height. rad, m. */
export interface EndSpot {
  readonly at: Standing
  readonly phi: number
  readonly sigma: number
  /** from the crown down the vertical plane through the place */
  readonly girth: number
  /** in the end's axes */
  readonly point: Vec3
  readonly gore: number
}

type Refused = { readonly ok: false; readonly says: string }
export type FoundOnEnd = { readonly ok: true; readonly spot: EndSpot } | Refused

/** Two lengths of one address may differ by what rounding to a millimetre makes of them, as documents print, m. */
const AGREE = 0.002

export function spotOnEnd(derived: Derived, address: EndAddress): FoundOnEnd {
  const { ground } = derived.endSections.local
  const frame = derived.definition.frames.find((f) => f.joint === address.which)
  if (!frame) throw new Error(`no frame carries the ${address.which}`)
  const at: Standing = { end: address.which, joint: frame.station, frame: frame.id }
  if (address.gore !== null && (address.gore < 1 || address.gore > ground.gores))
    return refuse(
      `The ${at.end} has gores 1 to ${ground.gores}, counted from the right joint to the left; there is no gore ${address.gore}.`,
    )
  const out = outOf(derived, at, address)
  if (out !== null && typeof out !== 'number') return out
  const found = azimuthAndLevel(derived, ground, at, address, out)
  if (!found.ok) return found
  const spot = spotAt(ground, at, found.phi, found.sigma)
  // on a seam the gore that was written is as true as its neighbour
  return disagreement(ground, address, out, spot) ?? { ok: true, spot: { ...spot, gore: address.gore ?? spot.gore } }
}

function spotAt(ground: Ground, at: Standing, phi: number, sigma: number): EndSpot {
  const point = pointOf(loftAt(ground.loft, phi, sigma), phi)
  return { at, phi, sigma, point, girth: meridianGirth(ground.loft, phi, sigma), gore: goreAt(ground, phi) }
}

type Level = { readonly ok: true; readonly phi: number; readonly sigma: number } | Refused

/** A girth before a waterline, BL before a station, a gore's mid rib where neither is written; the rest is compared afterwards. */
function azimuthAndLevel(derived: Derived, ground: Ground, at: Standing, address: EndAddress, out: number | null): Level {
  const { gore, G, WL, BL, station } = address
  if (G === null && WL === null) {
    const twice = station === null ? '' : `A station${BL === null ? '' : ' with a BL'} meets the skin twice, on the brow and below. `
    return refuse(`${twice}How high on the ${at.end}? Add a waterline or a girth, ${END_EXAMPLES}.`)
  }
  if (BL !== null || out !== null) {
    const side = signOf(derived, ground, address)
    if (side === 0)
      return refuse(
        `STA ${lengthText(station?.value ?? 0)} is on both sides of the ${at.end}. Add C or R, as in "${at.end} C STA 2300 WL 1160", or a gore.`,
      )
    const y = BL === null ? null : side * Math.abs(BL)
    return G !== null ? byGirth(ground, at, G, y, out, side) : byWaterline(ground, at, WL ?? 0, y, out, side)
  }
  if (gore === null)
    return refuse(`Where across the ${at.end}? Add a gore, or BL from the centre plane with the right positive, ${END_EXAMPLES}.`)
  const phi = ground.mids[gore - 1]
  const sigma = G !== null ? sigmaOfGirth(ground, at, phi, G) : sigmaOfHeight(ground.loft, at, WL ?? 0)
  return typeof sigma === 'number' ? { ok: true, phi, sigma } : sigma
}

/** Distance outward from the joint that the station says, or null without one. */
function outOf(derived: Derived, at: Standing, { station }: EndAddress): number | null | Refused {
  if (station === null) return null
  const { frames } = derived.definition
  const sta = station.from === 'last frame' ? frames[frames.length - 1].station + station.value : station.value
  const out = at.end === 'nose' ? at.joint - sta : sta - at.joint
  const { reach } = derived.ends
  const tip = at.end === 'nose' ? at.joint - reach : at.joint + reach
  if (out > reach + 1e-9)
    return refuse(
      `STA ${lengthText(sta)} is ${at.end === 'nose' ? 'ahead of the nose' : 'behind the tail'}, whose tip stands at STA ${lengthText(tip)}.`,
    )
  if (out < 0) return refuse(`STA ${lengthText(sta)} is on the barrel, not on the ${at.end}, which starts at STA ${lengthText(at.joint)}.`)
  return out
}

/** 1 right, -1 left, 0 not said. */
function signOf(derived: Derived, ground: Ground, { side, BL, gore }: EndAddress): -1 | 0 | 1 {
  const side2 = side === 'C' || side === 'R' ? sideOfLetter(side, derived.definition.coach.market) : side
  if (side2 === 'right') return 1
  if (side2 === 'left') return -1
  if (BL !== null) return BL < 0 ? -1 : 1
  if (gore !== null && Math.abs(ground.mids[gore - 1]) > 1e-9) return ground.mids[gore - 1] > 0 ? 1 : -1
  return 0
}

function sigmaOfHeight(loft: Loft, at: Standing, z: number): number | Refused {
  const [top, toe] = [loftAt(loft, Math.PI / 2, 0).z, loftAt(loft, Math.PI / 2, loft.section.length).z]
  if (z > top + 1e-9) return refuse(`WL ${lengthText(z)} is above the crown at WL ${lengthText(top)}.`)
  const sigma = sigmaAtZ(loft.section, z)
  return sigma ?? refuse(`WL ${lengthText(z)} is under the toe of the ${at.end} at WL ${lengthText(toe)}.`)
}

function sigmaOfGirth(ground: Ground, at: Standing, phi: number, girth: number): number | Refused {
  const whole = meridianGirth(ground.loft, phi, ground.toe)
  if (girth < 0) return refuse(`G ${lengthText(girth)} is above the crown: it counts from there down.`)
  if (girth > whole + 1e-9)
    return refuse(`G ${lengthText(girth)} is past the toe of the ${at.end}, which is at G ${lengthText(whole)} there.`)
  return girth === 0 ? 0 : sigmaAtMeridian(ground.loft, phi, girth)
}

/** The plan at that height is the superellipse: from y or from the distance outward follows the other. */
function byWaterline(ground: Ground, at: Standing, z: number, y: number | null, out: number | null, side: number): Level {
  const { loft } = ground
  const sigma = sigmaOfHeight(loft, at, z)
  if (typeof sigma !== 'number') return sigma
  const [half, reach] = [loftAt(loft, Math.PI / 2, sigma).r, loftAt(loft, 0, sigma).r]
  const n = loft.exponent
  if (y !== null) {
    if (Math.abs(y) > half + 1e-9)
      return refuse(
        `BL ${lengthText(y)} is outside the ${at.end}, which is ${lengthText(half)} from the centre plane at WL ${lengthText(z)}.`,
      )
    const x = reach * Math.max(0, 1 - (Math.abs(y) / half) ** n) ** (1 / n)
    return { ok: true, phi: Math.atan2(y, x), sigma }
  }
  if (out === null || out > reach + 1e-9)
    return refuse(`The ${at.end} reaches ${lengthText(reach)} from its joint at WL ${lengthText(z)}, not ${lengthText(out ?? 0)}.`)
  const across = side * half * Math.max(0, 1 - (out / reach) ** n) ** (1 / n)
  return { ok: true, phi: Math.atan2(across, out), sigma }
}

/** Along the curve of equal girth y grows, and the distance outward falls, all the way from the centre line to the joint. */
function byGirth(ground: Ground, at: Standing, girth: number, y: number | null, out: number | null, side: number): Level {
  const point = (phi: number): Vec3 => {
    const sigma = girth > 0 ? Math.min(ground.toe, sigmaAtMeridian(ground.loft, phi, girth)) : 0
    return pointOf(loftAt(ground.loft, phi, sigma), phi)
  }
  const beyond = (phi: number): boolean => (y === null ? point(phi)[0] < (out ?? 0) : point(phi)[1] > Math.abs(y))
  if (beyond(0))
    return refuse(`The ${at.end} does not reach as far as that station at G ${lengthText(girth)}. Write a gore or BL, ${END_EXAMPLES}.`)
  const widest = point(Math.PI / 2)[1]
  if (y !== null && Math.abs(y) > widest + 1e-4)
    return refuse(
      `BL ${lengthText(y)} is outside the ${at.end}, which is at most ${lengthText(widest)} from the centre plane at G ${lengthText(girth)}.`,
    )
  let [low, high] = [0, Math.PI / 2]
  for (let i = 0; i < 45; i++) {
    const middle = (low + high) / 2
    if (beyond(middle)) high = middle
    else low = middle
  }
  const phi = side * low + 0
  const sigma = sigmaOfGirth(ground, at, phi, girth)
  return typeof sigma === 'number' ? { ok: true, phi, sigma } : sigma
}

/** Everything written must be true of the place, to what rounding makes of it. In a lap both gores are there. */
function disagreement(ground: Ground, address: EndAddress, out: number | null, spot: EndSpot): Refused | null {
  const { gore, G, WL, BL } = address
  const { point, at } = spot
  if (gore !== null && gore !== spot.gore) {
    const seam = Math.min(gore, spot.gore)
    const apart = Math.abs(Math.hypot(point[0], point[1]) * Math.sin(spot.phi - ground.edges[seam]))
    if (Math.abs(gore - spot.gore) > 1 || apart > ground.input.ends.lap / 2)
      return refuse(
        `That place is on gore ${spot.gore} of the ${at.end}, not on gore ${gore}. Leave the gore out, or write one that is true.`,
      )
  }
  if (G !== null && WL !== null && Math.abs(point[2] - WL) > AGREE)
    return refuse(
      `G ${lengthText(G)} is at WL ${lengthText(point[2])} there, not at WL ${lengthText(WL)}. Write one of them${BL === null && out === null ? ', or BL as well for a place beside the mid rib' : ''}.`,
    )
  if (BL !== null && out !== null && Math.abs(point[0] - out) > AGREE)
    return refuse(
      `BL ${lengthText(BL)} is ${lengthText(point[0])} from the joint there, not ${lengthText(out)}. Leave out BL or the station.`,
    )
  return null
}

function refuse(says: string): Refused {
  return { ok: false, says }
}
