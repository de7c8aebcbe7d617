/** From an address to the place on this coach it names, or a sentence why the coach has no such place. */

import { sideOfLetter } from '../../definition/sides.js'
import type { Side } from '../../definition/types.js'
import { liningDepth } from '../../derive/common/lining-depth.js'
import type { Derived } from '../../derive/index.js'
import { at, girthAtZ, girthFromOffset, widest } from '../../maths/tangent-chain.js'
import type { Address, HeightKey } from './address.js'
import type { EndAddress } from './end-address.js'
import { barrelEnds, lengthText } from './lengths.js'

/** A place on the outer mould line: station, and girth signed, right positive. m. */
export interface Spot {
  readonly station: number
  readonly girth: number
}

export type FoundSpot = { readonly ok: true; readonly spot: Spot } | { readonly ok: false; readonly says: string }

/** Two heights of one address may differ by what rounding to a tenth makes of them, along the skin or in waterline, m. */
const AGREE = 0.001
const AGREE_IN_HEIGHT = 0.0002

/** The same place as an address of nose or tail, where the station lies beyond the barrel's sheets; null where it does not. */
export function beyondBarrel(derived: Derived, address: Address): EndAddress | null {
  const station = stationOf(derived, address)
  const ends = barrelEnds(derived)
  if (station >= ends.x0 - 1e-9 && station <= ends.x1 + 1e-9) return null
  const written = (key: HeightKey): number | null => [address.height, address.also].find((h) => h?.key === key)?.value ?? null
  return {
    which: station < ends.x0 ? 'nose' : 'tail',
    gore: null,
    side: address.side,
    station: address.station,
    WL: written('WL'),
    BL: written('BL'),
    G: written('G') ?? written('g'),
  }
}

/** For stations on the barrel: see `beyondBarrel`. */
export function spotOf(derived: Derived, address: Address): FoundSpot {
  const station = stationOf(derived, address)
  const side = sideOf(derived, address)
  if (typeof side !== 'string') return side
  const girth = girthOf(derived, address.height.key, address.height.value, side)
  if (!girth.ok) return girth
  if (address.also) {
    const other = girthOf(derived, address.also.key, address.also.value, side)
    if (!other.ok) return other
    const apart = Math.abs(other.girth - girth.girth)
    // near the crown a tenth of waterline is a hand's width of girth
    const rise = Math.abs(waterlineAt(derived, other.girth) - waterlineAt(derived, girth.girth))
    if (apart > AGREE && rise > AGREE_IN_HEIGHT) {
      return refuse(
        `${address.height.key} ${lengthText(address.height.value)} and ${address.also.key} ${lengthText(address.also.value)} are ${lengthText(apart)} mm apart on this coach. Write one of them.`,
      )
    }
  }
  return { ok: true, spot: { station, girth: girth.girth } }
}

const waterlineAt = (derived: Derived, girth: number): number => at(derived.shell.section.withFlange, Math.abs(girth)).z

function stationOf(derived: Derived, { station }: Address): number {
  const { frames } = derived.definition
  return station.from === 'last frame' ? frames[frames.length - 1].station + station.value : station.value
}

/** `centre` stands for the roof, whose girths and distances are signed. */
function sideOf(derived: Derived, address: Address): Side | FoundSpot {
  const { side } = address
  if (side === 'right' || side === 'left') return side
  if (side === 'C' || side === 'R') return sideOfLetter(side, derived.definition.coach.market)
  if (side === 'roof' || address.height.value === 0) return 'centre'
  if (address.height.key === 'BL') return 'centre'
  return refuse(
    `The address says no side. Start it with C or R, with right or left, or with roof, where the right of the centre counts positive.`,
  )
}

type Girth = { readonly ok: true; readonly girth: number } | { readonly ok: false; readonly says: string }

function girthOf(derived: Derived, key: HeightKey, value: number, side: Side): Girth {
  if (key === 'WL') return fromWaterline(derived, value, side)
  if (side !== 'centre' && value < 0)
    return refuse(`${key} ${lengthText(value)} is below nothing: on a side it counts from the centre, so it has no minus.`)
  const size = Math.abs(value)
  const sign = side === 'left' || value < 0 ? -1 : 1
  if (key === 'BL') return fromButtock(derived, size, sign)
  const { section } = derived.shell
  const girth = key === 'G' ? size : girthFromOffset(section.withFlange, size, liningDepth(derived.definition))
  const edge = key === 'G' ? section.sheetEdge : lengthOnLining(derived)
  if (size > edge + 1e-9) {
    return refuse(`${key} ${lengthText(size)} is past the edge of the ${key === 'G' ? 'sheet' : 'lining'} at ${key} ${lengthText(edge)}.`)
  }
  return { ok: true, girth: sign * girth + 0 }
}

function lengthOnLining(derived: Derived): number {
  const points = derived.section.points
  return points[points.length - 1].liningGirth
}

function fromWaterline(derived: Derived, z: number, side: Side): Girth {
  const { chain } = derived.shell.section
  const top = at(chain, 0).z
  const low = at(chain, chain.length).z
  if (z > top + 1e-9) return refuse(`WL ${lengthText(z)} is above the crown at WL ${lengthText(top)}.`)
  if (side === 'centre' && Math.abs(z - top) > 1e-9)
    return refuse(`WL ${lengthText(z)} is on both sides. Start the address with C or R, or with right or left.`)
  const girth = girthAtZ(chain, z)
  if (girth === null) return refuse(`WL ${lengthText(z)} is under the toe at WL ${lengthText(low)}.`)
  return { ok: true, girth: side === 'left' ? -girth + 0 : girth }
}

/** The first place from the crown that far from the centre plane. */
function fromButtock(derived: Derived, y: number, sign: number): Girth {
  const { chain } = derived.shell.section
  const most = widest(chain)
  if (y > most.y + 1e-9)
    return refuse(`BL ${lengthText(y)} is outside the coach, which is ${lengthText(most.y)} from its centre plane at the widest.`)
  // y grows with girth all the way from the crown to the widest place
  let [from, to] = [0, most.girth]
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2
    if (at(chain, middle).y < y) from = middle
    else to = middle
  }
  return { ok: true, girth: sign * ((from + to) / 2) + 0 }
}

function refuse(says: string): { readonly ok: false; readonly says: string } {
  return { ok: false, says }
}
