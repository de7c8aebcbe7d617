/** The two tables a shop edits, as one JSON text: what its machine's words are, and what stands in its turret. */
import { z } from 'zod'
import type { ToolTable } from './tool-table.js'
import { DEFAULT_TOOLS } from './tool-table.js'
import type { WordTable } from './word-table.js'
import { DEFAULT_WORDS, wordTableFaults } from './word-table.js'

export interface ShopTables {
  readonly words: WordTable
  readonly tools: ToolTable
}

export const DEFAULT_SHOP: ShopTables = { words: DEFAULT_WORDS, tools: DEFAULT_TOOLS }

const word = z.string()
const wordsForm = z.strictObject({
  name: word,
  start: word,
  tool: word,
  stop: word,
  move: word,
  hit: word,
  dwell: word.nullable(),
  dwellSeconds: z.number().min(0),
  end: word,
  comment: z.tuple([word.min(1), word.min(1)]),
})
// at the door a tool has its size in millimetres, as on the turret card
const toolsForm = z.array(z.strictObject({ tool: z.int().min(1), says: word, diameterMm: z.number().positive() })).min(1)
const form = z.strictObject({ words: wordsForm, tools: toolsForm })

export function shopTablesText(shop: ShopTables): string {
  const tools = shop.tools.map(({ tool, says, diameter }) => ({ tool, says, diameterMm: Math.round(diameter * 1e6) / 1000 }))
  return `${JSON.stringify({ words: shop.words, tools }, null, 2)}\n`
}

/** `name` is how the file is called in sentences. Either tables or sentences saying what to mend, never both. */
export function readShopTables(text: string, name: string): { readonly shop: ShopTables | null; readonly faults: readonly string[] } {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch (reason) {
    return { shop: null, faults: [`${name} is not JSON: ${(reason as Error).message}. Start from programs/shop-tables.json of a packet.`] }
  }
  const read = form.safeParse(value)
  if (!read.success)
    return { shop: null, faults: read.error.issues.map((i) => `${name}, ${i.path.join('.') || 'as a whole'}: ${i.message}.`) }
  const { words } = read.data
  const tools = read.data.tools.map(({ tool, says, diameterMm }) => ({ tool, says, diameter: Math.round(diameterMm * 1e3) / 1e6 }))
  const twice = tools.find((t, i) => tools.findIndex((o) => o.tool === t.tool) !== i)
  const faults = [...wordTableFaults(words), ...(twice ? [`${name} has tool ${twice.tool} twice. Give each its own number.`] : [])]
  return faults.length ? { shop: null, faults } : { shop: { words, tools }, faults: [] }
}
