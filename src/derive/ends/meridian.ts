/**
 * Lengths down an end in the vertical plane at an azimuth. What depends on the height alone (half width, reach, slopes) is
 * worked out once a panel of the section, so that a length at another azimuth costs one power a point.
 */
import { lagrange, timesFive } from '../../maths/lagrange.js'
import { type Loft, loftAt, meridianSpeed, stretchesOf } from '../../maths/loft.js'
import { GAUSS, WEIGHT } from '../../maths/quadrature.js'

/** Turns speeds at the five points into the coefficients of the running length, by the share of the way there: t, t2 … t5. */
const RUN = lagrange(GAUSS).map((row, power) => row.map((v) => v / (power + 1)))

/** A stretch of section girth that neither runs far nor turns much, with five points on it. */
export interface Panel {
  readonly from: number
  readonly to: number
  /** Y, (Y/L)^n, Y'/Y, L'/L and z' at each of the five points, by section girth, one point after the other */
  readonly nodes: readonly number[]
}

const PANELS = new WeakMap<Loft, readonly Panel[]>()

/** From the crown to the toe. Every loft is parted once. */
function panelsOf(loft: Loft): readonly Panel[] {
  const known = PANELS.get(loft)
  if (known) return known
  const stops = stretchesOf(loft, 0.3, 1 / 6)
  const panels = stops.slice(1).flatMap((to, i) => panelsWithin(loft, stops[i], to, 16))
  PANELS.set(loft, panels)
  return panels
}

const HALVES = new WeakMap<Loft, readonly Panel[]>()

/** Half of each: so short that the length within one is a polynomial. Every loft is halved once for all its ribs. */
export function halvesOf(loft: Loft): readonly Panel[] {
  const known = HALVES.get(loft)
  if (known) return known
  const halves = panelsOf(loft).flatMap(({ from, to }) => {
    const middle = (from + to) / 2
    return [panelAt(loft, from, middle), panelAt(loft, middle, to)]
  })
  HALVES.set(loft, halves)
  return halves
}

function panelAt(loft: Loft, from: number, to: number): Panel {
  return { from, to, nodes: GAUSS.flatMap((g) => nodeAt(loft, from + g * (to - from))) }
}

/** Azimuths at which a panel is tried: where the profile has all the say, and where both have. */
const TRIED = [0, Math.PI / 4] as const
/** Beside the joint the meridians of a flat roof all but keep to its ridge, and turn off it the later and the sharper. */
const BESIDE_RIDGE = [1.52, 1.57] as const
/** Most that the two halves of a panel may say otherwise than the whole, of the section's length: a nanometre or two. */
const AGREES = 5e-10

/** A profile that runs nearly level under a falling roof is long where the section is short: there the stretch is halved until it is even. */
function panelsWithin(loft: Loft, from: number, to: number, deeper: number): Panel[] {
  const middle = (from + to) / 2
  const isEven = (phi: number): boolean => {
    const halves = within(loft, phi, from, middle) + within(loft, phi, middle, to)
    return Math.abs(halves - within(loft, phi, from, to)) <= AGREES * loft.section.length
  }
  const isFair = TRIED.every(isEven) && (loft.ridge === 0 || BESIDE_RIDGE.every(isEven))
  if (deeper === 0 || to <= loft.ridge || isFair) {
    return [panelAt(loft, from, to)]
  }
  return [...panelsWithin(loft, from, middle, deeper - 1), ...panelsWithin(loft, middle, to, deeper - 1)]
}

function nodeAt(loft: Loft, sigma: number): number[] {
  const flank = loftAt(loft, Math.PI / 2, sigma)
  const tip = loftAt(loft, 0, sigma)
  const n = loft.exponent
  // on a ridge the profile has no reach: its term is endless and the radius nothing
  return [flank.r, (flank.r / tip.r) ** n, flank.rSigma / flank.r, tip.r === 0 ? 0 : tip.rSigma / tip.r, flank.zSigma]
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

/** Speeds at the points of the panel that was asked for last: one more list for every answer would cost more than the answer. */
const SPEED = new Float64Array(5)

/** Length over a whole panel, from what is kept of its points. */
function wholePanel({ from, to, nodes }: Panel, { n, t, c }: Way): number {
  let sum = 0
  for (let j = 0; j < 5; j++) {
    const b = c === 0 ? 0 : c * nodes[5 * j + 1]
    const r = nodes[5 * j] * Math.exp(-Math.log(t + b) / n)
    const slope = (r * (t * nodes[5 * j + 2] + b * nodes[5 * j + 3])) / (t + b)
    const dz = nodes[5 * j + 4]
    SPEED[j] = Math.sqrt(slope * slope + dz * dz)
    sum += WEIGHT[j] * SPEED[j]
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

/** Coefficients of the running length over the panel asked for last, by the share of the way there: t, t2 … t5; m a m of section girth. */
const runningLast = (): number[] => RUN.map((row) => timesFive(row, SPEED))

/** A stretch of a meridian from a section girth on: how far it runs there, and the coefficients of the length it runs to, m. */
export interface Stretch {
  readonly from: number
  readonly span: number
  readonly run: readonly number[]
}

/** The meridian of azimuth phi in stretches from where it begins to the toe. */
export function meridianStretches(loft: Loft, phi: number): Stretch[] {
  const way = wayOf(loft, phi)
  const stretches: Stretch[] = []
  for (const panel of halvesOf(loft)) {
    if (panel.to <= way.top) continue
    wholePanel(panel, way)
    const span = panel.to - panel.from
    stretches.push({ from: panel.from, span, run: runningLast().map((c) => c * span) })
  }
  return stretches
}

/** Share of the way down the panel asked for last at which it has run a share of its length, by the polynomial through its speeds. */
function shareAt(want: number): number {
  const c = runningLast()
  const whole = c[0] + c[1] + c[2] + c[3] + c[4]
  let t = want
  for (let i = 0; i < 8; i++) {
    const run = t * (c[0] + t * (c[1] + t * (c[2] + t * (c[3] + t * c[4]))))
    const speed = c[0] + t * (2 * c[1] + t * (3 * c[2] + t * (4 * c[3] + t * 5 * c[4])))
    if (!(speed > 0)) return want
    const step = (run - want * whole) / speed
    t = Math.min(1, Math.max(0, t - step))
    if (Math.abs(step) < 1e-13) break
  }
  return t
}

/** Newton from where the polynomial through the panel's speeds puts it, which is all but there. */
function inPanel(loft: Loft, phi: number, { from, to }: Panel, want: number, length: number, top: number): number {
  // where the meridians begin they all meet, and nothing tells how fast they leave
  const least = from <= top ? from + loft.section.length * 1e-6 : from
  let sigma = Math.max(least, from + shareAt(want / length) * (to - from))
  let run = within(loft, phi, from, sigma)
  let speed = meridianSpeed(loft, phi, sigma)
  const near = loft.section.length * 1e-13
  for (let i = 0; i < 30; i++) {
    const miss = run - want
    if (Math.abs(miss) < near) break
    const next = Math.min(Math.max(sigma - miss / speed, least), to)
    const after = meridianSpeed(loft, phi, next)
    // a step over which the speed does not change is the last
    if (Math.abs((next - sigma) * (after - speed)) < near) return next
    run += within(loft, phi, sigma, next)
    sigma = next
    speed = after
  }
  return sigma
}
