/** The rules of the house, run over the repository; and each rule shown an invented tree that breaks it and one that does not. */
import { describe, expect, it } from 'vitest'
import { RULES } from './rules.js'
import { readTree, treeOf } from './tree.js'

const repository = readTree()

describe('the repository', () => {
  it('is read whole', () => {
    expect(repository.has('src/derive/nouns.ts')).toBe(true)
    expect(repository.has('tests/rules.ts')).toBe(true)
  })

  for (const rule of RULES) it(rule.says, () => expect(rule.breaches(repository)).toEqual([]))
})

type Files = Readonly<Record<string, string>>

/** For every rule, trees that must be caught and trees that must be let through, by what they show. */
const SHOWN: Readonly<
  Record<string, { readonly caught: Readonly<Record<string, Files>>; readonly clean: Readonly<Record<string, Files>> }>
> = {
  'every file of src/ stands in a room the map knows': {
    caught: { 'a room of odds and ends': { 'src/utils/things.ts': '' }, 'a file beside the rooms': { 'src/main.ts': '' } },
    clean: { 'a known room': { 'src/maths/arc.ts': '' } },
  },
  'imports point down the list of rooms only': {
    caught: {
      upward: { 'src/maths/arc.ts': "import { derive } from '../derive/index.js'" },
      'upward for a type': { 'src/tables/alloys.ts': "import type { Definition } from '../definition/types.js'" },
      'upward inside a type': { 'src/maths/arc.ts': "export type D = import('../derive/design.js').Design" },
      'upward at run time': { 'src/checks/laps.ts': "export const load = () => import('../paper/pdf.js')" },
      're-exported': { 'src/checks/laps.ts': "export { sheet } from '../documents/sheet.js'" },
      'a screen from the desk': { 'src/desk/view.ts': "import { fit } from '../web/fit.js'" },
      'out of src': { 'src/cli/main.ts': "import { count } from '../../tests/counts.js'" },
    },
    clean: {
      'down and sideways': {
        'src/checks/laps.ts': "import type { Design } from '../derive/design.js'\nimport { gap } from './gap.js'\nimport { z } from 'zod'",
      },
      'a test may look anywhere': { 'src/quantity/audit.test.ts': "import { derive } from '../derive/index.js'" },
      'words in a comment': { 'src/maths/arc.ts': "// import { derive } from '../derive/index.js'" },
    },
  },
  'a trade in derive/ never imports another trade': {
    caught: {
      another: { 'src/derive/weight/total.ts': "import { skins } from '../shell/skins.js'" },
      'another, for a type': { 'src/derive/weight/deep/total.ts': "import type { Skin } from '../../shell/skins.js'" },
    },
    clean: {
      'itself and the nouns': { 'src/derive/shell/rows.ts': "import type { Part } from '../nouns.js'\nimport { hoop } from './hoop.js'" },
    },
  },
  'what all trades share imports no trade': {
    caught: {
      'a trade': { 'src/derive/common/row.ts': "import { hoop } from '../shell/hoop.js'" },
    },
    clean: {
      'the nouns': { 'src/derive/common/row.ts': "import type { Part } from '../nouns.js'" },
    },
  },
  'only derive/index.ts, the checks and the studies import trades': {
    caught: {
      'a document': { 'src/documents/sheets/hoop.ts': "import { hoop } from '../../derive/shell/hoop.js'" },
      'another file of derive': { 'src/derive/design.ts': "import type { Hoop } from './shell/hoop.js'" },
    },
    clean: {
      'the one that may': { 'src/derive/index.ts': "import { deriveShell } from './shell/index.js'" },
      'a check': { 'src/checks/laps.ts': "import { hoop } from '../derive/shell/hoop.js'" },
      'a study': { 'src/studies/fit.ts': "import { hoop } from '../derive/shell/hoop.js'" },
    },
  },
  'only the composition roots touch the clock, chance, the environment, the disk or the network': {
    caught: {
      'the clock': { 'src/documents/title.ts': 'export const today = () => new Date()' },
      'the clock again': { 'src/derive/shell/rows.ts': 'export const now = () => Date.now()' },
      chance: { 'src/maths/arc.ts': 'export const r = () => Math.random()' },
      'the environment': { 'src/paper/pdf.ts': "export const home = () => process.env['HOME']" },
      'the disk': { 'src/definition/read.ts': "import { readFileSync } from 'node:fs'" },
      'the network': { 'src/checks/laps.ts': "export const ask = () => fetch('http://localhost')" },
      'more of Node than paper needs': { 'src/paper/pdf.ts': "import { spawn } from 'node:child_process'" },
    },
    clean: {
      'a local of that name': {
        'src/derive/fit.ts': 'export const sigma = ({ process }: { process: { sigma: number } }) => process.sigma',
      },
      'a root': { 'src/cli/main.ts': "import { readFileSync } from 'node:fs'\nexport const now = () => Date.now() + process.pid" },
      'fonts for paper': { 'src/paper/fonts.ts': "import { Buffer } from 'node:buffer'\nimport { createRequire } from 'node:module'" },
      'a date that is given': { 'src/paper/pdf.ts': 'export const made = (iso: string) => new Date(iso)' },
      'a member of the same name': { 'src/maths/arc.ts': 'export const f = (line: { process: number }) => line.process' },
    },
  },
  'the screens take nothing of Node': {
    caught: {
      'the disk': { 'src/web/save.tsx': "import { writeFileSync } from 'node:fs'" },
    },
    clean: {
      'what a browser has': {
        'src/web/save.tsx': "import { createSignal } from 'solid-js'\nexport const save = () => fetch('/api/coach')",
      },
      'the server': { 'src/server/save.ts': "import { writeFileSync } from 'node:fs'" },
    },
  },
  'the screens write no style into their markup': {
    caught: {
      'as text': { 'src/web/bar.tsx': "export const Bar = () => <p style='color: red'>x</p>" },
      'as values known beforehand': {
        'src/web/bar.tsx': "export const Bar = (p: any) => <p style={{ color: 'red', width: p.width }}>x</p>",
      },
    },
    clean: {
      'a value that changes, and a class': {
        'src/web/bar.tsx': "export const Bar = (p: any) => <p class='bar' style={{ '--margin': p.margin }}>x</p>",
      },
    },
  },
  'no class in the core but a named error': {
    caught: {
      'a class': { 'src/derive/shell/hoop.ts': 'export class Hoop {}' },
      'a class in hiding': { 'src/maths/arc.ts': 'export const Arc = class {}' },
    },
    clean: {
      'a named error': { 'src/definition/fault.ts': 'export class Refused extends RangeError {}' },
      'outside the core': { 'src/paper/page.ts': 'export class Page {}' },
      'the word alone': { 'src/maths/arc.ts': "export const says = 'class A {}'" },
    },
  },
  'no enum in src/': {
    caught: {
      'an enum': { 'src/cli/main.ts': 'export enum Side { left }' },
      'a const enum': { 'src/maths/arc.ts': 'const enum Side { left }' },
    },
    clean: { 'a union': { 'src/maths/arc.ts': "export type Side = 'left' | 'right'" } },
  },
  'no default export in src/': {
    caught: {
      'a function': { 'src/maths/arc.ts': 'export default function arc() {}' },
      'a value': { 'src/maths/arc.ts': 'const arc = 1\nexport default arc' },
      'a renamed one': { 'src/maths/arc.ts': 'const arc = 1\nexport { arc as default }' },
    },
    clean: { 'a named one': { 'src/maths/arc.ts': 'export const arc = 1' } },
  },
  'files stay short': {
    caught: {
      'one line too many': { 'src/maths/arc.ts': '//\n'.repeat(351) },
      'a test without end': { 'src/maths/arc.test.ts': '//\n'.repeat(501) },
    },
    clean: {
      'just short enough': { 'src/maths/arc.ts': '//\n'.repeat(350), 'src/maths/arc.test.ts': '//\n'.repeat(500) },
      'a table of data': { 'src/tables/alloys.ts': '//\n'.repeat(900) },
    },
  },
  'documents compute nothing': {
    caught: {
      'calling the derivation': { 'src/documents/sheet.ts': "import { derive } from '../derive/index.js'" },
      'calling a check': { 'src/documents/cover.ts': "import { runChecks, type Run } from '../checks/index.js'" },
      'taking a formula': { 'src/documents/cover.ts': "import { area } from '../maths/formulas.js'" },
      'taking a named one': { 'src/documents/cover.ts': "import { area } from '../maths/area.formulas.js'" },
      'declaring one': { 'src/documents/cover.ts': "export const area = formula({ id: 'area' })" },
    },
    clean: {
      'reading what it prints': {
        'src/documents/sheet.ts': "import type { Design } from '../derive/design.js'\nimport { point } from '../maths/arc.js'",
      },
    },
  },
  'checks correct nothing': {
    caught: {
      'deriving again': { 'src/checks/laps.ts': "import { derive } from '../derive/index.js'" },
      'setting a field': { 'src/checks/laps.ts': 'export const f = (design: any) => { design.parts[0].mass = 1 }' },
      'through a cast': { 'src/checks/laps.ts': 'export function f(design: object) { (design as any).mass += 1 }' },
      'counting up': { 'src/checks/laps.ts': 'export const f = (row: any) => row.count++' },
      deleting: { 'src/checks/laps.ts': 'export const f = (row: any) => [1].map(() => delete row.count)' },
    },
    clean: {
      'a list of its own': {
        'src/checks/laps.ts': 'export function f(n: number) { const own: number[] = []; own[n] = n; let k = n; k += 1; return [own, k] }',
      },
    },
  },
  'nothing in the repository names the machine or the people it was made with': {
    caught: {
      'a path of one machine': { 'docs/start.md': `run it in ${['', 'home', 'someone'].join('/')}` },
      'a folder outside': { 'README.md': `see ../${'shar'}ed/design` },
      'how it was made': { 'src/cli/main.ts': `// left for the next ${'sess'}ion` },
      'a task list': { 'docs/start.md': `as ${'iss'}ue 12 asks` },
    },
    clean: {
      'plain words': {
        'docs/start.md': 'A hole both sheets have is a shared hole. The packet is issued once. Paths like src/home/ and 1/work are fine.',
      },
      'what npm wrote': { 'package-lock.json': `"${['', 'home', 'x'].join('/')}"` },
    },
  },
}

describe('the rules themselves', () => {
  it('are each shown a tree that breaks them', () => {
    expect(Object.keys(SHOWN)).toEqual(RULES.map((rule) => rule.says))
    for (const shown of Object.values(SHOWN)) expect(Object.keys(shown.caught).length).toBeGreaterThan(0)
  })

  for (const rule of RULES) {
    const shown = SHOWN[rule.says]
    for (const [what, files] of Object.entries(shown?.caught ?? {})) {
      it(`${rule.says} · catches ${what}`, () => expect(rule.breaches(treeOf(files))).toHaveLength(1))
    }
    for (const [what, files] of Object.entries(shown?.clean ?? {})) {
      it(`${rule.says} · lets through ${what}`, () => expect(rule.breaches(treeOf(files))).toEqual([]))
    }
  }
})
