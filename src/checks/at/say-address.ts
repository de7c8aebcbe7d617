/** A place printed the way a shop says it. */

import { letterOfSide } from '../../definition/sides.js'
import type { Market } from '../../definition/types.js'
import type { Place } from '../../derive/nouns.js'
import { lengthText } from './lengths.js'

/** Less steep than this a place is on the roof and is told by its girth, rad. */
const ROOF = Math.PI / 4

/** `R 5745 WL 1160 (G 1759.1)`, `C 3915 G 300 (WL 2017.5)`, `STA 3915 G 0`; under the floor the word is said as well. */
export function addressOf(market: Market, place: Place, heading: number): string {
  const station = lengthText(place.station)
  if (place.side === 'centre') return `STA ${station} G 0`
  const wl = `WL ${lengthText(place.waterline)}${place.waterline < -5e-5 ? ' under' : ''}`
  const g = `G ${lengthText(place.girth)}`
  const [first, second] = heading < ROOF ? [g, wl] : [wl, g]
  return `${letterOfSide(place.side, market)} ${station} ${first} (${second})`
}
