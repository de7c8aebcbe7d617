/**
 * Addresses on nose and tail as a shop writes them: the end, a gore, and how far down it.
 *
 * `nose gore 4 WL 1160` and `tail gore 2 G 1240` are on the mid rib of that gore; `nose WL 1160 BL 200` and
 * `nose C STA 2300 WL 1160` are anywhere. G is the tape from the crown down the vertical plane through the crown and the
 * place. Reading only: whether the end has such a place is found in place-on-end.ts.
 */
import type { End } from '../../derive/end-names.js'
import { readValues, type SideWord, sideFirst, tidied } from './address.js'

/** m; what was not written is null. */
export interface EndAddress {
  readonly which: End
  readonly gore: number | null
  readonly side: SideWord | null
  readonly station: { readonly from: 'nose datum' | 'last frame'; readonly value: number } | null
  readonly WL: number | null
  /** right positive */
  readonly BL: number | null
  readonly G: number | null
}

export type ReadEndAddress = { readonly ok: true; readonly address: EndAddress } | { readonly ok: false; readonly says: string }

export const END_EXAMPLES = 'for instance "nose gore 4 WL 1160", "tail gore 2 G 1240" or "nose WL 1160 BL 200"'

const END = /^(nose|tail)(?=[\s\d]|$)/i
const GORE = /^gore\s*(\d{1,3})(?=\D|$)/i

/** Null where the address does not start with nose or tail. */
export function readEndAddress(text: string): ReadEndAddress | null {
  const tidy = tidied(text)
  const ended = END.exec(tidy)
  if (!ended) return null
  const which = ended[1].toLowerCase() as End
  const afterEnd = tidy.slice(ended[0].length).trim()
  const gored = GORE.exec(afterEnd)
  if (!gored && /^gore\b/i.test(afterEnd)) return refuse(`"${text}" says gore without its number. Write ${END_EXAMPLES}.`)
  const { side, rest } = sideFirst(afterEnd.slice(gored ? gored[0].length : 0).trim())
  const read = readValues(text, rest, END_EXAMPLES)
  if (!read.ok) return read
  const value = (key: string): number | null => read.values.get(key) ?? null
  if (value('g') !== null) return refuse(`g counts on the lining of the barrel; on the ${which} write G, ${END_EXAMPLES}.`)
  const [sta, t] = [value('STA'), value('T')]
  if (sta !== null && t !== null) return refuse(`"${text}" gives the station twice, as STA and as T. Write one of them.`)
  const station = sta !== null ? { from: 'nose datum' as const, value: sta } : t !== null ? { from: 'last frame' as const, value: t } : null
  return {
    ok: true,
    address: { which, gore: gored ? Number(gored[1]) : null, side, station, WL: value('WL'), BL: value('BL'), G: value('G') },
  }
}

function refuse(says: string): { readonly ok: false; readonly says: string } {
  return { ok: false, says }
}
