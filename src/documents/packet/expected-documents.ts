/**
 * Documents that hang on a study, told before the study is done: where they will be, and what of the design they are made from.
 * A blank is not worked out to know that it will be another one: it is another when anything it is worked out from is.
 */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import { coachMade } from './made-from-parts.js'
import {
  fitMade,
  headsMade,
  lapsMade,
  liningMade,
  panelsMade,
  rivetsMade,
  rulesMade,
  shapeMade,
  stockMade,
  waysMade,
} from './made-from-studies.js'
import type { MadeFrom, PlannedDocument } from './planned.js'
import { BLANKS, GORE_WAYS, HOLE_FIT_LIST, HOLE_FIT_PAGE } from './study-documents.js'

export type ExpectedDocument = Omit<PlannedDocument, 'content'>

/** What a packet holds when the studies are done, beside what its plan already has. */
export interface Expected {
  readonly documents: readonly ExpectedDocument[]
  /** what documents of the plan are then made from besides, by path */
  readonly besides: ReadonlyMap<string, readonly MadeFrom[]>
}

/** Books and lists that gain a page or line for each formed panel, and what they say of it besides. No tape card: nothing runs along a blank's edge. */
const GAINING: Readonly<Record<string, readonly Besides[]>> = {
  'cover.pdf': ['rules', 'stock'],
  'checks/checks.pdf': ['rules', 'stock'],
  'checks/checks.csv': ['rules', 'stock'],
  'schedules/sheets.csv': ['stock'],
  'ends/flat-patterns.pdf': ['stock', 'rivets'],
  'ends/full-size.pdf': [],
  'holes/ends.pdf': [],
}

/** What only some sheets of a panel tell: the edge distance it must keep and where clamps may stand, the sheet it is cut from, the types of its rivets. */
type Besides = 'rules' | 'stock' | 'rivets'

export function expectedDocuments(design: Design): Expected {
  const coach = coachMade(design)
  const panels = formedPanels(design)
  const blanks = panels.length === 0 ? [] : [shapeMade(design), ...panelsMade(design, panels)]
  const told: Readonly<Record<Besides, MadeFrom>> = {
    rules: rulesMade(design),
    stock: stockMade(design),
    rivets: rivetsMade(design, panels),
  }
  const planned = ({ path, says }: { readonly path: string; readonly says: string }, made: readonly MadeFrom[]): ExpectedDocument => ({
    path,
    says,
    of: () => [coach, ...made],
  })
  const linings = linedPanels(design)
  const lined = linings.length === 0 ? [] : [liningMade(design), lapsMade(design), ...panelsMade(design, linings)]
  const fit = design.definition.process === null ? [] : [fitMade(design)]
  const gaining = [
    ...(panels.length === 0
      ? []
      : Object.entries(GAINING).map(([path, also]) => [path, [...blanks, ...also.map((name) => told[name])]] as const)),
    ...(lined.length === 0
      ? []
      : LINED.map((path) => [path, path === LINED_FLAT ? [...lined, rivetsMade(design, linings)] : lined] as const)),
    // how many can be laid flat hangs on their shape alone, and so does their sag
    ...(lined.length === 0 ? [] : SHAPED.map((path) => [path, [lined[0]]] as const)),
  ]
  const besides = new Map<string, readonly MadeFrom[]>()
  for (const [path, made] of gaining) besides.set(path, [...(besides.get(path) ?? []), ...made])
  return {
    documents: [
      ...(panels.length === 0 ? [] : [planned(BLANKS, [...headsMade(design, panels), ...blanks, told.rules, told.stock])]),
      planned(GORE_WAYS, [waysMade(design), ...blanks, told.rules, told.stock]),
      ...(fit.length === 0 ? [] : [planned(HOLE_FIT_PAGE, fit), planned(HOLE_FIT_LIST, fit)]),
      ...panels.flatMap((part, i) => panelDocuments('ends', part, [blanks[0], blanks[i + 1]], told.rules, planned)),
      ...linings.flatMap((part, i) => panelDocuments('lining', part, [lined[0], lined[1], lined[i + 2]], told.rules, planned)),
    ],
    besides,
  }
}

/** Parts that have no pattern until their blank is worked out. A cap over a flat roof never has one. */
export function formedPanels({ definition, parts }: Design): readonly Part[] {
  if (definition.ends.make !== 'formed') return []
  const isCapped = definition.section.chain[0].kind !== 'line'
  return parts.filter((p) => p.patterns.length === 0 && (p.kind === 'gore' || (p.kind === 'crown-cap' && isCapped)))
}

/** Lining of the ends that is laid flat for the packet; the panel inside the ring is domed and never is. */
export function linedPanels({ definition, parts }: Design): readonly Part[] {
  if (definition.ends.make === 'wrapped') return []
  return parts.filter((p) => p.kind === 'end-lining' && !p.id.endsWith('-crown'))
}

/** Books and lists that gain a page or line for each of them. */
const LINED_FLAT = 'lining/flat-patterns.pdf'
const LINED: readonly string[] = ['schedules/sheets.csv', LINED_FLAT, 'lining/full-size.pdf', 'holes/lining.pdf']

/** Sheets that say of them how many there are, or how far they sag. */
const SHAPED: readonly string[] = ['cover.pdf', 'ends/nose-and-tail.pdf']

type Planned = (where: { readonly path: string; readonly says: string }, made: readonly MadeFrom[]) => ExpectedDocument

/** As `flatDocuments` and `holeDocuments` of the plan name them, for a part of one face. */
function panelDocuments(
  folder: string,
  { id }: Part,
  made: readonly MadeFrom[],
  rules: MadeFrom,
  planned: Planned,
): readonly ExpectedDocument[] {
  return [
    planned({ path: `${folder}/${id}.svg`, says: `Flat pattern of ${id} at 1:1 in mm, SVG` }, made),
    planned({ path: `${folder}/${id}.dxf`, says: `Flat pattern of ${id} at 1:1 in mm, DXF` }, made),
    planned({ path: `holes/${id}.csv`, says: `Hole table of ${id}, with its checksum` }, made),
    // whose clamps are in the way of which holes
    planned({ path: `programs/${id}.nc`, says: `Neutral coordinate program of ${id}: check before metal` }, [...made, rules]),
  ]
}
