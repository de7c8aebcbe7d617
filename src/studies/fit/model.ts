/**
 * What of a design a trial needs: for each joint its fasteners with the parts they go through, and which sheets are placed.
 *
 * A joint's bodies are its outermost sheets, each for itself (a lining lap's are the panels, a rim's is its ring, which is
 * offered up to the skin). Besides the joints every sheet that lies on two or more frames is a body against all of them
 * at once: only there does it show that a sheet has grown and the jig has not.
 */
import type { Design } from '../../derive/design.js'
import { rowsById } from '../../derive/holes.js'
import type { FastenerRow, Joint, Part, PartKind } from '../../derive/nouns.js'
import { findAlloy } from '../../tables/alloys.js'
import { type HolePlace, placesIn } from './places.js'

/** Held where the jig holds it; a sheet; or loose, and so laid where its own holes centre. */
export type Held = 'side jig' | 'end jig' | 'sheet' | 'loose'

export interface FitPart {
  readonly id: string
  readonly held: Held
  /** thermal expansion, 1/K */
  readonly cte: number
  /** the axis its length, and so the punch's drift, runs along */
  readonly along: 'x' | 'y'
  readonly formed: boolean
}

export interface FitHole extends HolePlace {
  /** index into the model's rows */
  readonly row: number
  /** indices into the model's parts, outside to inside */
  readonly layers: readonly number[]
}

export interface FitModel {
  readonly id: string
  readonly says: string
  readonly rows: readonly FastenerRow[]
  readonly parts: readonly FitPart[]
  readonly holes: readonly FitHole[]
  /** indices into parts */
  readonly bodies: readonly number[]
}

const HELD: Partial<Record<PartKind, Held>> = {
  frame: 'side jig',
  'joint-frame': 'side jig',
  'edge-channel': 'side jig',
  'end-rib': 'end jig',
  'header-ring': 'end jig',
  'end-base': 'end jig',
  strake: 'sheet',
  lining: 'sheet',
  gore: 'sheet',
  'crown-cap': 'sheet',
  'end-lining': 'sheet',
}

export interface FitModels {
  readonly joints: readonly FitModel[]
  readonly sheets: readonly FitModel[]
}

export function fitModels(design: Pick<Design, 'definition' | 'parts' | 'rows' | 'joints'>): FitModels {
  const parts = new Map(design.parts.map((p) => [p.id, p]))
  const rows = rowsById(design.rows)
  const placed = new Map<string, readonly HolePlace[]>()
  const locate = placesIn(design)
  const places = (row: FastenerRow): readonly HolePlace[] => {
    const known = placed.get(row.id) ?? locate(row)
    placed.set(row.id, known)
    return known
  }
  const formed = design.definition.ends.make === 'formed'
  const info = (id: string, joint: Joint | null): FitPart => fitPart(id, parts.get(id), joint, formed)
  const rowsOf = (joint: Joint): readonly FastenerRow[] =>
    joint.rows.map((id) => {
      const row = rows.get(id)
      if (!row) throw new Error(`joint ${joint.id} has no row ${id}`)
      return row
    })
  return {
    joints: design.joints.map((joint) => jointModel(joint, rowsOf(joint), places, info)).filter((m) => m.holes.length > 0),
    sheets: design.parts.flatMap((part) => sheetModel(part, design.rows, places, info)),
  }
}

function fitPart(id: string, part: Part | undefined, joint: Joint | null, formed: boolean): FitPart {
  const layer = joint?.layers.find((l) => l.parts.includes(id))
  const material = part?.material ?? layer?.material
  if (material === undefined) throw new Error(`no material is known of ${id} in ${joint?.id ?? 'no joint'}`)
  const found = findAlloy(material, part?.thickness.value ?? layer?.thickness)
  if (!found.ok) throw new Error(found.says)
  const x = part?.patterns[0]?.flat.x
  return {
    id,
    held: (part && HELD[part.kind]) ?? 'loose',
    cte: found.row.cte.value,
    // a row of an end is laid out along itself; on the barrel the pattern's own x says which way the sheet lies
    along: part?.trade === 'ends' || x === undefined || x === 'aft' || x === 'forward' ? 'x' : 'y',
    formed: formed && (part?.kind === 'gore' || part?.kind === 'crown-cap'),
  }
}

type Places = (row: FastenerRow) => readonly HolePlace[]
type Info = (id: string, joint: Joint | null) => FitPart

/** Collects parts by name as holes are added. */
function collector(info: (id: string) => FitPart): { readonly parts: FitPart[]; index(id: string): number } {
  const parts: FitPart[] = []
  const at = new Map<string, number>()
  return {
    parts,
    index(id) {
      const known = at.get(id) ?? parts.push(info(id)) - 1
      at.set(id, known)
      return known
    },
  }
}

function jointModel(joint: Joint, rows: readonly FastenerRow[], places: Places, info: Info): FitModel {
  const { parts, index } = collector((id) => info(id, joint))
  const bodies = new Set<number>()
  const holes: FitHole[] = []
  rows.forEach((row, r) => {
    places(row).forEach((place, i) => {
      const stack = row.stacks[row.stack[i]]
      if (stack.parts.length < 2) return
      const layers = stack.parts.map(index)
      holes.push({ ...place, row: r, layers })
      const ring = stack.parts.indexOf(joint.id.replace(/^joint-/, ''))
      const sheet = layers.findIndex((p) => parts[p].held === 'sheet')
      bodies.add(layers[ring >= 0 ? ring : Math.max(sheet, 0)])
    })
  })
  return { id: joint.id, says: joint.says, rows, parts, holes, bodies: [...bodies] }
}

/** A sheet against every frame it lies on, the laps left to their own joints; none where it lies on fewer than two. */
function sheetModel(part: Part, all: readonly FastenerRow[], places: Places, info: Info): readonly FitModel[] {
  if (part.kind !== 'strake' && part.kind !== 'lining') return []
  const { parts, index } = collector((id) => info(id, null))
  const body = index(part.id)
  const rows: FastenerRow[] = []
  const holes: FitHole[] = []
  for (const row of all) {
    if (row.kind !== 'hoop' && row.kind !== 'joint' && row.kind !== 'lining') continue
    const from = holes.length
    for (let i = 0; i < row.stack.length; i++) {
      const stack = row.stacks[row.stack[i]]
      if (!stack.parts.includes(part.id)) continue
      const frame = stack.parts.find((id) => /^frame-/.test(id))
      if (frame === undefined) continue
      const layers = stack.parts.filter((id) => id === part.id || id === frame).map(index)
      holes.push({ ...places(row)[i], row: rows.length, layers })
    }
    if (holes.length > from) rows.push(row)
  }
  if (parts.length < 3) return []
  return [{ id: `sheet-${part.id}`, says: `${part.says} on its ${parts.length - 1} frames`, rows, parts, holes, bodies: [body] }]
}
