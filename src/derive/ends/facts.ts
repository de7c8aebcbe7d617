/** What an end comes to, nose and tail alike: figures a shop asks for before it cuts. */
import { loftAt } from '../../maths/loft.js'
import type { EndRibFacts, EndsDerived } from '../nouns.js'
import { endDrawn } from './drawn.js'
import type { LocalEnd } from './local.js'
import { ribCurve } from './rib-curve.js'

/** What of it hangs on the end alone; its jigs know the stations too. */
export function endFacts(local: LocalEnd): Omit<EndsDerived, 'jig' | 'sideJig'> {
  const { ground } = local
  const { ends, shell } = ground.input
  const patches = [...local.gores, local.cap]
  const area = patches.reduce((sum, p) => sum + p.area, 0)
  const mean = (axis: 0 | 2): number => patches.reduce((sum, p) => sum + p.area * p.centre[axis], 0) / area
  const under = shell.joint.over === 'barrel' ? shell.skin.thickness.value : -ends.skin.thickness.value
  return {
    reach: loftAt(ground.loft, 0, widestSigma(local)).r,
    make: ends.make,
    ...(local.wrapped ? { wrapped: local.wrapped.facts } : {}),
    edges: ground.edges,
    area,
    centroid: { out: mean(0), waterline: mean(2) },
    floorPerimeter: perimeter(local, ground.floor),
    jointEdge: 2 * ribCurve(ground.loft, Math.PI / 2, under).length,
    drawn: endDrawn(local),
    ribs: local.ribs.map(
      (rib): EndRibFacts => ({
        id: `${rib.kind}-${rib.number}`,
        kind: rib.kind,
        azimuth: rib.phi,
        length: rib.outer.length,
        capToBase: rib.outer.lengthAt(ground.base ?? ground.floor) - ends.cap,
      }),
    ),
  }
}

/** Section girth where the centre-line profile stands farthest out: its heading is straight down there. */
function widestSigma(local: LocalEnd): number {
  const { loft } = local.ground
  let [low, high] = [0, loft.section.length]
  for (let i = 0; i < 60; i++) {
    const m = (low + high) / 2
    if (loftAt(loft, 0, m).rSigma > 0) low = m
    else high = m
  }
  return (low + high) / 2
}

/** Length of the plan outline at a section girth from joint to joint, m. */
function perimeter(local: LocalEnd, sigma: number): number {
  const { loft } = local.ground
  const speed = (phi: number): number => {
    const p = loftAt(loft, phi, sigma)
    return Math.hypot(p.r, p.rPhi)
  }
  // Simpson over the quarter; the superellipse is smooth in the azimuth but for its axes, where its higher derivatives jump
  const n = 400
  const h = Math.PI / 2 / n
  let sum = 0
  for (let i = 0; i <= n; i++) sum += (i === 0 || i === n ? 1 : i % 2 ? 4 : 2) * speed(i * h)
  return (2 * h * sum) / 3
}
