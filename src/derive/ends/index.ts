/**
 * The ends' door: nose and tail, from the lofted surface to parts, rivet rows, joints and openings.
 *
 * Local axes of an end: x outward from the joint plane, y right of travel, z up; azimuth from the centre line. The lofted
 * surface is the outer mould line. Covers gores, crown cap, ribs, header ring, base channel, openings. Does NOT cover: blanks
 * of formed panels (heavy work, see studies), strength, or the end skins' own joint rows, which the barrel lays.
 */

import { lazily } from '../../quantity/lazily.js'
import type { End } from '../end-names.js'
import { FORGETFUL, type Memo } from '../memo.js'
import type { EndsDerived, FastenerRow, Joint, OpeningDerived, Part } from '../nouns.js'
import { clearance, type EndCut, endCuts } from './cuts.js'
import { endDrawn } from './drawn.js'
import { endFacts } from './facts.js'
import { type EndFraming, framingOf, framingParts, SKIN_LEG } from './framing.js'
import type { BarrelRow, EndInput, Ground, Handed } from './ground.js'
import { endJig, ribShapes } from './jig.js'
import { endJoints } from './joints.js'
import { END_DISTANCE, type LocalRow, lessCuts } from './laid-row.js'
import { type EndRow, type Layer, resolveEndRow, skinsOf } from './layers.js'
import { liningParts } from './lining.js'
import { linedRow, liningDown, onRing, panelsAt } from './lining-rows.js'
import { type LocalEnd, localEnd } from './local.js'
import { type Pieces, type RibPiece, ribPart, ribPieces, stopAt } from './members.js'
import { endOpening, liesOnEnd, rimRing, rimRow, sagOf, trimRing } from './openings.js'
import { ringParts, type Standing, skinParts } from './parts.js'
import { placedRow } from './placed-row.js'
import { ribParts } from './rib-parts.js'
import { sideJig } from './side-jig.js'
import type { Located } from './skin.js'
import { wrappedParts } from './wrapped-parts.js'

export interface Ends {
  readonly local: LocalEnd
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
  readonly joints: readonly Joint[]
  readonly openings: readonly OpeningDerived[]
  /** openings of the definition that do not lie wholly on their end */
  readonly astray: readonly string[]
  readonly facts: EndsDerived
}

/** `barrel` is only asked for where sheets are wrapped: its rows' holes are then punched in them. */
export function deriveEnds(input: EndInput, handed: Handed, memo: Memo = FORGETFUL, barrel: readonly BarrelRow[] = []): Ends {
  const on = [input.section, input.shell, input.ends, input.fasteners, input.rows, input.rules, input.floor, input.lining]
  const local = memo.keep('end', on, () => localEnd(input, handed))
  const made = (['nose', 'tail'] as const).map((end) => {
    const frame = input.frames.find((f) => f.joint === end)
    if (!frame) throw new Error(`no frame carries the ${end}`)
    const openings = input.openings.filter((o) => o.surface === end)
    return memo.keep(`end ${end}`, [local, frame.station, ...openings, ...barrel.map((b) => b.row)], () =>
      oneEnd(local, { end, joint: frame.station }, input, barrel),
    )
  })
  return {
    local,
    parts: made.flatMap((m) => m.parts),
    rows: made.flatMap((m) => m.rows),
    joints: made.flatMap((m) => m.joints),
    openings: made.flatMap((m) => m.openings),
    astray: made.flatMap((m) => m.astray),
    facts: factsOf(local, input, memo),
  }
}

/** What only a sheet or a drawing asks for, its jig and its lines in space, is worked out when one does. */
function factsOf(local: LocalEnd, input: EndInput, memo: Memo): EndsDerived {
  const facts = memo.keep('end facts', [local], () => endFacts(local))
  const drawn = memo.keep('end drawn', [local], () => lazily(() => endDrawn(local)))
  const shapes = memo.keep('rib shapes', [local], () => lazily(() => ribShapes(local)))
  const { frames, process } = input
  return memo.keep('ends derived', [facts, shapes, frames, process], () => {
    const station = (end: End): number => frames.find((f) => f.joint === end)?.station ?? Number.NaN
    const ofEnds = lazily(() => endJig(local, shapes(), process, { nose: station('nose'), tail: station('tail') }))
    const ofSides = lazily(() => sideJig(input, local.ground.loft.section))
    return Object.freeze({
      ...facts,
      get drawn() {
        return drawn()
      },
      get jig() {
        return ofEnds()
      },
      get sideJig() {
        return ofSides()
      },
    })
  })
}

