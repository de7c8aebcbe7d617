/**
 * A design whose end lining has its flat patterns: every document draws them as it draws any other sheet. About a tenth of a second,
 * so not part of derive. A panel that no flat sheet makes keeps its place among the parts that wait, with the reason.
 */
import type { Design } from '../../derive/design.js'
import { type LiningFlat, liningFlats } from '../../derive/ends/lining-flats.js'
import type { Derived } from '../../derive/index.js'
import type { Outline, Part, Pattern } from '../../derive/nouns.js'

/** `derived` is what the design was made from: the ends' own axes are there. */
export function withLining<D extends Pick<Design, 'parts' | 'definition'>>(design: D, derived: Pick<Derived, 'endSections'>): D {
  const { local } = derived.endSections
  const flats = new Map(liningFlats(local).flatMap((flat) => flat.panels.map((panel, i) => [panel, { flat, isTwin: i > 0 }] as const)))
  const parts = design.parts.map((part) => {
    const number = part.kind === 'end-lining' ? Number(/-lining-(\d+)$/.exec(part.id)?.[1]) : Number.NaN
    const found = flats.get(number)
    if (!found) return part
    return found.flat.refused === null
      ? withPattern(part, found.flat, found.isTwin, design.definition.lining.thickness.value, design.definition.lining.lap)
      : Object.freeze({ ...part, notComputed: `No flat sheet bends over its two ribs. ${found.flat.refused}` })
  })
  return Object.freeze({ ...design, parts })
}

const mm = (metres: number): string => (metres * 1000).toFixed(1)

function withPattern(part: Part, flat: LiningFlat, isTwin: boolean, thickness: number, lap: number): Part {
  const { notComputed: _, ...rest } = part
  const { end } = part.place
  if (!end) throw new Error(`${part.id} is not on an end`)
  const isNose = end.which === 'nose'
  // worked out as the right half of the nose is seen; the left half and the tail's right half are its mirror images
  const isMirrored = isTwin === isNose
  const pattern: Pattern = Object.freeze({
    face: 'sheet',
    flat: Object.freeze({
      view: 'outside',
      x: 'down',
      y: isNose ? 'left' : 'right',
      origin: { station: part.place.station, girth: part.place.girth, says: 'corner of the rectangle round it, at its upper end' },
    }),
    thickness,
    outline: boxed(flat.outline, isMirrored),
    cuts: [],
    marks: [],
    holes: Object.freeze({ rows: [], row: [], index: [], x: [], y: [], diameter: [] }),
  })
  return Object.freeze({
    ...rest,
    patterns: [pattern],
    notes: [
      `Its rivet lines lie ${mm(lap / 2)} mm inside the long edges and the upper one. Drill it through the ribs and the ring when it is fitted.`,
      `Bent over its ribs, it stands up to ${mm(flat.sag)} mm inside the line they would have between them.`,
      'Openings are cut when it is fitted. Mass and net area are between the ribs, without the laps drawn here.',
    ],
  })
}

/** From its lowest corner, anticlockwise. */
function boxed(points: LiningFlat['outline'], isMirrored: boolean): Outline {
  const turned = isMirrored ? [...points].reverse().map(([x, y]) => [x, -y] as const) : points
  const [x0, y0] = [Math.min(...turned.map(([x]) => x)), Math.min(...turned.map(([, y]) => y))]
  return turned.map(([x, y]) => [x - x0, y - y0, 0] as const)
}
