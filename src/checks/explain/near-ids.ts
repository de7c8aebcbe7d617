/** Ids near to one that is not there: for sentences that help. */
import { edits } from '../../definition/near-miss.js'

/** At most `most`: first those it is the beginning or a part of, then those nearest by spelling. */
export function nearIds(id: string, known: readonly string[], most = 3): readonly string[] {
  const wanted = id.toLowerCase().slice(0, 80)
  if (wanted === '') return []
  const scored = known.flatMap((each) => {
    const here = each.toLowerCase()
    const holds = here.startsWith(wanted) ? 0 : here.includes(wanted) || (here.length > 3 && wanted.includes(here)) ? 1 : null
    const away = holds ?? edits(wanted, here)
    return holds !== null || away <= Math.max(2, Math.floor(wanted.length / 3)) ? [{ each, away }] : []
  })
  return scored
    .sort((a, b) => a.away - b.away || a.each.length - b.each.length || (a.each < b.each ? -1 : 1))
    .slice(0, most)
    .map(({ each }) => each)
}
