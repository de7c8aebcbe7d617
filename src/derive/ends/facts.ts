/** What an end comes to, nose and tail alike: figures a shop asks for before it cuts. */
import { glanceAt, type Loft, loftAt } from '../../maths/loft.js'
import { integrate } from '../../maths/quadrature.js'
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

/** Panels half the quarter is summed in: good to a thousandth of a nanometre. */
const PANELS = 6

/** Length of the plan outline at a section girth from joint to joint, m. */
function perimeter(local: LocalEnd, sigma: number): number {
  const { loft } = local.ground
  const speed = (phi: number): number => {
    const p = glanceAt(loft, phi, sigma)
    return Math.sqrt(p.r * p.r + p.rPhi * p.rPhi)
  }
  // smooth in the azimuth but for the axes, where the superellipse's higher derivatives jump: closer together toward both
  const half = Math.PI / 4
  const both = (u: number): number => 2 * u * half * (speed(half * u * u) + speed(Math.PI / 2 - half * u * u))
  return 2 * integrate(both, 0, 1, PANELS)
}
