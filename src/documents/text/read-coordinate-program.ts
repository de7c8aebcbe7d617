/** Reads a coordinate program back: every hit with its place and tool, by the words of the same table it was written with. */
import type { WordTable } from './word-table.js'
import { DEFAULT_WORDS } from './word-table.js'

/** x, y in m; `hole` the number in the hole table, null where the block does not say. */
export interface ProgramHit {
  readonly block: number | null
  readonly tool: number | null
  readonly x: number
  readonly y: number
  readonly hole: number | null
}

export interface ReadProgram {
  readonly remarks: readonly string[]
  readonly checksum: string | null
  readonly hits: readonly ProgramHit[]
  readonly ended: boolean
  /** whole sentences */
  readonly faults: readonly string[]
}

interface State {
  tool: number | null
  x: number | null
  y: number | null
  scale: number
  absolute: boolean
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
/** A word is whole: G0 is not found in G01. */
const holds = (block: string, word: string): boolean =>
  word.startsWith('(') || /^\W/.test(word) ? block.includes(word) : new RegExp(`(^|\\s)${escaped(word)}(?=\\s|$)`).test(block)

export function readCoordinateProgram(text: string, words: WordTable = DEFAULT_WORDS): ReadProgram {
  const state: State = { tool: null, x: null, y: null, scale: 0, absolute: false }
  const [open, close] = words.comment.map(escaped)
  const comment = new RegExp(`${open}([^]*?)${close}`, 'g')
  const remarks: string[] = []
  const hits: ProgramHit[] = []
  const faults: string[] = []
  let ended = false
  const toolWord = new RegExp(`(?:^|\\s)${escaped(words.tool).replace('\\{tool\\}', '(\\d+)')}(?=\\s|$)`)
  text.split(/\r\n|\n/).forEach((line, i) => {
    const bare = line.trim()
    if (bare === '' || bare === '%') return
    const said = [...bare.matchAll(comment)].map((m) => m[1])
    const code = bare.replace(comment, ' ').trim()
    if (code === '') {
      remarks.push(...said)
      return
    }
    if (/\bG(20|70)\b/.test(code)) state.scale = 0.0254
    if (/\bG(21|71)\b/.test(code)) state.scale = 0.001
    if (/\bG90\b/.test(code)) state.absolute = true
    if (/\bG91\b/.test(code)) state.absolute = false
    const tool = toolWord.exec(code)
    if (tool) state.tool = Number(tool[1])
    if (holds(code, words.stop)) state.tool = null
    if (holds(code, words.end)) ended = true
    moveTo(state, code, i + 1, faults)
    if (holds(bare, words.hit)) hits.push(...hit(state, code, said, i + 1, faults))
  })
  const checksum =
    remarks.map((r) => /HOLE TABLE CHECKSUM:\s*([0-9A-F]{12})/i.exec(r)?.[1].toLowerCase()).find((c) => c !== undefined) ?? null
  return { remarks, checksum, hits, ended, faults }
}

function moveTo(state: State, code: string, line: number, faults: string[]): void {
  for (const axis of ['x', 'y'] as const) {
    const word = new RegExp(`(?:^|\\s)${axis}(-?\\d*\\.?\\d+)(?=\\s|$)`, 'i').exec(code)
    if (!word) continue
    if (state.scale === 0)
      faults.push(`Line ${line} moves before the program says G71 millimetres or G70 inches. Put the start block first.`)
    // mm to a micron, so that the figure read is the figure written
    const value = Math.round(Number(word[1]) * state.scale * 1e8) / 1e8
    state[axis] = state.absolute ? value : (state[axis] ?? 0) + value
  }
}

function hit(state: State, code: string, said: readonly string[], line: number, faults: string[]): readonly ProgramHit[] {
  if (state.x === null || state.y === null) {
    faults.push(`Line ${line} hits before the program has said both X and Y.`)
    return []
  }
  const block = /^N(\d+)/.exec(code)
  const hole = said.map((s) => /^HOLE (\d+)$/.exec(s)?.[1]).find((n) => n !== undefined)
  return [
    { block: block ? Number(block[1]) : null, tool: state.tool, x: state.x, y: state.y, hole: hole === undefined ? null : Number(hole) },
  ]
}
