/** What an end comes to, nose and tail alike: figures a shop asks for before it cuts. */
import { type Loft, loftAt } from '../../maths/loft.js'
import { widest } from '../../maths/tangent-chain.js'
import type { EndRibFacts, EndsDerived } from '../nouns.js'
import type { LocalEnd } from './local.js'
import { ribCurve } from './rib-curve.js'

/** What of it hangs on the end alone and is asked for at once; its jigs know the stations too. */
export function endFacts(local: LocalEnd): Omit<EndsDerived, 'drawn' | 'jig' | 'sideJig'> {
  const { ground } = local
  const { ends, shell } = ground.input
  const patches = [...local.gores, local.cap]
  const area = patches.reduce((sum, p) => sum + p.area, 0)
  const mean = (axis: 0 | 2): number => patches.reduce((sum, p) => sum + p.area * p.centre[axis], 0) / area
  const under = shell.joint.over === 'barrel' ? shell.skin.thickness.value : -ends.skin.thickness.value
  return {
    reach: reachOf(ground.loft),
    make: ends.make,
    ...(local.wrapped ? { wrapped: local.wrapped.facts } : {}),
    edges: ground.edges,
    area,
    centroid: { out: mean(0), waterline: mean(2) },
    floorPerimeter: perimeter(local, ground.floor),
    jointEdge: 2 * ribCurve(ground.loft, Math.PI / 2, under).length,
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

/** How far the centre line stands out: where its profile is widest, or at the toe where it is still on its way out there. */
function reachOf(loft: Loft): number {
  const tip = widest(loft.profile)
  return tip.z >= loft.foot ? tip.y : loftAt(loft, 0, loft.section.length).r
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
