/** What every rule of the ends looks at: nose and tail with their cuts in the end's own axes, and the lengths asked for again and again. */
import type { Definition } from '../../definition/types.js'
import type { End } from '../../derive/end-names.js'
import { type EndCut, endCuts } from '../../derive/ends/cuts.js'
import type { LocalEnd } from '../../derive/ends/local.js'
import { meridianGirth } from '../../derive/ends/meridian.js'
import { endPlace } from '../../derive/ends/parts.js'
import type { Derived } from '../../derive/index.js'
import type { FastenerRow, OpeningDerived, Place } from '../../derive/nouns.js'
import { sigmaAtZ } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'

/** One end on the coach. Cuts are those that lie wholly on it. */
export interface Standing {
  readonly end: End
  /** station of its joint frame, m */
  readonly joint: number
  readonly frame: string
}

export interface EndsGround {
  readonly derived: Derived
  readonly definition: Definition
  readonly local: LocalEnd
  readonly ends: readonly Standing[]
  /** cut to the rim's rivets, and cut to the outer edge of its ring, m */
  readonly line: number
  readonly reach: number
  /** least edge distance of a rim rivet, m */
  readonly edge: number
}

/** An opening of an end with its cut, its rim's row and what was derived from it. */
export interface EndOpening {
  readonly at: Standing
  readonly cut: EndCut
  readonly opening: OpeningDerived
  readonly rim: FastenerRow
}

export function endsGroundOf(derived: Derived): EndsGround {
  const { definition } = derived
  const { local } = derived.endSections
  const type = definition.fasteners.find((f) => f.id === definition.rows.rim.fastener)
  if (!type) throw new Error(`no fastener "${definition.rows.rim.fastener}" in the definition`)
  return {
    derived,
    definition,
    local,
    ends: definition.frames.flatMap((f) => (f.joint ? [{ end: f.joint, joint: f.station, frame: f.id }] : [])),
    line: definition.shell.rim.line,
    reach: local.ground.handed.rimReach,
    edge: definition.rules.edgeDistance * type.diameter.value,
  }
}

/** The cuts written on an end, whether they lie on it or not. */
export function cutsOn({ local, definition }: EndsGround, at: Standing): EndCut[] {
  return endCuts({ ...local.ground, input: definition }, at.end, at.joint)
}

export function openingsOn(ground: EndsGround, at: Standing): EndOpening[] {
  const { openings, rows, astray } = ground.derived.endSections
  return cutsOn(ground, at)
    .filter((cut) => !astray.includes(cut.id))
    .map((cut) => {
      const opening = openings.find((o) => o.id === cut.id)
      const rim = rows.find((r) => r.id === opening?.rim.row)
      if (!opening || !rim) throw new Error(`opening ${cut.id} on the ${at.end} was not derived`)
      return { at, cut, opening, rim }
    })
}

/** Into the end's own axes: x outward from the joint. */
export function inward(at: Standing, station: number, y: number, z: number): Vec3 {
  return [at.end === 'nose' ? at.joint - station : station - at.joint, y, z]
}

/** Fastener i of a row of an end, in the end's axes. */
export function fastenerAt(at: Standing, row: FastenerRow, i: number): Vec3 {
  if (!row.end) throw new Error(`row ${row.id} is not on an end`)
  return inward(at, row.station[i], row.end.y[i], row.waterline[i])
}

/** The place of a point of the outer face. */
export function placeAt({ local }: EndsGround, at: Standing, point: Vec3): Place {
  const { loft } = local.ground
  const sigma = sigmaAtZ(loft.section, point[2])
  const phi = Math.atan2(point[1], point[0])
  return endPlace(at, point, sigma === null ? 0 : meridianGirth(loft, phi, sigma))
}

export const placeOfCut = (ground: EndsGround, at: Standing, cut: EndCut): Place => placeAt(ground, at, cut.centre)

/** A seam is named with its end, since the other has one of the same number. */
export const seamWord = (at: Standing, k: number): string => `gore seam ${k} of the ${at.end}`
