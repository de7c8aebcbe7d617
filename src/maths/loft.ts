/**
 * A domed surface lofted between two plane curves that share their crown: at every height z its plan is the superellipse
 * |y/Y(z)|^n + |x/L(z)|^n = 1, with Y the half-width of the section and L the reach of the centre-line profile.
 *
 * Axes: x outward from the plane of the section, y sideways, z up. Azimuth phi from the centre line: a point is
 * (r cos phi, r sin phi, z), phi = +-pi/2 lies in the plane of the section. Everything is a function of phi and of the
 * section's own girth `sigma` at the height in question, which is smooth through the crown where z is not. m, rad.
 * The superellipse's usual parameter is singular where the curve crosses its axes; the azimuth is not.
 */
import { at, type ChainElement, type TangentChain } from './tangent-chain.js'
import type { Vec3 } from './vec.js'

export interface Loft {
  readonly section: TangentChain
  readonly profile: TangentChain
  readonly exponent: number
  /** section girths where the curvature of either curve jumps, the crown first and the toe last */
  readonly breaks: readonly number[]
  /** how far a flat roof runs level before the surface falls away; the dome meets it in a ridge there. 0 where the roof is crowned */
  readonly ridge: number
  /** height of the section's end */
  readonly foot: number
}

/** A point of the surface and its first derivatives by sigma and by phi. */
export interface LoftPoint {
  readonly r: number
  readonly z: number
  readonly rSigma: number
  readonly zSigma: number
  readonly rPhi: number
}

/** The profile must reach as low as the section; it is cut there. Throws where it does not. */
export function loftBetween(section: TangentChain, profile: TangentChain, exponent: number): Loft {
  const breaks = new Set<number>([0, section.length])
  for (const e of section.elements) breaks.add(e.girth0)
  for (const e of profile.elements) {
    const sigma = sigmaAtZ(section, e.z0)
    if (sigma !== null && sigma > 0 && sigma < section.length) breaks.add(sigma)
  }
  const falling = section.elements.find((e) => e.curvature !== 0 || e.heading0 !== 0)
  const ridge = falling ? falling.girth0 : section.length
  const stops = [...breaks].sort((a, b) => a - b)
  const foot = at(section, section.length).z
  const loft = { section, profile, exponent, breaks: stops, ridge, foot }
  const toe = loftAt(loft, 0, section.length)
  if (!(toe.r > 0)) throw new Error('the profile does not reach as low as the section')
  return loft
}

/** Headings of the section and of the profile at the height of a section girth, rad. */
function headingsAt({ section, profile }: Pick<Loft, 'section' | 'profile'>, sigma: number): readonly [number, number] {
  const p = at(section, sigma)
  const e = elementAtZ(profile, p.z)
  return [p.heading, e.curvature === 0 ? e.heading0 : Math.acos(clamp(e.cos0 + e.curvature * (p.z - e.z0)))]
}

/**
 * Section girths that part the surface into stretches, each break among them: neither curve turns more than `turn` rad in one, and none
 * is longer than `share` of the section. Halved where they do: a profile may turn much in the first inch of a roof that hardly falls.
 */
export function stretchesOf(loft: Loft, turn: number, share: number): readonly number[] {
  const stops = [loft.breaks[0]]
  const halve = (from: number, to: number, a: readonly [number, number], b: readonly [number, number], deeper: number): void => {
    const turned = Math.max(Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1]))
    if (deeper === 0 || (turned <= turn && to - from <= share * loft.section.length)) {
      stops.push(to)
      return
    }
    const middle = (from + to) / 2
    const m = headingsAt(loft, middle)
    halve(from, middle, a, m, deeper - 1)
    halve(middle, to, m, b, deeper - 1)
  }
  for (let i = 0; i + 1 < loft.breaks.length; i++) {
    const [from, to] = [loft.breaks[i], loft.breaks[i + 1]]
    // a hair inside, where a break has the headings of its own side
    const hair = (to - from) * 1e-9
    halve(from, to, headingsAt(loft, from + hair), headingsAt(loft, to - hair), 12)
  }
  return stops
}

function elementAt(chain: TangentChain, girth: number): ChainElement {
  for (const e of chain.elements) if (girth <= e.girth1) return e
  return chain.elements[chain.elements.length - 1]
}

/** The element that holds height z, walking down; the last one serves below its end. */
function elementAtZ(chain: TangentChain, z: number): ChainElement {
  const { elements } = chain
  for (let i = 1; i < elements.length; i++) if (z > elements[i].z0) return elements[i - 1]
  return elements[elements.length - 1]
}

/** Girth of the section at height z, null above the crown or below its end. */
export function sigmaAtZ(chain: TangentChain, z: number): number | null {
  if (z > chain.elements[0].z0) return null
  const e = elementAtZ(chain, z)
  const cosine = e.cos0 + e.curvature * (z - e.z0)
  const girth = e.curvature === 0 ? e.girth0 + (e.z0 - z) / e.sin0 : e.girth0 + (Math.acos(clamp(cosine)) - e.heading0) / e.curvature
  return girth > e.girth1 + 1e-9 ? null : Math.max(0, Math.min(girth, e.girth1))
}

