/** A new coach from a family and a length, or from one's own section and a length: a whole definition as text, with a pattern coach's fittings moved along. */
import { readDefinition } from '../../definition/read-definition.js'
import type { Definition } from '../../definition/types.js'
import { type Derived, derive } from '../../derive/index.js'
import { createMemo, type Memo } from '../../derive/memo.js'
import type { FaultShown } from '../nouns.js'
import { type Change, changeOf } from './change.js'
import { behindDoor } from './door.js'
import { type Pattern, pitchOf } from './families.js'
import { laidOut } from './laid-out.js'
import { outerOf } from './outer.js'
import type { OwnSection } from './own-section.js'
import { type Branch, beyond, isBranch, printed, treeOf } from './tree.js'
import { balanced, clearNear, meanOf, spindlesAt } from './under.js'

export interface Choice {
  readonly name: string
  /** nose tip to tail tip, m */
  readonly length: number
  /** null for the family's */
  readonly section: OwnSection | null
}

export interface Started {
  readonly path: string
  readonly text: string
  readonly files: Readonly<Record<string, string>>
  /** what was chosen, as sentences */
  readonly says: readonly string[]
  /** none where it reads */
  readonly faults: readonly FaultShown[]
}

/** Throws nothing: what cannot be built comes back as faults of the text. */
export function startCoach(pattern: Pattern, choice: Choice): Started {
  const { definition, merged, coach, family } = pattern
  const path = beside(coach.path, choice.name)
  const memo = createMemo()
  const was = outerOf(definition.section)
  const now = choice.section ? outerOf({ crown: choice.section.crown, chain: choice.section.pieces, fit: null }) : was
  if (!was || !now) return refused(pattern, path, 'The section does not reach the floor.')
  const change = changeOf(definition, was, now, choice.length)
  const whole = treeOf(merged)
  const base = treeOf(family.root)
  const text = (mean: number, isWhole: boolean): string => {
    const layout = { name: choice.name, change, spindles: spindlesAt(definition, mean), isWhole, section: choice.section?.tree ?? null }
    const more = beyond(base, laidOut(whole, definition, layout)) ?? {}
    return written(pattern, choice, change, isBranch(more) ? more : {}, path)
  }
  const files = { ...coach.files }
  const read = (of: string) => readDefinition(path, of, (other) => files[other] ?? null)
  const mean = definition.gear ? placed(definition, change, (at, isWhole) => derived(read(text(at, isWhole)).definition, memo)) : 0
  const final = text(mean, true)
  const { faults } = read(final)
  return {
    path,
    text: final,
    files: { ...files, [path]: final },
    says: said(pattern, change),
    faults: faults.map(({ file, line, column, says }) => ({ file, line, column, says })),
  }
}

const derived = (definition: ReturnType<typeof readDefinition>['definition'], memo: Memo): Derived | null =>
  definition && derive(definition, memo)

/** First where the loads want the axles, then the nearest place the frames leave clear; twice, since the axles weigh too. */
function placed(definition: Definition, change: Change, at: (mean: number, isWhole: boolean) => Derived | null): number {
  let mean = change.stationOf(meanOf(definition.gear?.spindles ?? []))
  const least = behindDoor(definition, change)
  for (const isWhole of [false, true]) {
    const made = at(mean, isWhole)
    if (!made) return mean
    const wanted = balanced(made) ?? mean
    const free = isWhole ? at(wanted, false) : made
    mean = free ? clearNear(free, wanted, least) : wanted
  }
  return mean
}

function said({ definition }: Pattern, change: Change): string[] {
  const bays = change.frames.length - 1
  const { name, family } = definition.coach
  return [
    `${bays} bays of ${(change.pitch * 1000).toFixed(0)} mm, where ${name} has ${definition.frames.length - 1} of ${(pitchOf(definition) * 1000).toFixed(0)} mm.`,
    `Sheets, frames, fasteners and rules are those of the family ${family}; furniture, tanks and axles are those of ${name}, moved along.`,
    'Of the openings it has the door alone: windows and vents come with what is ordered.',
  ]
}

function written({ definition, family }: Pattern, { name, section }: Choice, change: Change, more: Branch, path: string): string {
  const bays = change.frames.length - 1
  const head = [
    `# ${name}: ${bays} bays of ${Number((change.pitch * 1000).toFixed(1))} mm, ${section ? 'a section of its own' : `the section of the family ${definition.coach.family}`}.`,
    `# Begun from ${definition.coach.name}: what is borrowed from it is said above each group. Look at it before metal is cut.`,
    `extends: ${relative(path, family.path)}`,
    'schema: 1',
  ]
  const borrowed = `as in ${definition.coach.name}, moved along with the frames`
  const groups: Record<string, string> = {
    openings: 'The door alone so far: windows, vents and hatches come with what is ordered.',
    gear: 'Where the load on the ball comes nearest to the middle of its band, clear of frames and members.',
    chassis: `Members at the frames, aside from the axle tubes; tanks in the rooms between; the rest ${borrowed}.`,
    weight: `Ratings of ${definition.coach.name}: look whether they still do.`,
    towing: `Reaches ${borrowed}.`,
    suspension: `As in ${definition.coach.name}.`,
    papers: `The vehicle number's pieces are those filed for ${definition.coach.name}: file this coach's own.`,
    masses: `Stated masses ${borrowed}; long ones grown with it. Put in what is ordered, take out what is not.`,
    ...(section
      ? { ends: `The family's profile, ${(change.height * 100).toFixed(1)} % as high, so that it ends at this section's toe.` }
      : {}),
  }
  return `${head.join('\n')}\n\n${printed(inOrder(more), groups)}`
}

/** In the order a shop reads it; what this does not know comes last. */
const ORDER = [
  'coach',
  'section',
  'frames',
  'openings',
  'gear',
  'shell',
  'lining',
  'ends',
  'floor',
  'chassis',
  'weight',
  'towing',
  'suspension',
  'papers',
  'masses',
]

function inOrder(tree: Branch): Branch {
  const rank = (key: string): number => (ORDER.includes(key) ? ORDER.indexOf(key) : ORDER.length)
  return Object.fromEntries(Object.entries(tree).sort(([a], [b]) => rank(a) - rank(b)))
}

function refused({ coach }: Pattern, path: string, says: string): Started {
  return { path, text: '', files: coach.files, says: [], faults: [{ file: path, line: 1, column: 1, says }] }
}

/** In the folder of the pattern, in letters every disk takes. */
function beside(pattern: string, name: string): string {
  const folder = pattern.includes('/') ? pattern.slice(0, pattern.lastIndexOf('/') + 1) : ''
  const plain = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
  return `${folder}${plain || 'new-coach'}.yaml`
}

/** Both lie in folders below one top, or are whole: families stand beside their coaches. */
function relative(from: string, to: string): string {
  const folder = from.slice(0, from.lastIndexOf('/') + 1)
  return to.startsWith(folder) ? to.slice(folder.length) : to
}
