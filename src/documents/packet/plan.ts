/**
 * Every document of a build packet, in reading order. Nothing is drawn until a document is made, so a packet can report its
 * progress and be cancelled; a hole table is worked out once and serves its CSV, its program and its printed sheet.
 */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { BlankStudy } from '../../studies/blanks/nouns.js'
import type { FitStudy } from '../../studies/fit/nouns.js'
import type { SwayCurves } from '../../studies/sway/study.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { unitsOf } from '../drawing/sheet.js'
import { checksList } from '../sheets/checks-list.js'
import { coverSheets } from '../sheets/cover.js'
import { flatPatternSheets } from '../sheets/flat-pattern.js'
import { frameTemplateRoll, frameTemplateTiles } from '../sheets/frame-template.js'
import { barePattern, fullSizeRoll, fullSizeTiles } from '../sheets/full-size.js'
import type { GoresAsPlaced } from '../sheets/gore-ways.js'
import { holeTableSheets } from '../sheets/hole-table-sheet.js'
import { openingSchedule, rivetSchedule, strakeSchedule } from '../sheets/schedules.js'
import { tapeCards } from '../sheets/tape-card.js'
import { pageToSvg } from '../svg.js'
import type { ClampedEdge } from '../text/clamp-zone.js'
import { coordinateProgram } from '../text/coordinate-program.js'
import { patternDxf } from '../text/dxf.js'
import { faceName, fileStem } from '../text/heading.js'
import type { HoleTable } from '../text/hole-table.js'
import { holeTableCsv } from '../text/hole-table.js'
import { checksCsv, fastenerScheduleCsv, openingScheduleCsv, sheetScheduleCsv, spanScheduleCsv } from '../text/schedules.js'
import type { ShopTables } from '../text/shop-tables.js'
import { DEFAULT_SHOP, shopTablesText } from '../text/shop-tables.js'
import { endDocuments, jigDocuments, ribTemplateDocuments } from './end-documents.js'
import { blanksMade, checksMade, coverMade, jointsMade, openingsMade, rowsMade, stockMade, templateMade } from './made-from-lists.js'
import {
  bareMade,
  clampsMade,
  coachMade,
  figureMade,
  figureOf,
  fullSizeMade,
  headedMade,
  holesMade,
  holesPrinted,
  sheetMade,
  tapeMade,
} from './made-from-parts.js'
import type { GroupedParts } from './part-groups.js'
import { groupedParts } from './part-groups.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { checkPaths, pdfDocument, textDocument } from './planned.js'
import { roadDocuments } from './road-documents.js'
import { studyDocuments } from './study-documents.js'
import { underDocuments } from './under-documents.js'
import { weightDocuments } from './weight-documents.js'

export interface PacketOptions extends PrintOptions {
  /** name and version, printed in the texts */
  readonly program?: string
  /** the shop's words and tools; plain ones when absent */
  readonly shop?: ShopTables
  readonly clamped?: ClampedEdge
  /** ids of parts to add at full size on sheets to be laid together */
  readonly tiles?: readonly string[]
  /** of formed panels, whose patterns the design then holds */
  readonly blanks?: BlankStudy
  /** gores bent over their ribs as the definition places them */
  readonly gores?: GoresAsPlaced
  /** whether the holes meet, tried so often as the packet says */
  readonly fit?: FitStudy
  /** damping against speed, for the towing sheet */
  readonly sway?: SwayCurves
}

/** What each of several documents needs: the options, and each pattern's hole table made once. */
interface Room {
  readonly design: Design
  readonly options: PacketOptions
  readonly shop: ShopTables
  readonly table: (part: Part, pattern: Pattern) => HoleTable
  readonly made: Made
}

/** What several documents are made from, described once each, so that whoever compares two packets compares it once. */
interface Made {
  readonly coach: MadeFrom
  readonly headed: (part: Part, pattern: Pattern) => MadeFrom
  readonly holes: (part: Part, pattern: Pattern) => MadeFrom
  readonly printed: (part: Part, pattern: Pattern) => MadeFrom
  /** the small figures of the title blocks of these parts; each view once, under one name with the view */
  readonly figures: (parts: readonly Part[]) => readonly MadeFrom[]
}

function once<K, V>(make: (key: K, second: Pattern) => V): (key: K, second?: Pattern) => V {
  const made = new Map<unknown, V>()
  return (key, second) => {
    const known = made.get(second ?? key)
    if (known !== undefined) return known
    const value = make(key, second as Pattern)
    made.set(second ?? key, value)
    return value
  }
}

function madeFor(design: Design): Made {
  const figure = once((view: ReturnType<typeof figureOf>) => figureMade(design, view))
  return {
    coach: coachMade(design),
    headed: once(headedMade),
    holes: once((part: Part, pattern) => holesMade(design, part, pattern)),
    printed: once((part: Part, pattern) => holesPrinted(design, part, pattern)),
    figures: (parts) => [...new Set(parts.map(figureOf))].map((view) => figure(view)),
  }
}

