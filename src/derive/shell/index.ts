/** The shell trade's door: slice of a definition in, parts, rows, joints and openings out. */
import { developAt, type Development } from '../../maths/development.js'
import type { FastenerRow, Joint, OpeningDerived, Part, SectionPoint, SheetUse } from '../nouns.js'
import type { ShellInput } from './input.js'
import { jointsOf } from './joints.js'
import { liningOf } from './lining.js'
import { channelPlates, fastenerOf, foreignPlates, framePlates, type Laid, stringerPlates } from './members.js'
import { openingShapes } from './opening-shape.js'
import { openingsOf } from './openings.js'
import { buildParts, trimRings } from './part-list.js'
import type { Plate } from './plates.js'
import type { RowDraft } from './row-draft.js'
import { baseRows, hoopRows, jointRows, seamRows, toeRows } from './rows-skin.js'
import { type Rim, rimOf } from './rows-rim.js'
import { liningDepth, pointTable, type Section, sectionOf } from './section.js'
import { skinDevelopment, strakesOf } from './sheets.js'
import { type ResolvedRow, resolveRow } from './stacks.js'

export interface Shell {
  readonly section: Section
  readonly points: readonly SectionPoint[]
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
  readonly joints: readonly Joint[]
  readonly openings: readonly OpeningDerived[]
  readonly sheets: readonly SheetUse[]
  /** what the checks look at: the geometry before it became parts */
  readonly laid: Laid
  readonly plates: readonly Plate[]
  readonly rims: readonly Rim[]
  readonly resolved: readonly ResolvedRow[]
}

export type { ShellInput } from './input.js'

export function deriveShell(input: ShellInput): Shell {
  const section = sectionOf(input)
  const skin = skinDevelopment(input, section)
  const shapes = openingShapes(input, section, skin)
  const laid: Laid = { input, section, skin, shapes }
  const skins = strakesOf(input, section, shapes, skin).map((s) => s.plate)
  const frames = framePlates(laid)
  const stringers = stringerPlates(laid)
  const channels = channelPlates(laid)
  const foreign = foreignPlates(laid)
  const rims = shapes.map((shape) => rimOf(laid, shape, skins))
  const lining = liningOf(laid, frames)
  const drafts: RowDraft[] = [
    ...seamRows(laid, stringers, skins), ...hoopRows(laid, frames, skins), ...jointRows(laid, frames, skins, foreign),
    ...baseRows(laid, channels, skins, foreign), ...toeRows(laid, skins, foreign), ...rims.map((r) => r.row), ...lining.rows,
  ]
  const resolved = drafts.filter((d) => d.station.length > 0).map((d) => resolveRow(d, fastenerOf(input, d.fastener), input.rules, skin, section.withFlange))
  const trims = trimRings(laid, liningDevelopment(input, section))
  const built = buildParts({ laid, skins, frames, stringers, channels, rims, lining: lining.plates, trims, resolved })
  const rows = new Map(resolved.map((r) => [r.row.id, r]))
  return {
    section, points: pointTable(input, section), parts: built.parts, rows: resolved.map((r) => r.row), joints: jointsOf(input, resolved),
    openings: openingsOf(laid, rims, rows, skins, lining.plates, new Map(trims.map((t) => [t.shape.id, t.plate.part]))), sheets: built.sheets,
    laid, plates: built.plates, rims, resolved,
  }
}

function liningDevelopment(input: ShellInput, section: Section): Development {
  return developAt(section.withFlange, liningDepth(input) + input.lining.thickness.value + input.shell.rim.thickness.value / 2)
}

