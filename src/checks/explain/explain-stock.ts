/** Strakes against their stock: how wide each is, and how much of its sheet is there for it. */
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Subject } from './entry.js'
import { stockShare, strakeWidth } from './explain.formulas.js'

export function stockEntries({ derived }: Subject): readonly Entry[] {
  const { shell, stock } = derived.definition
  return shell.strakes.flatMap((strake, i): Entry[] => [
    { id: `stock.${strake.id}.width`, says: `width of one ${strake.id} strake round the mould line`, work: () => widthOf(derived, i) },
    {
      id: `stock.${strake.id}.room`,
      says: `width of ${strake.stock.name} there is for one ${strake.id} strake`,
      work: () => stockShare({ W: strake.stock.width, trim: stock.trim, n: strake.across, kerf: stock.kerf }),
    },
  ])
}

function widthOf(derived: Subject['derived'], i: number): Worked<'m'> {
  const { seams, strakes, lap } = derived.definition.shell
  const lower = i < seams.length ? seams[i].girth : derived.shell.section.sheetEdge
  const half = lap / 2
  if (i === 0)
    return strakeWidth({ 'right half': lower, 'left half': lower, ...(seams.length > 0 ? { 'right lap': half, 'left lap': half } : {}) })
  const below: Readonly<Record<string, number>> = i < strakes.length - 1 ? { 'lower lap': half } : {}
  return strakeWidth({ band: lower - seams[i - 1].girth, 'upper lap': half, ...below })
}
