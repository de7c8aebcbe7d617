/**
 * A neutral coordinate program in ISO 6983 words, made from the hole table and saying which one. Absolute millimetres from the
 * pattern's origin, one block a hole, one tool after another.
 *
 * It does not cover: repositioning, nesting, sheet clamps that move, nibbling of cuts. The hole table stays the authority.
 */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { ClampedEdge } from './clamp-zone.js'
import { clampWords } from './clamp-zone.js'
import type { TextOptions } from './heading.js'
import { CHECK_BEFORE_METAL, headingOf, mmText } from './heading.js'
import type { HoleLine, HoleTable } from './hole-table.js'
import { countWords } from './hole-table.js'
import type { ToolTable } from './tool-table.js'
import { DEFAULT_TOOLS } from './tool-table.js'
import { shortRoute, travelOf } from './traverse.js'
import type { WordTable } from './word-table.js'
import { DEFAULT_WORDS, fillWord } from './word-table.js'

export interface ProgramOptions extends TextOptions {
  readonly tools?: ToolTable
  readonly words?: WordTable
  /** the blank's edge the clamps hold; the low y edge unless told */
  readonly clamped?: ClampedEdge
}

export interface CoordinateProgram {
  readonly text: string
  /** hole numbers in the order they are made */
  readonly order: readonly number[]
  /** rapid travel, m */
  readonly travel: number
}

/** A remark may hold capitals and plain signs only, and no bracket of its own (ISO 6983-1; from memory). */
export function remark(words: WordTable, text: string): string {
  const [open, close] = words.comment
  const bare = text
    .toUpperCase()
    .replace(/[–—]/g, '-')
    .replace(/×/g, 'X')
    .replace(/\(/g, '[')
    .replace(/\)/g, ']')
    .replace(/[^\x20-\x7e]/g, ' ')
  return `${open}${bare}${close}`
}

const MOST_IN_A_LINE = 100

/** A long remark as several, broken between words. */
export function remarks(words: WordTable, text: string): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > MOST_IN_A_LINE) {
      lines.push(line)
      line = `  ${word}`
    } else line = line === '' ? word : `${line} ${word}`
  }
  return [...lines, line].map((l) => remark(words, l))
}

interface Group {
  readonly tool: number | null
  readonly diameter: number
  readonly holes: readonly HoleLine[]
}

/** Numbered tools in turn, then holes for which there is none, by size. */
function groupsOf(rows: readonly HoleLine[]): readonly Group[] {
  const groups = new Map<string, { tool: number | null; diameter: number; holes: HoleLine[] }>()
  for (const hole of rows) {
    const key = hole.tool === null ? `none ${mmText(hole.diameter)}` : `T${hole.tool}`
    const group = groups.get(key) ?? { tool: hole.tool, diameter: hole.diameter, holes: [] }
    group.holes.push(hole)
    groups.set(key, group)
  }
  return [...groups.values()].sort((a, b) => (a.tool ?? Infinity) - (b.tool ?? Infinity) || a.diameter - b.diameter)
}

function header(
  design: Design,
  part: Part,
  pattern: Pattern,
  table: HoleTable,
  options: ProgramOptions,
  words: WordTable,
): readonly string[] {
  const said = headingOf(design, part, pattern, options).map(([name, value]) => `${name}: ${value}`)
  const margin = design.definition.rules.clampMargin
  const without = table.rows.filter((h) => h.tool === null).length
  const silent = words.hit.startsWith(words.comment[0])
  return [
    'coordinate program: absolute mm from the origin, one block a hole',
    ...said,
    `holes: ${countWords(table.rows)}`,
    `made from hole table checksum: ${table.checksum}`,
    'the hole table is the authority: where the two differ, the table is right',
    `words: ${words.name}`,
    ...(silent
      ? [
          'the standard has no word for a punch hit: the hit here is a remark and makes no hole',
          "write your machine's own word for hit in the word table before use",
        ]
      : []),
    ...clampWords(pattern, table.rows, options.clamped ?? 'low y', margin),
    ...(without ? [`caution: ${without} holes have no tool in the tool table: the program stops before them`] : []),
    CHECK_BEFORE_METAL,
  ].flatMap((line) => remarks(words, line))
}

/** Throws when the word table names places that cannot be filled in; see wordTableFaults. */
export function coordinateProgram(
  design: Design,
  part: Part,
  pattern: Pattern,
  table: HoleTable,
  options: ProgramOptions = {},
): CoordinateProgram {
  const words = options.words ?? DEFAULT_WORDS
  const tools = options.tools ?? DEFAULT_TOOLS
  const blocks: string[] = []
  const block = (text: string): void => {
    blocks.push(`N${(blocks.length + 1) * 10} ${text}`)
  }
  const order: number[] = []
  let travel = 0
  let at = { x: 0, y: 0 }
  block(words.start)
  for (const group of groupsOf(table.rows)) {
    const size = `${mmText(group.diameter, 2)} mm`
    if (group.tool === null) block(`${words.stop} ${remark(words, `fit a ${size} tool: the tool table has none`)}`)
    else
      block(
        `${fillWord(words.tool, { tool: String(group.tool) })} ${remark(words, tools.find((t) => t.tool === group.tool)?.says ?? size)}`,
      )
    const route = shortRoute(group.holes, at)
    travel += travelOf(group.holes, route, at)
    for (const i of route) {
      const hole = group.holes[i]
      const move = fillWord(words.move, { x: mmText(hole.x), y: mmText(hole.y) })
      const dwell = words.dwell === null ? '' : ` ${fillWord(words.dwell, { seconds: words.dwellSeconds.toFixed(2) })}`
      block(`${move} ${words.hit}${dwell} ${remark(words, `hole ${hole.no}`)}`)
      order.push(hole.no)
      at = hole
    }
  }
  block(words.end)
  const text = ['%', ...header(design, part, pattern, table, options, words), ...blocks, '%'].map((l) => `${l}\n`).join('')
  return { text, order, travel }
}
