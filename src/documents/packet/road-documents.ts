/** Documents of towing, ride and the rules of the road. Each is there only where what it prints was computed. */
import type { Design } from '../../derive/design.js'
import type { SwayCurves } from '../../studies/sway/study.js'
import type { Page } from '../drawing/page.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { labelSheets } from '../sheets/label-sheet.js'
import { rideSheets } from '../sheets/ride-sheet.js'
import { couplingSheets, lampSheets } from '../sheets/road-sheets.js'
import { rubberCard } from '../sheets/rubber-card.js'
import { towingSheets } from '../sheets/towing-sheet.js'
import { drawnFrom } from './end-documents.js'
import { coachMade } from './made-from-parts.js'
import type { PlannedDocument } from './planned.js'
import { pdfDocument } from './planned.js'

interface RoadOptions extends PrintOptions {
  readonly sway?: SwayCurves
}

export function roadDocuments(design: Design, options: RoadOptions): readonly PlannedDocument[] {
  const { towing, ride, road } = design
  const planned = (path: string, says: string, name: string, from: readonly unknown[], pages: () => readonly Page[]): PlannedDocument =>
    pdfDocument(path, says, () => [coachMade(design), drawnFrom(name, from, pages)], pages)
  const sway = options.sway ?? null
  return [
    ...('notComputed' in towing
      ? []
      : [
          planned('road/towing.pdf', 'How the coach follows each tow car, in every load case', 'how it is towed', [towing, sway], () =>
            towingSheets(design, towing, sway, options),
          ),
        ]),
    ...('notComputed' in ride
      ? []
      : [
          planned('road/ride.pdf', 'How the floor shakes on rough roads, for each suspension', 'how it rides', [ride], () =>
            rideSheets(design, ride, options),
          ),
        ]),
    ...('notComputed' in road
      ? []
      : [
          planned('road/lamps.pdf', 'Lamps and reflectors: what is asked for, and between which heights', 'the lamps', [road], () =>
            lampSheets(design, road, options),
          ),
          planned('road/coupling.pdf', 'Coupling, chains, breakaway, tyres and rims', 'the coupling and the tyres', [road], () =>
            couplingSheets(design, road, options),
          ),
          planned('road/labels.pdf', 'Artwork of the certification and cargo labels', 'the labels', [road], () =>
            labelSheets(design, road, options),
          ),
        ]),
    ...('notComputed' in ride || ride.rubber === null ? [] : [rubberDocument(design, ride.rubber, options, planned)]),
  ]
}

type Planned = (path: string, says: string, name: string, from: readonly unknown[], pages: () => readonly Page[]) => PlannedDocument

function rubberDocument(design: Design, rubber: Parameters<typeof rubberCard>[1], options: RoadOptions, planned: Planned): PlannedDocument {
  const { suspension } = design.definition
  return planned(
    'road/rubber-axle.pdf',
    'Method card of putting frozen rubber cords into an axle',
    'the rubber axle',
    [rubber, suspension?.rubber],
    () => rubberCard(design, rubber, options),
  )
}
