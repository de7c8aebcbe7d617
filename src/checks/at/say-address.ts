/** A place printed the way a shop says it. */

import { letterOfSide } from '../../definition/sides.js'
import type { Market } from '../../definition/types.js'
import type { Derived } from '../../derive/index.js'
import type { Place } from '../../derive/nouns.js'
import { lengthText } from './lengths.js'
import type { EndSpot } from './place-on-end.js'

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

/** A place nearer than this to a mid rib is on it, m. */
const ON_RIB = 5e-4

/**
 * `nose gore 3, G 1240 (WL 1160)` on the mid rib of that gore. Beside it BL is said as well, or the station on the flanks,
 * where BL hardly changes from place to place: whatever is printed can be read back.
 */
export function endAddress(derived: Derived, spot: EndSpot): string {
  const { at, gore, girth, point, phi } = spot
  const [x, y, z] = point
  const head = `${at.end} gore ${gore}, G ${lengthText(girth)} (WL ${lengthText(z)}${z < -5e-5 ? ' under' : ''}`
  const mid = derived.endSections.local.ground.mids[gore - 1]
  if (Math.abs(Math.hypot(x, y) * Math.sin(phi - mid)) < ON_RIB) return `${head})`
  if (Math.abs(phi) <= Math.PI / 4) return `${head}, BL ${lengthText(y)})`
  return `${head}, STA ${lengthText(at.joint + (at.end === 'nose' ? -x : x))})`
}
