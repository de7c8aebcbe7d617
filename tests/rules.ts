/**
 * The rules of the house as small programs: each looks at a tree of files and says, in a sentence, what breaks it.
 * tests/architecture.test.ts runs them over the repository, and over invented trees to show that each can fail.
 */
import {
  calls,
  changesWhatItWasGiven,
  isDefaultExport,
  isEnum,
  isPlainClass,
  isWrittenStyle,
  readSource,
  readsChance,
  readsClock,
  type Source,
  usesGlobal,
} from './source.js'
import type { Tree } from './tree.js'

export interface Rule {
  readonly says: string
  readonly breaches: (tree: Tree) => readonly string[]
}

/** Rooms from the bottom up. A file may import from its own room and from those before it, never from one after. */
export const ROOMS = [
  'quantity',
  'maths',
  'tables',
  'definition',
  'derive',
  'checks',
  'studies',
  'documents',
  'ripple',
  'desk',
  'intake',
  'record',
  'paper',
  'server',
  'web',
  'cli',
] as const

/** The only rooms with a clock, a disk, a network or chance. */
const ROOTS: ReadonlySet<string> = new Set(['server', 'web', 'cli'])
/** Outside the core project: libraries that need Node, and the composition roots. */
const OUTSIDE_CORE: ReadonlySet<string> = new Set(['intake', 'record', 'paper', 'server', 'web', 'cli'])
/** What paper may take of Node: the bytes of fonts that came with the program, and nothing that writes or asks. */
const PAPER_MAY: ReadonlySet<string> = new Set(['buffer', 'fs', 'module', 'path', 'stream', 'url', 'zlib'])
const SURROUNDINGS: ReadonlySet<string> = new Set(['process', 'fetch', 'performance', 'crypto', 'setTimeout', 'setInterval'])

/** Longer files are split; tables of data are the one exception, and a test may list many cases. */
const LONGEST = 350
const LONGEST_TEST = 500

const parts = (path: string): readonly string[] => path.split('/')
const room = (path: string): string => parts(path)[1] ?? ''
const inSource = (path: string): boolean => path.startsWith('src/') && /\.tsx?$/.test(path)
const isTest = (path: string): boolean => /\.test\.tsx?$/.test(path)
const product = (path: string): boolean => inSource(path) && !isTest(path)
const rank = (path: string): number => (ROOMS as readonly string[]).indexOf(room(path))
/** What all trades share: lengths and masses of what is bought, and how a row is built. */
const COMMON = 'common'
/** The trade a file in derive/ belongs to; null for derive/index.ts, the nouns all trades share and what stands in common. */
const trade = (path: string): string | null => {
  const folder = path.startsWith('src/derive/') && parts(path).length > 3 ? (parts(path)[2] ?? null) : null
  return folder === COMMON ? null : folder
}
const node = (from: string): string | null => (from.startsWith('node:') ? (from.slice(5).split('/')[0] ?? null) : null)

const read = new Map<string, { text: string; source: Source }>()
function sources(tree: Tree, wanted: (path: string) => boolean): readonly Source[] {
  return [...tree]
    .filter(([path]) => wanted(path))
    .map(([path, text]) => {
      const known = read.get(path)
      if (known?.text === text) return known.source
      const source = readSource(path, text)
      read.set(path, { text, source })
      return source
    })
}

const each = (tree: Tree, wanted: (path: string) => boolean, look: (source: Source) => readonly string[]): readonly string[] =>
  sources(tree, wanted).flatMap(look)
const at = (source: Source, line: number, says: string): string => `${source.path}:${line} ${says}`

/** Reads a pattern's parallel arrays as objects and computes nothing. */
const UNPACKS = 'src/derive/holes.ts'

