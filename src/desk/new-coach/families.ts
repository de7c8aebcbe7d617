/** The families that known coaches belong to: the shared file each extends, and which coaches stand on it. */
import { type Loaded, loadFiles } from '../../definition/load-files.js'
import { readDefinition } from '../../definition/read-definition.js'
import type { Definition } from '../../definition/types.js'
import { child, type Written } from '../../definition/written.js'
import { buildChain, widest } from '../../maths/tangent-chain.js'
import type { CoachFiles } from '../desk-coach-nouns.js'
import { outerOf } from './outer.js'
import { closure, type SectionShown, sectionDrawn } from './own-section.js'

export interface Member {
  readonly path: string
  readonly name: string
  /** nose tip to tail tip, m */
  readonly length: number
}

export interface Family {
  /** of the shared file */
  readonly path: string
  readonly name: string
  readonly members: readonly Member[]
  readonly section: Pick<SectionShown, 'points' | 'joints' | 'says'>
  /** nose tip to tail tip, from what the fewest bays need to what floor board and sheets give, m */
  readonly shortest: number
  readonly longest: number
}

/** A coach that reads, with its family's own written form beside the merged one. */
export interface Pattern {
  readonly coach: CoachFiles
  readonly definition: Definition
  readonly merged: Written
  readonly family: { readonly path: string; readonly root: Written }
}

const loader =
  (files: CoachFiles['files']) =>
  (path: string): string | null =>
    files[path] ?? null

/** Null where it does not read, or extends no file of a family: one with a section and without frames. */
export function patternOf(coach: CoachFiles): Pattern | null {
  const { path, files } = coach
  const { definition, merged, sources } = readDefinition(path, files[path] ?? '', loader(files))
  if (!definition || !merged) return null
  for (const source of sources.slice(1)) {
    const { root }: Loaded = loadFiles(source.path, source.text, loader(files))
    if (root && child(root, 'section') && !child(root, 'frames')) return { coach, definition, merged, family: { path: source.path, root } }
  }
  return null
}

/** How far an end reaches beyond its joint, m. */
export const reachOf = ({ section, ends }: Definition): number => widest(buildChain({ y: 0, z: section.crown, heading: 0 }, ends.profile)).y

export function barrelOf({ frames }: Definition): number {
  const stations = frames.map(({ station }) => station)
  return Math.max(...stations) - Math.min(...stations)
}

/** Fewer bays hold no door ahead of the wheels. */
export const LEAST_BAYS = 4
/** Bays may be so much shorter than those of the pattern before a door and a wheel meet. */
const SHORTEST_BAY = 0.95

/** Of one frame to the next, m. */
export const pitchOf = (definition: Definition): number => barrelOf(definition) / (definition.frames.length - 1)

export function familiesOf(patterns: readonly Pattern[]): Family[] {
  const paths = [...new Set(patterns.map(({ family }) => family.path))]
  return paths.map((path) => {
    const own = patterns.filter(({ family }) => family.path === path)
    const members = own.map(({ coach, definition }) => ({
      path: coach.path,
      name: definition.coach.name,
      length: barrelOf(definition) + 2 * reachOf(definition),
    }))
    const [{ definition }] = own
    return {
      path,
      name: definition.coach.family,
      section: familySection(definition),
      members: members.sort((a, b) => a.length - b.length),
      shortest: LEAST_BAYS * SHORTEST_BAY * pitchOf(definition) + 2 * reachOf(definition),
      longest: longestBarrel(definition) + 2 * reachOf(definition),
    }
  })
}

function familySection({ section }: Definition): Family['section'] {
  const outer = outerOf(section)
  if (!outer) return { points: [], joints: [], says: [] }
  const { fit } = section
  return {
    ...sectionDrawn(outer.chain),
    says: closure(outer.chain, section.crown, { width: fit?.width ?? null, height: fit?.height ?? null }),
  }
}

/** Frames are marked out on whole millimetres. */
const ROUNDING = 0.002

/** The floor is one board and a strake one sheet. m */
function longestBarrel({ floor, stock, shell }: Definition): number {
  const sheet = Math.max(...stock.sheets.map((each) => each.length)) - 2 * stock.trim - shell.joint.overlap
  const board = floor ? stock.board.length - 2 * floor.endReach : Number.POSITIVE_INFINITY
  return Math.min(sheet, board) - ROUNDING
}

/** So much shorter than its pattern a coach may be, m: half a bay, as the furniture of a longer one would not go in. */
const SQUEEZED = 0.3

/** The coach whose fittings a new one takes over: the longest that is not much longer than it, or the shortest of all. */
export function patternFor({ members }: Family, length: number): Member {
  const fitting = members.filter((each) => each.length <= length + SQUEEZED)
  return fitting[fitting.length - 1] ?? members[0]
}
