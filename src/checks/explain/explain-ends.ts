/** The ends' numbers: how far the tips reach, what their edge at the joint measures, and the area of the skin. */
import { arcReach, endArea, endReachSum, jointEdge } from '../../derive/ends/ends.formulas.js'
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Subject } from './entry.js'

export function endEntries({ derived }: Subject): readonly Entry[] {
  return [
    { id: 'ends.reach', says: 'how far the tip of nose or tail stands beyond its joint frame', work: () => reachOf(derived) },
    { id: 'ends.joint-edge', says: "outside of an end's own edge at the joint, toe to toe", work: () => edgeOf(derived) },
    { id: 'ends.area', says: 'area of the whole lofted surface of one end', work: () => areaOf(derived) },
  ]
}

/** Each piece of the profile as far as it still heads outward. */
function reachOf({ endSections }: Subject['derived']): Worked<'m'> {
  const { elements } = endSections.local.ground.loft.profile
  const terms: Record<string, number | Worked<'m'>> = {}
  for (const [i, e] of elements.entries()) {
    if (e.heading0 >= Math.PI / 2) break
    const name = elements.some((other, k) => k !== i && other.name === e.name) ? `${e.name} ${i + 1}` : e.name
    const down = Math.min(e.heading1, Math.PI / 2)
    terms[name] =
      e.curvature === 0 ? (e.girth1 - e.girth0) * Math.cos(e.heading0) : arcReach({ R: 1 / e.curvature, A_0: e.heading0, A_1: down })
  }
  return endReachSum(terms)
}

function edgeOf({ shell, definition }: Subject['derived']): Worked<'m'> {
  const { elements, length } = shell.section.chain
  const under = definition.shell.joint.over === 'barrel'
  return jointEdge({
    G: length,
    d: under ? definition.shell.skin.thickness.value : -definition.ends.skin.thickness.value,
    A: elements[elements.length - 1].heading1 - elements[0].heading0,
  })
}

function areaOf({ endSections }: Subject['derived']): Worked<'m^2'> {
  const { gores, cap } = endSections.local
  return endArea({ ...Object.fromEntries(gores.map((g, i) => [`gore ${i + 1}`, g.area])), cap: cap.area })
}
