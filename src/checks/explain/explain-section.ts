/** The section's numbers: girths as the sum of its arcs and lines, and where they come on the lining. */

import { bendAllowance } from '../../derive/common/bending.formulas.js'
import { liningDepth } from '../../derive/common/lining-depth.js'
import type { SectionPoint } from '../../derive/nouns.js'
import { offsetGirth } from '../../derive/shell/formulas/surface.formulas.js'
import type { ChainElement } from '../../maths/tangent-chain.js'
import { headingAt } from '../../maths/tangent-chain.js'
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Subject } from './entry.js'
import { arcLength, depthSum, girthSum } from './explain.formulas.js'

export function sectionEntries({ derived }: Subject): readonly Entry[] {
  const { chain, residual } = derived.shell.section
  const { points } = derived.section
  return [
    { id: 'section.girth', says: 'girth from the crown to the toe', work: () => girthTo(chain.elements, chain.length) },
    ...(residual
      ? [{ id: 'section.residual', says: 'what the fitted section still misses of the sizes asked for', work: () => residual }]
      : []),
    ...points.map(
      (p): Entry => ({
        id: `section.girth-at.${p.id}`,
        says: `girth from the crown to ${p.says}`,
        work: () => girthTo(chain.elements, p.girth),
      }),
    ),
    ...points.map(
      (p): Entry => ({ id: `section.lining-girth.${p.id}`, says: `girth on the lining to ${p.says}`, work: () => liningGirth(p) }),
    ),
    ...toeEntries(derived.definition.shell),
  ]

  function liningGirth(p: SectionPoint): Worked<'m'> {
    return offsetGirth({ G: girthTo(chain.elements, p.girth), d: depth(), theta: headingAt(chain, p.girth) - chain.elements[0].heading0 })
  }

  function depth(): Worked<'m'> {
    const { skin, frame, tape } = derived.definition.shell
    const sum = depthSum({ skin: skin.thickness.value, frame: frame.height, tape })
    if (Math.abs(sum.value - liningDepth(derived.definition)) > 1e-12)
      throw new Error(`the lining lies ${liningDepth(derived.definition)} m deep, not ${sum.value}`)
    return sum
  }
}

/** Each whole piece as worked from its radius and angle, and the part of the last one; a line is its own length. */
function girthTo(elements: readonly ChainElement[], girth: number): Worked<'m'> {
  const terms: Record<string, number | Worked<'m'>> = {}
  for (const [i, e] of elements.entries()) {
    const run = Math.min(girth, e.girth1) - e.girth0
    if (run <= 0 && i > 0) break
    const name = elements.some((other, k) => k !== i && other.name === e.name) ? `${e.name} ${i + 1}` : e.name
    terms[name] = e.curvature === 0 ? Math.max(run, 0) : arcLength({ R: 1 / e.curvature, A: Math.max(run, 0) * e.curvature })
  }
  return girthSum(terms)
}

function toeEntries(shell: Subject['derived']['definition']['shell']): readonly Entry[] {
  const { toe, skin } = shell
  if (toe.flange === 0 || toe.turn === 0) return []
  const work = () => bendAllowance({ R: toe.bendRadius, K: toe.kFactor, t: skin.thickness.value, A: Math.abs(toe.turn) })
  return [{ id: 'bend.toe', says: 'flat length of the bend at the toe', work }]
}
