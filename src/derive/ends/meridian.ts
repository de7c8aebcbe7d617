/**
 * Lengths down an end in the vertical plane at an azimuth. What depends on the height alone (half width, reach, slopes) is
 * worked out once a panel of the section, so that a length at another azimuth costs one power a point.
 */
import { type Loft, loftAt, meridianSpeed, stretchesOf } from '../../maths/loft.js'

/** Five Gauss points and weights on 0..1. */
export const GAUSS = [0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332] as const
export const WEIGHT = [0.1184634425280945, 0.2393143352496832, 0.2844444444444444, 0.2393143352496832, 0.1184634425280945] as const

/** A stretch of section girth that neither runs far nor turns much, with five points on it. */
interface Panel {
  readonly from: number
  readonly to: number
  /** Y^-n, L^-n, Y'/Y, L'/L and z' at each of the five points, by section girth, one point after the other */
  readonly nodes: readonly number[]
}

const PANELS = new WeakMap<Loft, readonly Panel[]>()

/** Every loft is parted once. */
function panelsOf(loft: Loft): readonly Panel[] {
  const known = PANELS.get(loft)
  if (known) return known
  const stops = stretchesOf(loft, 0.3, 1 / 6)
  const panels = stops.slice(1).flatMap((to, i) => panelsWithin(loft, stops[i], to, 12))
  PANELS.set(loft, panels)
  return panels
}

/** Azimuths at which a panel is tried: where the profile has all the say, and where both have. */
const TRIED = [0, Math.PI / 4] as const
/** Most that the two halves of a panel may say otherwise than the whole, of the section's length: a nanometre or two. */
const AGREES = 5e-10

/** A profile that runs nearly level under a falling roof is long where the section is short: there the stretch is halved until it is even. */
function panelsWithin(loft: Loft, from: number, to: number, deeper: number): Panel[] {
  const middle = (from + to) / 2
  const isEven = (phi: number): boolean => {
    const halves = within(loft, phi, from, middle) + within(loft, phi, middle, to)
    return Math.abs(halves - within(loft, phi, from, to)) <= AGREES * loft.section.length
  }
  if (deeper === 0 || to <= loft.ridge || TRIED.every(isEven)) {
    return [{ from, to, nodes: GAUSS.flatMap((g) => nodeAt(loft, from + g * (to - from))) }]
  }
  return [...panelsWithin(loft, from, middle, deeper - 1), ...panelsWithin(loft, middle, to, deeper - 1)]
}

function nodeAt(loft: Loft, sigma: number): number[] {
  const flank = loftAt(loft, Math.PI / 2, sigma)
  const tip = loftAt(loft, 0, sigma)
  const n = loft.exponent
  // on a ridge the profile has no reach: its term is endless and the radius nothing
  return [flank.r ** -n, tip.r ** -n, flank.rSigma / flank.r, tip.r === 0 ? 0 : tip.rSigma / tip.r, flank.zSigma]
}

/** Length of the outer mould line from the crown down to section girth sigma in the vertical plane at azimuth phi, m. */
export function meridianGirth(loft: Loft, phi: number, sigma: number): number {
  const way = wayOf(loft, phi)
  let sum = 0
  for (const panel of panelsOf(loft)) {
    if (panel.from >= sigma) break
    if (panel.to <= way.top) continue
    if (panel.to > sigma) return sum + within(loft, phi, panel.from, sigma)
    sum += wholePanel(panel, way)
  }
  return sum
}

/** A meridian: the azimuth's sine and cosine to the power n, and the section girth it begins at, beyond the ridge of a flat roof. */
interface Way {
  readonly n: number
  readonly t: number
  readonly c: number
  readonly top: number
}

function wayOf(loft: Loft, phi: number): Way {
  const n = loft.exponent
  // in the section's own plane the profile has no say, and the section begins at the crown
  const flank = Math.abs(Math.cos(phi)) < 1e-12
  return { n, t: Math.abs(Math.sin(phi)) ** n, c: flank ? 0 : Math.abs(Math.cos(phi)) ** n, top: flank ? 0 : loft.ridge }
}

/** Length over a whole panel, from what is kept of its points. */
function wholePanel({ from, to, nodes }: Panel, { n, t, c }: Way): number {
  let sum = 0
  for (let j = 0; j < 5; j++) {
    const a = t * nodes[5 * j]
    const b = c === 0 ? 0 : c * nodes[5 * j + 1]
    const slope = (Math.exp(-Math.log(a + b) / n) * (a * nodes[5 * j + 2] + b * nodes[5 * j + 3])) / (a + b)
    const dz = nodes[5 * j + 4]
    sum += WEIGHT[j] * Math.sqrt(slope * slope + dz * dz)
  }
  return (to - from) * sum
}

/** Length from one section girth to another in the same panel. */
function within(loft: Loft, phi: number, from: number, to: number): number {
  let sum = 0
  for (let j = 0; j < 5; j++) sum += WEIGHT[j] * meridianSpeed(loft, phi, from + GAUSS[j] * (to - from))
  return (to - from) * sum
}

/** Section girth at which the meridian of azimuth phi has run `girth` m from the crown; that of the toe where it is longer. */
export function sigmaAtMeridian(loft: Loft, phi: number, girth: number): number {
  const way = wayOf(loft, phi)
  let run = 0
  for (const panel of panelsOf(loft)) {
    if (panel.to <= way.top) continue
    const length = wholePanel(panel, way)
    if (run + length > girth) return inPanel(loft, phi, panel, Math.max(0, girth - run), length, way.top)
    run += length
  }
  return loft.section.length
}

/** Newton from the chord's own share of a panel: it turns too little for the way down it to be far from even. */
function inPanel(loft: Loft, phi: number, { from, to }: Panel, want: number, length: number, top: number): number {
  // where the meridians begin they all meet, and nothing tells how fast they leave
  const least = from <= top ? from + loft.section.length * 1e-6 : from
  let sigma = Math.max(least, from + (want / length) * (to - from))
  let run = within(loft, phi, from, sigma)
  for (let i = 0; i < 30; i++) {
    const miss = run - want
    if (Math.abs(miss) < loft.section.length * 1e-13) break
    const next = Math.min(Math.max(sigma - miss / meridianSpeed(loft, phi, sigma), least), to)
    const step = next - sigma
    // a step so short that its own square no longer counts is the last: the speed changes by less than itself over a panel
    if (step * step <= loft.section.length * 1e-13 * (to - from)) return next
    run += within(loft, phi, sigma, next)
    sigma = next
  }
  return sigma
}