type OneEnd = Omit<Ends, 'local' | 'facts'>

function oneEnd(local: LocalEnd, at: Standing, input: EndInput, barrel: readonly BarrelRow[]): OneEnd {
  // the ground holds the openings it was first made with: the cuts come from the definition at hand
  const ground = { ...local.ground, input }
  const all = endCuts(ground, at.end, at.joint)
  const cuts = all.filter((c) => liesOnEnd(ground, c))
  const pieces: Pieces = new Map(local.ribs.map((rib) => [rib.row, ribPieces(ground, rib, cuts)]))
  const skins = skinsOf(ground, at.end)
  const ringed = cuts.map((cut) => {
    const row = rimRow(ground, cut)
    return { cut, row, framing: framingOf(local, cut, row, pieces) }
  })
  const placed = local.rows.map((row) => {
    const left = lessOpenings(local, row, cuts, pieces)
    const made = (): EndRow => resolve(local, at, left, skins, behindOf(local, at, row, pieces))
    return left === row && isWhole(pieces.get(linedRow(row.draft.id) ?? row.draft.id)) ? asOnTheOther(at, row, made) : made()
  })
  const rims = ringed.map(({ cut, row, framing }) => {
    const resolved = resolve(local, at, row, skins, behindRim(ground, row, framing))
    return { cut, row: resolved, framing, sag: sagOf(ground, cut) }
  })
  const resolved = [...placed, ...rims.map((r) => r.row)]
  return {
    parts: [
      ...wrappedParts({ local, at, rows: resolved, barrel, cuts }, skinParts(local, at)),
      ...ribParts(local, at, resolved, pieces),
      ...ringParts(local, at, resolved),
      ...rims.flatMap(({ cut, row, sag, framing }) => [
        rimRing(local, at, cut, row, sag),
        ...framingParts(local, at, framing, row),
        trimRing(local, at, cut, sag),
      ]),
      ...liningParts(local, at),
    ],
    rows: resolved.map((r) => r.row),
    joints: endJoints(ground, at.end, resolved),
    openings: rims.map(({ row, sag, framing }) => endOpening(local, at, framing, row, sag)),
    astray: all.filter((c) => !cuts.includes(c)).map((c) => c.id),
  }
}

/** The lining's row on a rib that is cut runs anew from end to end of what is left. */
function liningLeft({ ground, ribs }: LocalEnd, row: LocalRow, pieces: Pieces): LocalRow {
  const lined = linedRow(row.draft.id)
  const rib = ribs.find((r) => r.row === lined)
  const left = rib && pieces.get(rib.row)
  return !rib || isWhole(left) ? row : liningDown(ground, rib, left ?? [])
}

/** Whether a rib runs from ring to base; a row without a rib has none that is cut. */
const isWhole = (pieces: readonly RibPiece[] | undefined): boolean =>
  !pieces || (pieces.length === 1 && pieces[0].fromMark === 'ring' && pieces[0].toMark === 'base')

const UNTOUCHED = new WeakMap<LocalRow, { readonly end: End; readonly made: EndRow }>()

/** A row that no opening touches goes through the same layers on nose and tail, but for the end's name before each. */
function asOnTheOther(at: Standing, local: LocalRow, make: () => EndRow): EndRow {
  const known = UNTOUCHED.get(local)
  if (!known) {
    const made = make()
    UNTOUCHED.set(local, { end: at.end, made })
    return made
  }
  const { row, through } = known.made
  const own = (name: string): string => (name.startsWith(`${known.end}-`) ? `${at.end}${name.slice(known.end.length)}` : name)
  const stacks = row.stacks.map((s) => ({ ...s, parts: s.parts.map(own) }))
  return {
    row: Object.freeze({ ...placedRow(local, at.end, at.joint), stack: row.stack, stacks }),
    local,
    through: new Map([...through].map(([key, list]) => [own(key), list])),
  }
}