function roomFor(design: Design, options: PacketOptions): Room {
  const shop = options.shop ?? DEFAULT_SHOP
  const made = new Map<Pattern, HoleTable>()
  const table = (part: Part, pattern: Pattern): HoleTable => {
    const known = made.get(pattern) ?? holeTableCsv(design, part, pattern, { ...options, tools: shop.tools })
    made.set(pattern, known)
    return known
  }
  return { design, options, shop, table, made: madeFor(design) }
}

/** Flat patterns of a group: one printed book, one at full size, and a drawing file of each face. */
function flatDocuments({ design, options, made }: Room, group: GroupedParts): readonly PlannedDocument[] {
  const { folder, says, parts, patterns } = group
  const of = (drawn: readonly MadeFrom[]): readonly MadeFrom[] => [made.coach, ...drawn, ...made.figures(parts)]
  const [dimensioned, fullSize] = [
    () => of(parts.map((p) => sheetMade(design, p, unitsOf(options)))),
    () => of(parts.map((p) => fullSizeMade(p, unitsOf(options)))),
  ]
  return [
    pdfDocument(`${folder}/flat-patterns.pdf`, `Flat patterns of ${says}, dimensioned, to scale`, dimensioned, () =>
      parts.flatMap((p) => flatPatternSheets(design, p, options)),
    ),
    pdfDocument(`${folder}/full-size.pdf`, `Flat patterns of ${says} at full size, one roll page each`, fullSize, () =>
      patterns.flatMap(({ part, pattern }) => fullSizeRoll(design, part, pattern, options)),
    ),
    ...patterns.flatMap(({ part, pattern }) => [
      textDocument(
        `${folder}/${fileStem(part, pattern)}.svg`,
        `Flat pattern of ${faceName(part, pattern)} at 1:1 in mm, SVG`,
        () => [bareMade(part, pattern)],
        () => pageToSvg(barePattern(part, pattern)),
      ),
      textDocument(
        `${folder}/${fileStem(part, pattern)}.dxf`,
        `Flat pattern of ${faceName(part, pattern)} at 1:1 in mm, DXF`,
        () => [made.coach, made.headed(part, pattern)],
        () => patternDxf(design, part, pattern, options),
      ),
    ]),
  ]
}

function holeDocuments({ design, options, shop, table, made }: Room, group: GroupedParts): readonly PlannedDocument[] {
  const punched = group.patterns.filter(({ pattern }) => pattern.holes.x.length > 0)
  if (!punched.length) return []
  const printed = (): readonly Page[] =>
    punched.flatMap(({ part, pattern }) => holeTableSheets(design, part, pattern, table(part, pattern), options))
  const program = (part: Part, pattern: Pattern): string =>
    coordinateProgram(design, part, pattern, table(part, pattern), { ...options, ...shop }).text
  return [
    pdfDocument(
      `holes/${group.folder}.pdf`,
      `Hole tables of ${group.says}, printed`,
      () => [made.coach, ...punched.map(({ part, pattern }) => made.printed(part, pattern))],
      printed,
    ),
    ...punched.map(({ part, pattern }) =>
      textDocument(
        `holes/${fileStem(part, pattern)}.csv`,
        `Hole table of ${faceName(part, pattern)}, with its checksum`,
        () => [made.coach, made.holes(part, pattern)],
        () => table(part, pattern).text,
      ),
    ),
    ...punched.map(({ part, pattern }) =>
      textDocument(
        `programs/${fileStem(part, pattern)}.nc`,
        `Neutral coordinate program of ${faceName(part, pattern)}: check before metal`,
        () => [made.coach, made.holes(part, pattern), clampsMade(design, part, pattern, options.clamped ?? 'low y')],
        () => program(part, pattern),
      ),
    ),
  ]
}

