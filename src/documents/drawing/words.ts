/** Sides, views and addresses in words. Letters are made here, at the door, from the market. */

import { letterOfSide } from '../../definition/sides.js'
import type { Market, Side } from '../../definition/types.js'
import type { FlatFrame, Place } from '../../derive/nouns.js'
import { fixed } from './units.js'

/** C is the curb side: right of travel where traffic keeps right, left of travel where it keeps left (uk, au). */
export function sideLetter(side: Side, market: Market): 'C' | 'R' | null {
  if (side === 'centre') return null
  return letterOfSide(side, market)
}

/** `LEFT (R, road side)` or `CENTRE`. */
export function sideWords(side: Side, market: Market): string {
  const letter = sideLetter(side, market)
  if (letter === null) return 'CENTRE'
  return `${side.toUpperCase()} (${letter}, ${letter === 'C' ? 'curb' : 'road'} side)`
}

/** `LEFT (R, road side) — seen from OUTSIDE`; what lies level under the shell is seen from above or below. */
export function viewWords(side: Side, flat: FlatFrame, under: boolean, market: Market): string {
  const level = under && flat.x === 'aft' && (flat.y === 'right' || flat.y === 'left')
  const from = level ? (flat.y === 'right' ? 'above' : 'below') : flat.view
  return `${sideWords(side, market)} — seen from ${from.toUpperCase()}`
}

/** Third angle in the United States and Australia, first angle elsewhere (ISO 128-3 allows both; common practice, no source). */
export const projectionOf = (market: Market): 'first' | 'third' => (market === 'us' || market === 'au' ? 'third' : 'first')

/**
 * On the barrel `R 5745 WL 1160 (G 1759)`; on an end `nose G 1240 (WL 1160, BL 236)`, the girth from the crown down the
 * vertical plane through the place and BL right positive. `at` reads both back. Below the floor line the word "under" is
 * printed as well as the sign. Always millimetres: stations are names.
 */
export function placeWords(place: Place, market: Market): string {
  if (place.end) return endWords(place, place.end)
  if (place.buttock !== undefined) return underWords(place, place.buttock, market)
  const letter = sideLetter(place.side, market)
  const station = fixed(place.station * 1000, 0)
  if (letter === null) return `STA ${station} G ${fixed(place.girth * 1000, 0)}`
  const waterline = waterlineWords(place.waterline)
  return `${letter} ${station} ${waterline} (G ${fixed(place.girth * 1000, 0)})`
}

const waterlineWords = (z: number): string => `WL ${fixed(z * 1000, 0)}${z < -0.0005 ? ' under' : ''}`

/** `C 4130 BL 900 WL -18 under` in the floor and under it: nothing there has a girth. */
function underWords(place: Place, y: number, market: Market): string {
  const letter = sideLetter(place.side, market) ?? 'STA'
  return `${letter} ${fixed(place.station * 1000, 0)} BL ${fixed(Math.abs(y) * 1000, 0)} ${waterlineWords(place.waterline)}`
}

function endWords(place: Place, end: NonNullable<Place['end']>): string {
  const across = Math.abs(end.y) < 0.0005 ? '0' : fixed(end.y * 1000, 0)
  return `${end.which} G ${fixed(place.girth * 1000, 0)} (${waterlineWords(place.waterline)}, BL ${across})`
}
