/** How far a cut may reach toward each lap of a side with its rim rivets clear of it by the rule. m. */
import { lapsOf } from '../../derive/shell/sheets.js'
import { developed, undeveloped } from '../../maths/development.js'
import { at as pointAt } from '../../maths/tangent-chain.js'
import type { Ground } from './ground.js'

/** Of each lap of a side: the highest waterline a cut may reach to under it, and the lowest over it. */
export function lapEdges(
  ground: Ground,
  side: string,
): readonly { readonly seam: string; readonly under: number; readonly over: number }[] {
  const { skin } = ground.derived.shell.laid
  const { chain } = ground.derived.shell.section
  const off = ground.line + ground.edge
  const levelAt = (v: number): number => pointAt(chain, undeveloped(skin, v)).z
  return lapsOf(ground.input)
    .filter((lap) => lap.side === side)
    .map((lap) => {
      const girth = Math.abs(lap.girth)
      return {
        seam: lap.seam,
        under: levelAt(developed(skin, girth + lap.half) + off),
        over: levelAt(developed(skin, girth - lap.half) - off),
      }
    })
}
