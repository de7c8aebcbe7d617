/**
 * What is at a place on the coach: on the outside, through the skin, and inside. For whoever stands before it with a drill.
 *
 * Distances run along the skin from the place, 0 where the thing is there; on nose and tail they are straight lines. Does not
 * cover: furniture, wires, tanks and pipes; nothing of those is derived.
 */

import { liningDepth } from '../../derive/common/lining-depth.js'
import type { Derived } from '../../derive/index.js'
import type { Place } from '../../derive/nouns.js'
import { developed } from '../../maths/development.js'
import { girthAtOffset, at as pointAt } from '../../maths/tangent-chain.js'
import { readAddress } from './address.js'
import { type EndAddress, readEndAddress } from './end-address.js'
import { insideAt } from './inside.js'
import { onEnd } from './on-end.js'
import { outsideAt } from './outside.js'
import { beyondBarrel, spotOf } from './place-of-address.js'
import { spotOnEnd } from './place-on-end.js'
import { addressOf } from './say-address.js'
import { throughAt } from './through.js'

export interface Thing {
  readonly kind: string
  readonly id: string
  readonly sentence: string
  /** along the skin, m; 0 where it is there */
  readonly distance: number
}

export interface PlaceOnCoach extends Place {
  /** the place as a shop says it */
  readonly address: string
  /** half width and waterline of the outer skin there, m */
  readonly y: number
  readonly z: number
  /** 0 level outboard, pi/2 straight down, rad */
  readonly heading: number
  /** girth on the lining's outer face, m; null on nose and tail */
  readonly liningGirth: number | null
  /** `F5-F6`; null beyond the first or last frame */
  readonly bay: string | null
  /** nearest frame ahead and behind; distance to its web, m */
  readonly frames: readonly { readonly id: string; readonly distance: number; readonly lies: 'here' | 'forward' | 'aft' }[]
}

export interface AtPlace {
  readonly place: PlaceOnCoach
  readonly outside: readonly Thing[]
  readonly through: readonly Thing[]
  readonly inside: readonly Thing[]
}

export type FoundAt = { readonly ok: true; readonly found: AtPlace } | { readonly ok: false; readonly says: string }

/** What stands where every list starts from. */
export interface Here {
  readonly derived: Derived
  readonly station: number
  /** signed, right positive, m */
  readonly girth: number
  /** along the skin's mid surface, m */
  readonly v: number
}

export function at(derived: Derived, text: string): FoundAt {
  const end = readEndAddress(text)
  if (end) return end.ok ? atEnd(derived, end.address) : end
  const read = readAddress(text)
  if (!read.ok) return read
  const beyond = beyondBarrel(derived, read.address)
  if (beyond) return atEnd(derived, beyond)
  const found = spotOf(derived, read.address)
  if (!found.ok) return found
  const { station, girth } = found.spot
  const here: Here = { derived, station, girth, v: developed(derived.shell.laid.skin, girth) }
  return { ok: true, found: { place: placeOf(here), outside: outsideAt(here), through: throughAt(here), inside: insideAt(here) } }
}

function atEnd(derived: Derived, address: EndAddress): FoundAt {
  const found = spotOnEnd(derived, address)
  return found.ok ? { ok: true, found: onEnd(derived, found.spot) } : found
}

function placeOf(here: Here): PlaceOnCoach {
  const { derived, station, girth } = here
  const { withFlange } = derived.shell.section
  const size = Math.abs(girth)
  const p = pointAt(withFlange, size)
  const side = size < 1e-9 ? 'centre' : girth > 0 ? 'right' : 'left'
  const base: Place = { side, station, girth: size, waterline: p.z }
  return {
    ...base,
    address: addressOf(derived.definition.coach.market, base, p.heading),
    y: p.y,
    z: p.z,
    heading: p.heading,
    liningGirth: girthAtOffset(withFlange, size, liningDepth(derived.definition)),
    ...framesAt(derived, station),
  }
}

function framesAt(derived: Derived, station: number): Pick<PlaceOnCoach, 'bay' | 'frames'> {
  const { frames } = derived.definition
  const fore = [...frames].reverse().find((f) => f.station <= station + 1e-9)
  const aft = frames.find((f) => f.station > station + 1e-9)
  const near = [fore, aft].filter((f) => f !== undefined)
  return {
    bay: fore && aft ? `${fore.id}-${aft.id}` : null,
    frames: near.map((f) => ({
      id: f.id,
      distance: Math.abs(f.station - station),
      lies: Math.abs(f.station - station) < 1e-9 ? 'here' : f.station < station ? 'forward' : 'aft',
    })),
  }
}
