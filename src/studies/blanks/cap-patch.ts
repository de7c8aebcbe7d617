/**
 * The crown cap with its lap over the gores and its tab under the barrel: a half disc and a strip, laid on a square. The chart is
 * girth from the crown by azimuth; on the strip it is girth by the way back along the barrel. The square goes onto the disc by
 * x = w sqrt(1 - a^2/2), y = a sqrt(1 - w^2/2), which leaves no cell without width; its two far corners lie on the smooth edge.
 * v runs outward from the barrel, u from left to right.
 */
import { meridianGirth, sigmaAtMeridian } from '../../derive/ends/meridian.js'
import type { Panel } from './panel.js'
import { depthAtJoint, eased, middleAt, type OnSheet, type Shape, sheetAt } from './shape.js'

const ROOT2 = Math.SQRT2

/** Throws on a flat roof, where the two halves of the cap meet in a ridge: `hasCap` tells. */
export function capPanel(shape: Shape): Panel {
  const { loft, input } = shape
  const { thickness: t, barrel, cap, lap, joint } = input
  if (!hasCap(shape)) throw new Error('a cap over a ridge is not one smooth panel')
  const [reach, tab] = [cap + lap / 2, joint.overlap / 2]
  const stripOf = (a: number): number => tab / (reach * Math.sqrt(1 - (a * a) / 2))

  const chartAt = (u: number, v: number): readonly [x: number, y: number] => {
    const a = 2 * u - 1
    const strip = stripOf(a)
    const w = v * (1 + strip) - strip
    return [reach * w * Math.sqrt(1 - (a * a) / 2), reach * a * (w > 0 ? Math.sqrt(1 - (w * w) / 2) : 1)]
  }
  const onSheet = (u: number, v: number): OnSheet => {
    const [x, y] = chartAt(u, v)
    const girth = x > 0 ? Math.hypot(x, y) : Math.abs(y)
    const phi = x > 0 ? Math.atan2(y, x) : ((y < 0 ? -1 : 1) * Math.PI) / 2
    return { phi, sigma: girth === 0 ? 0 : sigmaAtMeridian(loft, phi, girth), past: 0, back: x > 0 ? 0 : -x }
  }
  const locate = ({ phi, sigma, back }: OnSheet): readonly [number, number] => {
    const girth = meridianGirth(loft, phi, sigma) / reach
    const [x, y] = back > 0 ? [-back / reach, Math.sign(phi) * girth] : [girth * Math.cos(phi), girth * Math.sin(phi)]
    const a = x > 0 ? onSquare(y, x) : y
    const w = x > 0 ? onSquare(x, y) : x / Math.sqrt(1 - (a * a) / 2)
    return [(a + 1) / 2, (w + stripOf(a)) / (1 + stripOf(a))]
  }
  const under = depthAtJoint(joint.over, t, barrel) - t / 2
  return {
    id: 'cap',
    kind: 'cap',
    number: 0,
    onSheet,
    locate,
    girthAt: (v) => Math.max(0, chartAt(0.5, v)[0]),
    patch: {
      point: (u, v) => middleAt(shape, onSheet(u, v), t / 2 + under * eased(1 - chartAt(u, v)[0] / (cap / 2))),
      normal: (u, v) => sheetAt(shape, onSheet(u, v)).normal,
    },
  }
}

export const hasCap = (shape: Shape): boolean => shape.loft.ridge === 0

/** The square's coordinate that runs with x, of a place on the unit disc. Rounding may leave the edge by a hair. */
function onSquare(x: number, y: number): number {
  const base = 2 + x * x - y * y
  return (Math.sqrt(Math.max(0, base + 2 * ROOT2 * x)) - Math.sqrt(Math.max(0, base - 2 * ROOT2 * x))) / 2
}