export const RULES: readonly Rule[] = [
  {
    says: 'every file of src/ stands in a room the map knows',
    breaches: (tree) => each(tree, inSource, (s) => (rank(s.path) >= 0 ? [] : [`${s.path} stands in no known room`])),
  },
  {
    says: 'imports point down the list of rooms only',
    breaches: (tree) =>
      each(tree, product, (s) =>
        s.imports
          .filter((i) => i.relative && (!i.from.startsWith('src/') || rank(i.from) > rank(s.path)))
          .map((i) => at(s, i.line, `imports ${i.from}, which is not below ${room(s.path)}`)),
      ),
  },
  {
    says: 'a trade in derive/ never imports another trade',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && trade(path) !== null,
        (s) =>
          s.imports
            .filter((i) => i.relative && trade(i.from) !== null && trade(i.from) !== trade(s.path))
            .map((i) =>
              at(s, i.line, `takes from the trade ${trade(i.from)}: declare the slice it needs and let derive/index.ts hand it over`),
            ),
      ),
  },
  {
    says: 'what all trades share imports no trade',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && path.startsWith(`src/derive/${COMMON}/`),
        (s) =>
          s.imports.filter((i) => i.relative && trade(i.from) !== null).map((i) => at(s, i.line, `takes from the trade ${trade(i.from)}`)),
      ),
  },
  {
    // a check or a study judges a trade by that trade's own geometry: see docs/decisions/0002
    says: 'only derive/index.ts, the checks and the studies import trades',
    breaches: (tree) =>
      each(
        tree,
        (path) =>
          product(path) && path !== 'src/derive/index.ts' && room(path) !== 'checks' && room(path) !== 'studies' && trade(path) === null,
        (s) =>
          s.imports.filter((i) => i.relative && trade(i.from) !== null).map((i) => at(s, i.line, `imports ${i.from} past derive/index.ts`)),
      ),
  },
  {
    says: 'only the composition roots touch the clock, chance, the environment, the disk or the network',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && !ROOTS.has(room(path)),
        (s) => [
          ...s.where(readsClock).map((line) => at(s, line, 'reads the clock: take "now" as an argument')),
          ...s.where(readsChance).map((line) => at(s, line, 'calls on chance: take a seed as an argument')),
          ...s
            .where((n) => usesGlobal(n, SURROUNDINGS))
            .map((line) => at(s, line, 'reaches for its surroundings: take what it needs as an argument')),
          ...s.imports
            .filter((i) => node(i.from) !== null && !(room(s.path) === 'paper' && PAPER_MAY.has(node(i.from) ?? '')))
            .map((i) => at(s, i.line, `imports ${i.from}, which belongs to a composition root`)),
        ],
      ),
  },
  {
    says: 'the screens take nothing of Node',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && room(path) === 'web',
        (s) => s.imports.filter((i) => node(i.from) !== null).map((i) => at(s, i.line, `imports ${i.from}, which no browser has`)),
      ),
  },
  {
    says: 'the screens write no style into their markup',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && room(path) === 'web',
        (s) =>
          s
            .where(isWrittenStyle)
            .map((line) => at(s, line, 'writes a style into its markup, where the policy forbids it: give it a class')),
      ),
  },
  {
    says: 'no class in the core but a named error',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && !OUTSIDE_CORE.has(room(path)),
        (s) => s.where(isPlainClass).map((line) => at(s, line, 'is a class: results are plain frozen data and functions are values')),
      ),
  },
  {
    says: 'no enum in src/',
    breaches: (tree) => each(tree, inSource, (s) => s.where(isEnum).map((line) => at(s, line, 'is an enum: use a union of words'))),
  },
  {
    says: 'no default export in src/',
    breaches: (tree) =>
      each(tree, inSource, (s) => s.where(isDefaultExport).map((line) => at(s, line, 'is a default export: give it its name'))),
  },
  {
    says: 'files stay short',
    breaches: (tree) =>
      each(
        tree,
        (path) => inSource(path) && room(path) !== 'tables',
        (s) => {
          const most = isTest(s.path) ? LONGEST_TEST : LONGEST
          return s.lines > most ? [`${s.path} has ${s.lines} lines, more than ${most}: split it by idea`] : []
        },
      ),
  },
  {
    says: 'documents compute nothing',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && room(path) === 'documents',
        (s) => [
          ...s.imports
            .filter((i) => i.relative && ['derive', 'checks'].includes(room(i.from)) && !i.typeOnly && i.from !== UNPACKS)
            .map((i) => at(s, i.line, `calls ${i.from}: a document prints what the design already holds`)),
          ...s.imports
            .filter((i) => i.relative && /[/.]formulas(\.ts|\/.*)$/.test(i.from))
            .map((i) => at(s, i.line, `takes the formulas of ${i.from}: the design already holds their results`)),
          ...s.where(calls('formula')).map((line) => at(s, line, 'declares a formula: it belongs to a trade or a check')),
        ],
      ),
  },
  {
    says: 'checks correct nothing',
    breaches: (tree) =>
      each(
        tree,
        (path) => product(path) && room(path) === 'checks',
        (s) => [
          ...s.imports
            .filter((i) => i.from === 'src/derive/index.ts' && !i.typeOnly && s.path !== 'src/checks/index.ts')
            .map((i) => at(s, i.line, 'derives a design: a check judges the one it is given')),
          ...s.where(changesWhatItWasGiven).map((line) => at(s, line, 'changes what it was given')),
        ],
      ),
  },
  {
    says: 'nothing in the repository names the machine or the people it was made with',
    breaches: (tree) =>
      [...tree]
        .filter(([path]) => path !== 'package-lock.json')
        .flatMap(([path, text]) =>
          text
            .split('\n')
            .flatMap((line, i) => NOT_HERE.filter((word) => word.pattern.test(line)).map((word) => `${path}:${i + 1} ${word.says}`)),
        ),
  },
]

/** Written so that this file does not hold the words it looks for. */
const NOT_HERE: readonly { readonly pattern: RegExp; readonly says: string }[] = [
  { pattern: /(^|[^\w.])\/(work|tmp|root|home|Users)\/[\w.]/, says: 'holds a path of one machine' },
  { pattern: /\bshare[d]\//, says: 'points outside the repository' },
  { pattern: /\bsessio[n]s?\b/i, says: 'speaks of how it was made: speak of the product' },
  { pattern: /\bissu[e] #?\d+\b|\bissue[s] show\b/i, says: 'points at a task list nobody else has' },
]