const clamp = (v: number): number => Math.min(1, Math.max(-1, v))

/** So near the crown the heights are too alike to tell the reach from; the surface is a cone there to a part in a million. */
const NEAR = 1e-5

export function loftAt(loft: Loft, phi: number, sigma: number): LoftPoint {
  reckon(loft, phi, sigma)
  return { r: NOW[R], z: NOW[Z], rSigma: NOW[R_SIGMA], zSigma: NOW[Z_SIGMA], rPhi: NOW[R_PHI] }
}

/** The same for whoever reads it at once: the next glance is left in the same object. */
export function glanceAt(loft: Loft, phi: number, sigma: number): Readonly<LoftPoint> {
  reckon(loft, phi, sigma)
  GLANCE.r = NOW[R]
  GLANCE.z = NOW[Z]
  GLANCE.rSigma = NOW[R_SIGMA]
  GLANCE.zSigma = NOW[Z_SIGMA]
  GLANCE.rPhi = NOW[R_PHI]
  return GLANCE
}

const GLANCE = { r: 0.5, z: 0.5, rSigma: 0.5, zSigma: 0.5, rPhi: 0.5 }

/** Speed along the meridian of azimuth phi by section girth. */
export function meridianSpeed(loft: Loft, phi: number, sigma: number): number {
  reckon(loft, phi, sigma)
  return Math.sqrt(NOW[R_SIGMA] * NOW[R_SIGMA] + NOW[Z_SIGMA] * NOW[Z_SIGMA])
}

/** Point `depth` m inside the surface along its normal. */
export function pointInside(loft: Loft, phi: number, sigma: number, depth: number): Vec3 {
  reckon(loft, phi, sigma)
  const c = AZIMUTH[COS]
  const t = AZIMUTH[SIN]
  const r = NOW[R]
  if (depth === 0) return [r * c, r * t, NOW[Z]]
  const n = outward(r, NOW[R_SIGMA], NOW[Z_SIGMA], NOW[R_PHI], c, t)
  return [r * c - depth * n[0], r * t - depth * n[1], NOW[Z] - depth * n[2]]
}

/**
 * The surface is asked for tens of thousands of times a coach, mostly for one or two of its five values: they are left here,
 * for the function that asked to take at once, and no point is made of them that nobody keeps.
 */
const NOW = new Float64Array(5)
const [R, Z, R_SIGMA, Z_SIGMA, R_PHI] = [0, 1, 2, 3, 4] as const

/** The azimuth of the last question with its cosine and sine: a walk down a meridian asks for one of them a hundred times. */
const AZIMUTH = Float64Array.of(0, 1, 0)
const [PHI, COS, SIN] = [0, 1, 2] as const

function reckon(loft: Loft, phi: number, sigma: number): void {
  const near = NEAR * loft.section.length
  if (sigma >= near || loft.ridge > 0) {
    reckonInside(loft, phi, sigma)
    return
  }
  reckonInside(loft, phi, near)
  const share = Math.max(0, sigma) / near
  const crown = loft.section.elements[0].z0
  NOW[R] *= share
  NOW[R_PHI] *= share
  NOW[Z] = crown - (crown - NOW[Z]) * share * share
  NOW[Z_SIGMA] *= share
}

