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
  // five points are exact to a few nanometres on such a stretch
  const stops = stretchesOf(loft, 0.3, 1 / 6)
  const panels = stops.slice(1).map((to, i): Panel => {
    const from = stops[i]
    return { from, to, nodes: GAUSS.flatMap((g) => nodeAt(loft, from + g * (to - from))) }
  })
  PANELS.set(loft, panels)
  return panels
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
  const panels = panelsOf(loft)
  const n = loft.exponent
  const flank = Math.abs(Math.cos(phi)) < 1e-12
  const [t, c] = [Math.abs(Math.sin(phi)) ** n, flank ? 0 : Math.abs(Math.cos(phi)) ** n]
  let sum = 0
  for (const panel of panels) {
    if (panel.from >= sigma) break
    if (panel.to <= loft.ridge && !flank) continue
    const whole = panel.to <= sigma
    const step = (whole ? panel.to : sigma) - panel.from
    for (let j = 0; j < 5; j++) {
      if (!whole) {
        sum += WEIGHT[j] * step * meridianSpeed(loft, phi, panel.from + GAUSS[j] * step)
        continue
      }
      const { nodes } = panel
      const a = t * nodes[5 * j]
      const b = flank ? 0 : c * nodes[5 * j + 1]
      const slope = (Math.exp(-Math.log(a + b) / n) * (a * nodes[5 * j + 2] + b * nodes[5 * j + 3])) / (a + b)
      const dz = nodes[5 * j + 4]
      sum += WEIGHT[j] * step * Math.sqrt(slope * slope + dz * dz)
    }
  }
  return sum
}

/** Section girth at which the meridian of azimuth phi has run `girth` m from the crown. */
export function sigmaAtMeridian(loft: Loft, phi: number, girth: number): number {
  const top = Math.abs(Math.cos(phi)) < 1e-12 ? 0 : loft.ridge
  const least = top + loft.section.length * 1e-6
  let sigma = Math.min(top + girth, loft.section.length)
  let run = meridianGirth(loft, phi, sigma)
  for (let i = 0; i < 30; i++) {
    const miss = run - girth
    if (Math.abs(miss) < loft.section.length * 1e-13) break
    const next = Math.min(Math.max(sigma - miss / meridianSpeed(loft, phi, sigma), least), loft.section.length)
    if (next === sigma) break
    run += between(loft, phi, sigma, next)
    sigma = next
  }
  return sigma
}

/** Length from one section girth to another nearby; over a longer way both are summed from the crown. */
function between(loft: Loft, phi: number, from: number, to: number): number {
  const crosses = loft.breaks.some((b) => b > Math.min(from, to) && b < Math.max(from, to))
  if (crosses || Math.abs(to - from) > loft.section.length / 12) return meridianGirth(loft, phi, to) - meridianGirth(loft, phi, from)
  let sum = 0
  for (let j = 0; j < 5; j++) sum += WEIGHT[j] * (to - from) * meridianSpeed(loft, phi, from + GAUSS[j] * (to - from))
  return sum
}
