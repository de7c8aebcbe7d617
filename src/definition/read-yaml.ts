/** YAML text to written nodes with places, and its syntax errors as faults in plain words. */
import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, type YAMLError } from 'yaml'
import type { Fault } from './types.js'
import type { Where, Written, WrittenEntry } from './written.js'

export interface ReadText {
  /** null when the text does not hold together */
  readonly root: Written | null
  readonly faults: readonly Fault[]
}

/** What the parser's codes mean to somebody writing a definition. */
const ADVICE: Readonly<Record<string, readonly [expected: string, advice: string]>> = {
  TAB_AS_INDENT: ['spaces at the start of the line', 'Replace the tab by spaces.'],
  BAD_INDENT: ['lines that belong together to start in the same column', 'Line this up with the lines above it.'],
  MISSING_CHAR: ['a comma, a colon, a quote or a closing bracket', 'It is missing on this line or just before it.'],
  UNEXPECTED_TOKEN: ['nothing more here', 'Look for a missing comma, colon, quote or bracket on this line or just before it.'],
  BLOCK_AS_IMPLICIT_KEY: [
    'one key and one value on a line',
    'A value that holds a colon goes in quotes; a second key goes on its own line.',
  ],
  MULTILINE_IMPLICIT_KEY: ['a key on one line', 'Look for a missing colon after the key, or a missing closing bracket.'],
  BAD_ALIAS: ['a plain word', 'A value that starts with * or & goes in quotes.'],
  BAD_SCALAR_START: ['a plain word', 'A value that starts with this mark goes in quotes.'],
  MULTIPLE_DOCS: ['one definition in a file', 'Remove the line --- and what follows it.'],
  BAD_COLLECTION_TYPE: ['a plain value', 'Remove the tag that starts with an exclamation mark.'],
}

export function readYaml(text: string, file: string): ReadText {
  const lines = new LineCounter()
  const where = (offset: number): Where => {
    const { line, col } = lines.linePos(offset)
    return { file, line: Math.max(1, line), column: Math.max(1, col) }
  }
  const faults: Fault[] = []
  const add = (at: Where, path: string, expected: string, foundHere: string, advice: string): void => {
    faults.push({ path, ...at, expected, found: foundHere, says: `${path}: expected ${expected}, found ${foundHere}. ${advice}` })
  }
  let broken = false
  try {
    const doc = parseDocument(text, { lineCounter: lines, prettyErrors: false, keepSourceTokens: false, strict: true, uniqueKeys: false })
    const first = [...doc.errors, ...doc.warnings].sort((a, b) => a.pos[0] - b.pos[0])[0]
    if (first) {
      // One slip makes the parser stumble again further down: only the first of a file is worth reading.
      broken = true
      const [expected, advice] = ADVICE[openBracket(first) ? 'MISSING_CHAR' : first.code] ?? [
        'a definition in YAML',
        `The YAML reader says: ${firstLine(first)}.`,
      ]
      // what is missing at the end of the file is missing after its last words, not on an empty line below them
      add(where(Math.min(first.pos[0], text.trimEnd().length)), 'the text', expected, around(text, first.pos[0]), advice)
    }
    const root = broken ? null : convert(doc.contents, { file, line: 1, column: 1 }, '', 0)
    return { root: broken ? null : root, faults }
  } catch (error) {
    // Nesting without end exhausts the parser's stack; nothing a person writes comes near it.
    if (!(error instanceof RangeError)) throw error
    add({ file, line: 1, column: 1 }, 'the text', 'a definition', 'brackets nested without end', 'Write it as the examples do.')
    return { root: null, faults }
  }

  function convert(node: unknown, fallback: Where, path: string, depth: number): Written {
    if (depth > 40) throw new RangeError('nested too deep')
    const at = hasRange(node) ? where(node.range[0]) : fallback
    if (isMap(node)) {
      const entries = new Map<string, WrittenEntry>()
      for (const pair of node.items) {
        const keyAt = hasRange(pair.key) ? where(pair.key.range[0]) : at
        if (!isScalar(pair.key) || pair.key.value === null) {
          add(keyAt, path || 'the definition', 'a key that is a plain word', 'a list or nothing as the key', 'Write key: value.')
          continue
        }
        const key = typeof pair.key.value === 'string' ? pair.key.value : (pair.key.source ?? String(pair.key.value))
        const name = path ? `${path} ${key}` : key
        if (entries.has(key)) {
          const earlier = (entries.get(key) as WrittenEntry).keyAt.line
          add(keyAt, name, `"${key}" once`, 'it a second time', `It stands on line ${earlier} already: keep one of the two.`)
          continue
        }
        entries.set(key, { keyAt, value: convert(pair.value, keyAt, name, depth + 1) })
      }
      return { kind: 'map', at, entries }
    }
    if (isSeq(node)) return { kind: 'list', at, items: node.items.map((item, i) => convert(item, at, `${path} ${i + 1}`, depth + 1)) }
    if (isAlias(node)) {
      broken = true
      add(
        at,
        path || 'the definition',
        'the value written out',
        `"*${node.source}"`,
        'References are not read here: share values through extends.',
      )
      return { kind: 'scalar', at, value: null, text: '' }
    }
    if (isScalar(node)) {
      const value = scalarValue(node.value)
      return { kind: 'scalar', at, value, text: typeof value === 'string' ? value : (node.source ?? String(value)) }
    }
    return { kind: 'scalar', at, value: null, text: '' }
  }
}

function scalarValue(value: unknown): string | number | boolean | null {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null
}

function hasRange(node: unknown): node is { range: [number, number, number] } {
  return typeof node === 'object' && node !== null && Array.isArray((node as { range?: unknown }).range)
}

/** A bracket left open shows as bad indentation of whatever comes next. */
function openBracket(error: YAMLError): boolean {
  return error.code === 'BAD_INDENT' && /flow/i.test(error.message)
}

function firstLine(error: YAMLError): string {
  return error.message.split('\n')[0].replace(/[.:]\s*$/, '')
}

function around(text: string, offset: number): string {
  if (text.slice(offset).trim() === '') return 'the end of the file'
  const rest = text
    .slice(offset, offset + 20)
    .split('\n')[0]
    .trim()
  if (text[offset] === '\t') return 'a tab'
  return rest === '' ? 'the end of the line' : `"${rest}"`
}
