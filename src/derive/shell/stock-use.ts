/** Which strakes come out of which sheet of stock, side by side across its width: the strake puzzle. */
import type { StockRules, StockSize } from '../../definition/types.js'
import type { Part, SheetUse } from '../nouns.js'

/** What a strake needs of its stock, m. */
export interface StripNeed {
  readonly part: string
  readonly stock: StockSize
  /** mould-line width and length */
  readonly width: number
  readonly length: number
}

export function stripNeed(part: Part, stock: StockSize, width: number): StripNeed {
  return { part: part.id, stock, width, length: Math.max(...part.patterns[0].outline.map((p) => p[0])) }
}

/** Usable size of a sheet once its mill edges are squared, m. */
export function usable(stock: StockSize, rules: StockRules): { width: number; length: number } {
  return { width: stock.width - 2 * rules.trim, length: stock.length - 2 * rules.trim }
}

/**
 * Sheets of each stock size for strips as long as the sheet: the widest strip first, each into the fullest sheet that still takes it.
 * That is the fewest while every strip is wider than a third of its sheet; with narrower ones a better arrangement may exist. A short
 * strip takes a whole length, and one that fits nowhere stands alone (the stock check refuses it).
 */
export function sheetsFor(needs: readonly StripNeed[], rules: StockRules): SheetUse[] {
  const sheets: { stock: StockSize; parts: string[]; used: number; available: number }[] = []
  for (const need of [...needs].sort((a, b) => b.width - a.width || (a.part < b.part ? -1 : 1))) {
    const available = usable(need.stock, rules).width
    const open = sheets
      .filter((s) => s.stock.name === need.stock.name && s.used + rules.kerf + need.width <= available + 1e-9)
      .sort((a, b) => b.used - a.used)[0]
    if (open) {
      open.parts.push(need.part)
      open.used += rules.kerf + need.width
    } else sheets.push({ stock: need.stock, parts: [need.part], used: need.width, available })
  }
  return sheets.map((s) => ({ stock: s.stock.name, parts: s.parts, used: s.used, available: s.available }))
}