function reckonInside(loft: Loft, phi: number, sigma: number): void {
  const s = elementAt(loft.section, sigma)
  const run = sigma - s.girth0
  const isLine = s.curvature === 0
  const heading = s.heading0 + s.curvature * run
  const sinS = isLine ? s.sin0 : Math.sin(heading)
  const cosS = isLine ? s.cos0 : Math.cos(heading)
  const Y = isLine ? s.y0 + run * cosS : s.y0 + (sinS - s.sin0) / s.curvature
  const z = isLine ? s.z0 - run * sinS : s.z0 + (cosS - s.cos0) / s.curvature
  const p = elementAtZ(loft.profile, z)
  // straight: y runs with the depth; on an arc the depth gives the heading by its cosine
  const cosP = p.curvature === 0 ? p.cos0 : clamp(p.cos0 + p.curvature * (z - p.z0))
  const sinP = Math.sqrt(1 - cosP * cosP)
  const L = p.curvature === 0 ? p.y0 + ((p.z0 - z) * cosP) / sinP : p.y0 + (sinP - p.sin0) / p.curvature
  if (phi !== AZIMUTH[PHI]) {
    AZIMUTH[PHI] = phi
    AZIMUTH[COS] = Math.cos(phi)
    AZIMUTH[SIN] = Math.sin(phi)
  }
  const c = AZIMUTH[COS]
  const t = AZIMUTH[SIN]
  // in the section's own plane the profile has no say, not even on a ridge, where its reach is nothing
  const flank = Math.abs(c) < 1e-12
  NOW[Z] = z
  // so near a ridge that heights no longer tell from it, it is the ridge
  if (loft.ridge > 0 && !flank && (sigma <= loft.ridge || !(L > 0))) {
    NOW[R] = NOW[R_SIGMA] = NOW[Z_SIGMA] = NOW[R_PHI] = 0
    return
  }
  const across = Math.abs(t) / Y
  const along = flank ? 0 : Math.abs(c) / L
  // the greater term is taken out, so that neither share is a difference of near equals
  const most = Math.max(across, along)
  const lesser = Math.exp(loft.exponent * Math.log(Math.min(across, along) / most))
  const r = Math.exp(-Math.log1p(lesser) / loft.exponent) / most
  // each term's share in the sum of the two, which is 1 on the surface
  const shareY = (across === most ? 1 : lesser) / (1 + lesser)
  const shareL = (across === most ? lesser : 1) / (1 + lesser)
  const slopeL = sinP === 0 ? Math.sqrt(loft.profile.elements[0].curvature / s.curvature) : (cosP * sinS) / sinP
  NOW[R] = r
  NOW[R_SIGMA] = r * ((shareY * cosS) / Y + (shareL === 0 ? 0 : (shareL * slopeL) / L))
  NOW[Z_SIGMA] = -sinS
  // a share vanishes faster than the sine it is divided by, so the axes need no case of their own
  NOW[R_PHI] = -r * ((t === 0 ? 0 : (shareY * c) / t) - (c === 0 ? 0 : (shareL * t) / c))
}

/**
 * How far out a point is against the surface on the same radius from the crown's axis: below 1 inside, above it outside;
 * null above the crown and below the toe. Asked for by the thousand, so it does without angles.
 */
export function shareOfRadius(loft: Loft, p: Vec3): number | null {
  const { section, profile, exponent, foot } = loft
  const z = p[2]
  if (z >= section.elements[0].z0 || z < foot - 1e-9) return null
  const across = Math.abs(p[1]) / outAtZ(elementAtZ(section, z), z)
  const along = Math.abs(p[0]) / outAtZ(elementAtZ(profile, z), z)
  const most = Math.max(across, along)
  if (most === 0) return 0
  // as the radius itself is reckoned
  const lesser = Math.exp(exponent * Math.log(Math.min(across, along) / most))
  return most * Math.exp(Math.log1p(lesser) / exponent)
}

/** How far out a chain has come at height z of one of its elements. */
function outAtZ(e: ChainElement, z: number): number {
  if (e.curvature === 0) return e.y0 + ((e.z0 - z) * e.cos0) / e.sin0
  // 1 - cosine is kept apart, because near a level crown the cosine alone has forgotten how far it has turned
  const versine = 1 - e.cos0 + e.curvature * (e.z0 - z)
  return e.y0 + (Math.sqrt(versine * (2 - versine)) - e.sin0) / e.curvature
}

export function pointOf(p: LoftPoint, phi: number): Vec3 {
  return [p.r * Math.cos(phi), p.r * Math.sin(phi), p.z]
}

/** Unit normal pointing outward. */
export function normalOf({ r, rSigma, zSigma, rPhi }: LoftPoint, phi: number): Vec3 {
  return outward(r, rSigma, zSigma, rPhi, Math.cos(phi), Math.sin(phi))
}

function outward(r: number, rSigma: number, zSigma: number, rPhi: number, c: number, t: number): Vec3 {
  // cross product of the derivatives by phi and by sigma
  const x = (rPhi * t + r * c) * zSigma
  const y = -(rPhi * c - r * t) * zSigma
  const z = (rPhi * c - r * t) * rSigma * t - (rPhi * t + r * c) * rSigma * c
  const length = -Math.sqrt(x * x + y * y + z * z)
  // at the crown the meridians meet and the surface is level
  if (length === 0) return [0, 0, 1]
  return [x / length, y / length, z / length]
}

/** How far a point stands inside the surface along its radius from the crown's axis, positive inside; null above the crown or below the toe. */
function radialDepth(loft: Loft, point: Vec3): number | null {
  const sigma = sigmaAtZ(loft.section, point[2])
  if (sigma === null) return null
  const phi = Math.atan2(point[1], point[0])
  return loftAt(loft, phi, sigma).r - Math.hypot(point[0], point[1])
}

/** How far a point stands inside the loft, along the normal beside it: good where that is little against the radii. m */
export function depthInside(loft: Loft, point: Vec3): number {
  const radial = radialDepth(loft, point)
  const sigma = sigmaAtZ(loft.section, point[2])
  if (radial === null || sigma === null) return 0
  const phi = Math.atan2(point[1], point[0])
  const n = normalOf(loftAt(loft, phi, sigma), phi)
  return radial * (n[0] * Math.cos(phi) + n[1] * Math.sin(phi))
}