function scheduleDocuments({ design, options, made }: Room): readonly PlannedDocument[] {
  const units = unitsOf(options)
  const { coach } = made
  const planned = (
    path: string,
    says: string,
    of: () => readonly MadeFrom[],
    pages: (design: Design, options: PacketOptions) => readonly Page[],
  ): PlannedDocument =>
    pdfDocument(
      path,
      says,
      () => [coach, ...of()],
      () => pages(design, options),
    )
  const listed = (
    path: string,
    says: string,
    of: () => readonly MadeFrom[],
    text: (design: Design, options: PacketOptions) => string,
  ): PlannedDocument =>
    textDocument(
      path,
      says,
      () => [coach, ...of()],
      () => text(design, options),
    )
  const sheeted = design.parts.filter((p) => p.patterns.length > 0)
  const strakes = design.parts.filter((p) => p.kind === 'strake' || p.kind === 'lining')
  return [
    planned('checks/checks.pdf', 'Every check with its margin, and what was not checked', () => checksMade(design, true), checksList),
    listed('checks/checks.csv', 'Every check with its margin, for a spreadsheet', () => checksMade(design, false), checksCsv),
    planned(
      'schedules/strakes.pdf',
      'Strakes and lining panels, and how the stock is shared',
      () => [...blanksMade(strakes, false, units), stockMade(design, units)],
      strakeSchedule,
    ),
    planned(
      'schedules/rivets.pdf',
      'Rivets by joint and by station',
      () => [...rowsMade(design, 'paper', units), ...jointsMade(design)],
      rivetSchedule,
    ),
    planned('schedules/openings.pdf', 'Openings and what each touches', () => openingsMade(design, false, units), openingSchedule),
    listed('schedules/sheets.csv', 'Blanks of every sheet part', () => blanksMade(sheeted, true, units), sheetScheduleCsv),
    listed('schedules/rivets.csv', 'Rivets by row and stack', () => rowsMade(design, 'stacks', units), fastenerScheduleCsv),
    listed('schedules/spans.csv', 'Rivet rows by span, with the fitted pitch', () => rowsMade(design, 'spans', units), spanScheduleCsv),
    listed(
      'schedules/openings.csv',
      'Openings and what each touches, for a spreadsheet',
      () => openingsMade(design, true, units),
      openingScheduleCsv,
    ),
  ]
}

function templateDocuments({ design, options, made }: Room): readonly PlannedDocument[] {
  const frames = (['hoop', 'joint'] as const).flatMap((kind) => [
    pdfDocument(
      `templates/${kind}-frame-tiles.pdf`,
      `Full-size template of the ${kind} frame on sheets to be laid together`,
      () => [made.coach, ...templateMade(design, kind)],
      () => frameTemplateTiles(design, kind, options),
    ),
    pdfDocument(
      `templates/${kind}-frame-roll.pdf`,
      `Full-size template of the ${kind} frame on one roll page`,
      () => [made.coach, ...templateMade(design, kind), figureMade(design, 'left')],
      () => frameTemplateRoll(design, kind, options),
    ),
  ])
  const asked = (options.tiles ?? []).flatMap((id) => {
    const part = design.parts.find((p) => p.id === id)
    if (!part)
      throw new RangeError(`${design.definition.coach.name} has no part ${id} to print at full size on sheets. Name a part of this coach.`)
    return part.patterns.map((pattern) =>
      pdfDocument(
        `templates/${fileStem(part, pattern)}-tiles.pdf`,
        `${faceName(part, pattern)} at full size on sheets to be laid together`,
        () => [made.coach, fullSizeMade(part, unitsOf(options))],
        () => fullSizeTiles(design, part, pattern, options),
      ),
    )
  })
  return [...frames, ...asked]
}

/** Cards only where a row of holes runs along an edge long enough to be taped. */
const TAPED: readonly string[] = ['sheets', 'frames', 'lining', 'ends']

/** Throws a RangeError with a sentence when `tiles` names a part the coach does not have. */
export function packetPlan(design: Design, options: PacketOptions = {}): readonly PlannedDocument[] {
  const room = roomFor(design, options)
  const groups = groupedParts(design)
  const body: readonly PlannedDocument[] = [
    ...scheduleDocuments(room),
    ...endDocuments(design, options),
    ...underDocuments(design, options),
    ...studyDocuments(design, options, room.made.coach),
    ...weightDocuments(design, options),
    ...roadDocuments(design, options),
    ...groups.flatMap((g) => flatDocuments(room, g)),
    ...groups.flatMap((g) => holeDocuments(room, g)),
    textDocument(
      'programs/shop-tables.json',
      'Words and tools the programs were written with, for the shop to edit',
      () => [],
      () => shopTablesText(room.shop),
    ),
    ...groups
      .filter((g) => TAPED.includes(g.folder))
      .map((g) =>
        pdfDocument(
          `tape/${g.folder}.pdf`,
          `Tape cards of ${g.says}: running dimensions, one strip an edge`,
          () => [room.made.coach, ...g.parts.map((p) => tapeMade(p, unitsOf(options)))],
          () => g.parts.flatMap((p) => tapeCards(design, p, options)),
        ),
      ),
    ...templateDocuments(room),
    ...ribTemplateDocuments(design, options),
    ...jigDocuments(design, options),
  ]
  const cover = pdfDocument(
    'cover.pdf',
    'Cover: what passes, what fails, what was not checked, and what is in the packet',
    () => [room.made.coach, ...coverMade(design, body, options)],
    () => coverSheets(design, body, options),
  )
  return checkPaths([cover, ...body])
}