/** A row without the fasteners an opening takes: sheets keep their edge distance, ribs stop at the rim ring. */
function lessOpenings(local: LocalEnd, whole: LocalRow, cuts: readonly EndCut[], pieces: Pieces): LocalRow {
  if (cuts.length === 0) return whole
  const row = liningLeft(local, whole, pieces)
  const { rules } = local.ground.input
  const { kind, diameter } = row.draft
  const edge = rules.edgeDistance * diameter
  const onRib = kind === 'rib' || kind === 'gore' || kind === 'cap'
  const left = pieces.get(row.draft.id) ?? []
  const stops = cuts.map((cut) => {
    const isFramed = left.some((p) => p.fromMark === cut.id || p.toMark === cut.id)
    return onRib ? stopAt(local.ground, isFramed) + END_DISTANCE * diameter : edge
  })
  return lessCuts(row, (at) => cuts.every((cut, i) => clearance(cut, at.point) >= stops[i] - 1e-9))
}

type Layers = (at: Located, i: number) => readonly Layer[]

function resolve({ ground }: LocalEnd, at: Standing, row: LocalRow, skins: (at: Located) => readonly Layer[], behind: Layers): EndRow {
  const fastener = ground.input.fasteners.find((f) => f.id === row.draft.fastener)
  if (!fastener) throw new Error(`no fastener "${row.draft.fastener}" in the definition`)
  // the lining's rivets stop at the ribs' inner flanges
  const sheets = row.draft.kind === 'lining' ? () => NOTHING : skins
  return resolveEndRow(ground, at.end, at.joint, row, fastener, sheets, behind)
}

/** The rim ring, and on the straights the leg of an angle behind it. */
function behindRim({ input: { shell } }: Ground, row: LocalRow, { angles }: EndFraming): Layers {
  const ring: Layer = { part: row.draft.id, face: 'flange', thickness: shell.rim.thickness.value }
  const alone: readonly Layer[] = [ring]
  const carried = new Map<number, readonly Layer[]>()
  for (const { part, through } of angles) {
    const layers = [ring, { part, face: SKIN_LEG, thickness: shell.post.thickness.value }]
    for (const i of through) carried.set(i, layers)
  }
  return (_, i) => carried.get(i) ?? alone
}

const NOTHING: readonly Layer[] = Object.freeze([])

/** The member behind the skin along a row. */
function behindOf(local: LocalEnd, at: Standing, row: LocalRow, whole: Pieces): Layers {
  const { shell } = local.ground.input
  const along = (
    part: string,
    face: string,
    of: { readonly thickness: { readonly value: number } },
  ): ((at: Located) => readonly Layer[]) => {
    const layers = [{ part, face, thickness: of.thickness.value }]
    return () => layers
  }
  switch (row.draft.kind) {
    case 'cap':
      return along(`${at.end}-header-ring`, 'outer flange', shell.frame)
    case 'base':
      return along(`${at.end}-base`, 'outer flange', shell.edgeChannel)
    case 'toe':
      return along('underbelly', 'sheet', shell.underbelly)
  }
  const lined = linedRow(row.draft.id)
  if (lined === 'cap') return onRing(local.ground, local.ribs, at.end)
  const rib = local.ribs.find((r) => r.row === (lined ?? row.draft.id))
  if (!rib) return () => NOTHING
  if (lined !== null) {
    const inner = { part: ribPart(at.end, rib), face: 'inner flange', thickness: shell.frame.thickness.value }
    const layers = [inner, ...panelsAt(local.ground, local.ribs, rib, at.end)]
    return () => layers
  }
  const pieces = whole.get(rib.row) ?? []
  const flange = [{ part: ribPart(at.end, rib), face: 'outer flange', thickness: shell.frame.thickness.value }]
  return ({ girth }) => (pieces.some((p) => girth > p.from && girth < p.to) ? flange : NOTHING)
}
