/** Flat patterns with their holes, and of any hole what it is, where it stands on the coach, and its mates in the other layers. */
import type { Design } from '../../derive/design.js'
import { fastenerId, placeOf, rowNamed } from '../../derive/holes.js'
import type { FastenerRow, HoleRole, Part, Pattern } from '../../derive/nouns.js'
import { netOutline } from '../../documents/drawing/net-outline.js'
import { lengthWords, plainLength } from '../../documents/drawing/units.js'
import { boundsOf, flatten } from '../../documents/drawing/view.js'
import { placeWords } from '../../documents/drawing/words.js'
import { groupedParts } from '../../documents/packet/part-groups.js'
import type { UnitSystem } from '../../quantity/format.js'
import { seenAt } from '../answer.js'
import type { FlatNamed, FlatShown, HoleShown, Mate } from './nouns.js'

export interface FlatGroup {
  readonly says: string
  readonly flats: readonly FlatNamed[]
}

/** Every flat pattern that has holes, as the rooms of a shop fetch them. */
export function flatList(design: Design): readonly FlatGroup[] {
  return groupedParts(design).flatMap(({ says, patterns }) => {
    const flats = patterns.filter(({ pattern }) => pattern.holes.x.length > 0).map(({ part, pattern }) => namedFlat(part, pattern))
    return flats.length === 0 ? [] : [{ says, flats }]
  })
}

function namedFlat(part: Part, { face, holes }: Pattern): FlatNamed {
  const says = part.patterns.length > 1 ? `${part.says}, ${face}` : part.says
  return { part: part.id, face, says, holes: holes.x.length }
}

function patternOf(design: Design, part: string, face: string): { readonly part: Part; readonly pattern: Pattern } | null {
  const found = design.parts.find(({ id }) => id === part)
  const pattern = found?.patterns.find((each) => each.face === face)
  return found && pattern ? { part: found, pattern } : null
}

/** Null where the coach has no such part or face any more. */
export function flatShown(design: Design, id: string, face: string): FlatShown | null {
  const found = patternOf(design, id, face)
  if (!found) return null
  const { part, pattern } = found
  const { contours, windows } = netOutline(pattern)
  const { flat, holes, marks } = pattern
  return {
    ...namedFlat(part, pattern),
    frame: `Seen from ${flat.view}; x runs ${flat.x}, y runs ${flat.y}, from ${flat.origin.says}.`,
    box: boundsOf([pattern.outline]),
    contours: contours.map((each) => flatten(each, 8).flat()),
    windows: windows.map((each) => ({ says: each.opening, outline: flatten(each.outline, 8).flat() })),
    marks: marks.flatMap(({ from, to }) => [...from, ...to]),
    ...{ x: holes.x, y: holes.y, diameter: holes.diameter },
  }
}

const ROLES: Readonly<Record<HoleRole, string>> = {
  full: 'punched full size',
  pilot: 'a pilot, opened up on the jig',
  drill: 'drilled at assembly',
}

/** Null where there is no such hole. */
export function holeShown(design: Design, id: string, face: string, hole: number, units: UnitSystem): HoleShown | null {
  const found = patternOf(design, id, face)
  const set = found?.pattern.holes
  if (!found || !set || !(hole in set.x)) return null
  const row = rowNamed(design, set.rows[set.row[hole]])
  if (!row) throw new Error(`a hole of ${id} belongs to ${set.rows[set.row[hole]]}, which is no row`)
  const i = set.index[hole]
  const place = placeOf(row, i)
  const stack = row.stacks[row.stack[i]]
  const mates = matesOf(design, row, i, found.part.id, face, units)
  const shared = row.shared[i] ?? []
  return {
    hole,
    id: fastenerId(row, i),
    address: placeWords(place, design.definition.coach.market),
    says: [
      `Hole ${hole + 1} of ${set.x.length}, ${plainLength(set.diameter[hole], units)}, ${ROLES[set.role ?? 'full']}, for ${typeWords(design, row)} ${stack.name} of ${row.id} (${row.says}).`,
      `On the sheet: x ${lengthWords(set.x[hole], units)}, y ${lengthWords(set.y[hole], units)}.`,
      `Grip ${lengthWords(stack.grip, units, 1)} through ${stack.parts.length === 1 ? 'one layer' : `${stack.parts.length} layers`}.`,
      ...(shared.length > 0 ? [`The rows ${shared.join(' and ')} run through it too.`] : []),
    ].join(' '),
    mates,
    at: seenAt(design, place),
  }
}

function typeWords({ definition }: Design, { fastener }: FastenerRow): string {
  const type = definition.fasteners.find(({ id }) => id === fastener)
  return type ? `the ${type.diameter.name} ${type.kind} rivet ${fastener}` : `the ${fastener}`
}

interface HoleOf {
  readonly part: Part
  readonly pattern: Pattern
  readonly hole: number
}

/** Holes by row and fastener, gathered once for a list of parts: a coach has some twenty thousand. */
const HOLES = new WeakMap<readonly Part[], ReadonlyMap<string, ReadonlyMap<number, readonly HoleOf[]>>>()

function holesOfFastener({ parts }: Pick<Design, 'parts'>, row: string, index: number): readonly HoleOf[] {
  const known = HOLES.get(parts) ?? gathered(parts)
  HOLES.set(parts, known)
  return known.get(row)?.get(index) ?? []
}

function gathered(parts: readonly Part[]): ReadonlyMap<string, ReadonlyMap<number, readonly HoleOf[]>> {
  const rows = new Map<string, Map<number, HoleOf[]>>()
  for (const part of parts)
    for (const pattern of part.patterns) {
      const { holes } = pattern
      holes.index.forEach((index, hole) => {
        const id = holes.rows[holes.row[hole]]
        const row = rows.get(id) ?? new Map<number, HoleOf[]>()
        rows.set(id, row)
        const own = row.get(index) ?? []
        row.set(index, own)
        own.push({ part, pattern, hole })
      })
    }
  return rows
}

/** The other layers from the outside in; one that is not laid flat yet is named as well, and says so. */
function matesOf(design: Design, row: FastenerRow, index: number, part: string, face: string, units: UnitSystem): readonly Mate[] {
  const holes = holesOfFastener(design, row.id, index)
  const stack = row.stacks[row.stack[index]].parts
  const layers = [...stack, ...holes.map((each) => each.part.id).filter((id) => !stack.includes(id))]
  return [...new Set(layers)].flatMap((layer): readonly Mate[] => {
    const own = holes.filter((each) => each.part.id === layer && !(layer === part && each.pattern.face === face))
    if (own.length > 0)
      return own.map((each) => {
        const { x, y, diameter } = each.pattern.holes
        const named = namedFlat(each.part, each.pattern)
        return {
          ...{ part: layer, says: named.says, face: each.pattern.face, hole: each.hole },
          words: `${plainLength(diameter[each.hole], units)} at x ${lengthWords(x[each.hole], units)}, y ${lengthWords(y[each.hole], units)}`,
        }
      })
    if (layer === part) return []
    const other = design.parts.find(({ id }) => id === layer)
    const why = other?.notComputed ?? 'It has no flat pattern with this hole: it is drilled through from the others.'
    return [{ part: layer, says: other?.says ?? layer, face: null, hole: null, words: why }]
  })
}
