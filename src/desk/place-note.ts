/** What a pointer rests on: the full address, and what is outside, through the skin and inside there, the nearest of each. m. */
import { at, type Thing } from '../checks/at/at.js'
import type { Subject } from '../checks/explain/entry.js'
import { letterOfSide } from '../definition/sides.js'
import { count } from '../ripple/words.js'
import type { Look, PlaceNote } from './nouns.js'

/** Null where there is no coach: beside it, under it, in the air round its corners. */
export function placeNote({ design, derived }: Subject, look: Look, x: number, y: number): PlaceNote | null {
  const found = at(derived, written(derived.definition.coach.market, look, x, y))
  if (!found.ok) return null
  const { place, outside, through, inside } = found.found
  const fastener = through.find((thing) => thing.distance < ON_IT && design.rows.some((row) => thing.id.startsWith(`${row.id}/`)))
  const row = fastener && design.rows.filter(({ id }) => fastener.id.startsWith(`${id}/`)).sort((a, b) => b.id.length - a.id.length)[0]
  return {
    address: place.address,
    lines: [
      ...lines('Outside', outside),
      ...lines('Through the skin', through),
      ...(row
        ? [
            {
              says: 'Row',
              text: `${row.says}: ${count(row.station.length, 'fastener')}, ${count(row.spans.length, 'stretch', 'stretches')}.`,
            },
          ]
        : []),
      ...lines('Inside', inside),
    ],
  }
}

/** A head is some six millimetres across: nearer than this the pointer is on it. */
const ON_IT = 0.006

/** As many of each as are read in passing. */
const MOST = 2

const lines = (says: string, things: readonly Thing[]): PlaceNote['lines'] =>
  things.length === 0
    ? []
    : [
        {
          says,
          text: things
            .slice(0, MOST)
            .map(({ sentence }) => sentence)
            .join(' '),
        },
      ]

const mm = (m: number): string => (m * 1000).toFixed(1)

/** The pointer's place as a shop would write it. */
function written(market: Parameters<typeof letterOfSide>[1], look: Look, x: number, y: number): string {
  if (look === 'nose' || look === 'tail') return `${look} WL ${mm(y)} BL ${mm(x)}`
  if (look === 'plan') return `roof ${mm(x)} BL ${mm(y)}`
  return `${letterOfSide(look, market)} ${mm(x)} WL ${mm(y)}`
}
