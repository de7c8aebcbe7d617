/** Seams and strakes of a new coach: as on its pattern where the sheets the shop buys still hold them, and moved or bought wider where not. */
import type { Definition, StockSize } from '../../definition/types.js'
import { type Change, mm, whole } from './change.js'
import { type Branch, isBranch } from './tree.js'

const items = (tree: Branch[string] | undefined): readonly Branch[] => (Array.isArray(tree) ? tree.filter(isBranch) : [])

export function strakesOf(shell: Branch, { stock, shell: { seams, strakes, joint, lap, toe } }: Definition, change: Change): Branch {
  const length = (change.frames.at(-1) ?? 0) - change.frames[0] + joint.overlap
  const long = stock.sheets
    .map(({ name, ...whole }) => ({ name, width: whole.width - 2 * stock.trim, length: whole.length - 2 * stock.trim }))
    .filter((each) => each.length >= length)
  // where no sheet is long enough the check of the stock says so, and what a splice takes
  const reach = long.length > 0 ? Math.max(...long.map(({ width }) => width)) - lap : Number.POSITIVE_INFINITY
  const girths = seamsWithin(
    seams.map((seam) => whole(seam.girth * change.girth)),
    reach,
  )
  const edges = [0, ...girths, change.half + toe.flange]
  return {
    ...shell,
    seams: items(shell.seams).map((seam, i) => ({ ...seam, girth: mm(girths[i]) })),
    strakes: items(shell.strakes).map((strake, i) => {
      const last = i === girths.length
      const width = i === 0 ? 2 * edges[1] + lap : edges[i + 1] - edges[i] + (last ? lap / 2 : lap)
      const strips = strakes[i].across
      const side = sheetFor(long, strips * width + (strips - 1) * stock.kerf) ?? sheetFor(long, width)
      if (!side) return strake
      const { across: _, ...alone } = strake
      return strips > 1 && side.width < strips * width ? { ...alone, stock: side.name, across: '1' } : { ...strake, stock: side.name }
    }),
  }
}

/** From the lowest seam up, none further above the next than the widest sheet reaches. A hair is kept off the edge of what fits. */
function seamsWithin(girths: readonly number[], widest: number): readonly number[] {
  const out = [...girths]
  for (let i = out.length - 2; i >= 0; i--) out[i] = Math.max(out[i], Math.ceil((out[i + 1] - widest) * 1000) / 1000)
  return out
}

/** The narrowest that is wide enough, and of those the shortest. */
const sheetFor = <T extends Pick<StockSize, 'name' | 'width' | 'length'>>(sheets: readonly T[], width: number): T | undefined =>
  sheets.filter((each) => each.width >= width).sort((a, b) => a.width - b.width || a.length - b.length)[0]
