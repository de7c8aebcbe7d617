/**
 * What the rest of the coach hands to weight and balance: its parts, openings and rivets as things with a mass and a place,
 * under the words a stated item may call them by.
 */
import type { Definition, FastenerType } from '../definition/types.js'
import type { MassGroup } from '../definition/weight-types.js'
import type { Worked } from '../quantity/formula.js'
import { countedLoad, findTyre } from '../tables/tyres.js'
import { alikeMass, massTotal, rivetMass, statedMass } from './common/mass.formulas.js'
import type { Memo } from './memo.js'
import type { FastenerRow, OpeningDerived, Outline, Part } from './nouns.js'
import type { MassReach, NotComputed } from './road-nouns.js'
import type { BoughtItem, FloorDerived } from './under-nouns.js'
import type { Twin, WeightInput } from './weight-nouns.js'

/** What has a mass and a place already. */
export interface Weighable {
  readonly parts: readonly Part[]
  /** bought and fitted to the chassis as it comes */
  readonly bought: readonly BoughtItem[]
  readonly floor: FloorDerived | null
  readonly openings: readonly OpeningDerived[]
  readonly rows: readonly FastenerRow[]
  /** buttock line of the mould line at a signed girth of the barrel */
  readonly yAt: (girth: number) => number
}

export interface Standing {
  readonly tail: number
  readonly wheelRate: number | null
}

/** Groups of parts by their kind or by the trade that makes them, where no stated item says better. */
const GROUP_OF: Readonly<Record<string, MassGroup>> = { shell: 'SH', ends: 'SH', floor: 'FL', chassis: 'CH', 'wheel-box': 'RG' }

export function weightInput(definition: Definition, twins: readonly Twin[], { tail, wheelRate }: Standing): WeightInput | NotComputed {
  const { weight, gear, masses, frames, suspension, towing } = definition
  if (!weight) return { notComputed: 'No weight is written, so ball, ratings and load cases are unknown.' }
  if (!gear) return { notComputed: 'No gear is written, so there are no axles to stand on.' }
  if (masses.length === 0) return { notComputed: 'No masses are written, so what is not derived weighs nothing yet.' }
  const tyre = suspension ? findTyre(suspension.tyre) : null
  return {
    ...{ weight, masses, spindles: gear.spindles, frames, lastFrame: frames[frames.length - 1].station, tail, twins },
    reach: new Map(towing?.extents.map((each) => [each.item, each])),
    wheelRate,
    tyre: tyre?.ok ? countedLoad(tyre.row) : null,
  }
}

/** Asked at every derivation, so that what is unchanged stays the same object. None where the list alone is weighed. */
export function twinsOf({ weight, openings, fasteners }: Definition, made: Weighable, memo: Memo): readonly Twin[] {
  if (!weight || weight.listOnly) return []
  const { yAt } = made
  const written = new Map(openings.map((each) => [each.id, each]))
  const sizes: RivetSizes = new Map()
  return [
    ...memo.each('weight of parts', [], made.parts, partTwin),
    ...made.openings.flatMap((cut) => {
      const mass = written.get(cut.id)?.mass ?? 0
      return mass > 0 ? [memo.keep(`weight of opening ${cut.id}`, [cut, mass], () => openingTwin(cut, mass, yAt))] : []
    }),
    ...memo.each('weight of bought things', [], made.bought, boughtTwin),
    ...memo.keep('weight of the covering', [made.floor], () => (made.floor ? coveringTwin(made.floor) : [])),
    ...memo.each('weight of rows', [fasteners], made.rows, (row) => rowTwin(row, fasteners, yAt, sizes)).flat(),
  ]
}

function partTwin(part: Part): Twin {
  const { id, says, kind, trade, centre, mass } = part
  const end = /^(nose|tail)-/.exec(id)?.[1]
  const [x, y, z] = centre
  const { along, across } = reachOf(part)
  return {
    id,
    says,
    mass,
    by: 'derived',
    group: GROUP_OF[kind] ?? GROUP_OF[trade] ?? 'SH',
    words: end ? [kind, `${end} ${kind}`] : [kind],
    points: [{ mass: mass.value, x, y, z, along, across }],
  }
}

/** How far a part reaches as its flat lies: along the coach for what is drawn fore and aft, across for what is drawn athwart. */
function reachOf({ patterns }: Part): { readonly along: number; readonly across: number } {
  const flat = patterns[0]
  if (!flat) return { along: 0, across: 0 }
  const [x, y] = [extent(flat.outline, 0), extent(flat.outline, 1)]
  const across = (way: string): boolean => way === 'right' || way === 'left'
  const along = (way: string): boolean => way === 'aft' || way === 'forward'
  return {
    along: along(flat.flat.x) ? x : along(flat.flat.y) ? y : 0,
    across: across(flat.flat.x) ? x : across(flat.flat.y) ? y : 0,
  }
}

function extent(outline: Outline, axis: 0 | 1): number {
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const corner of outline) {
    from = Math.min(from, corner[axis])
    to = Math.max(to, corner[axis])
  }
  return to - from
}

function boughtTwin({ id, says, mass, centre }: BoughtItem): Twin {
  const [x, y, z] = centre
  return {
    ...{ id: `bought-${id}`, says, group: 'CH', by: 'bought', mass: statedMass({ m: mass }) },
    // several of a kind are numbered, and go by their kind too
    words: [`bought ${id}`, `bought ${id.replace(/-\d+$/, '')}`],
    points: [{ mass, x, y, z, along: 0, across: 0 }],
  }
}

function coveringTwin({ covering, length, width }: FloorDerived): readonly Twin[] {
  if (!covering) return []
  const { says, mass, centre } = covering
  const [x, y, z] = centre
  return [
    {
      ...{ id: 'floor-covering', says, group: 'FL', by: 'derived', words: ['floor-covering'], mass },
      points: [{ mass: mass.value, x, y, z, along: length, across: width }],
    },
  ]
}

function openingTwin({ id, says, surface, place }: OpeningDerived, mass: number, yAt: Weighable['yAt']): Twin {
  const sign = place.side === 'left' ? -1 : 1
  const y = place.end ? place.end.y : surface === 'roof' && place.side === 'centre' ? 0 : sign * yAt(place.girth)
  return {
    ...{ id: `opening-${id}`, says: `${id} ${says}`, group: 'OP', by: 'bought', words: [`opening ${id}`], mass: statedMass({ m: mass }) },
    points: [{ mass, x: place.station, y, z: place.waterline, along: 0, across: 0 }],
  }
}

/** What one rivet of each size weighs, by size: there are a few sizes and some thousand rivets. */
type RivetSizes = Map<string, Worked<'kg'>>

/** A row of rivets as one point at its middle, as long as it reaches. */
function rowTwin(row: FastenerRow, fasteners: readonly FastenerType[], yAt: Weighable['yAt'], sizes: RivetSizes): readonly Twin[] {
  const type = fasteners.find((each) => each.id === row.fastener)
  const n = row.station.length
  if (!type || n === 0) return []
  const terms: Record<string, Worked<'kg'>> = {}
  row.stacks.forEach((stack, i) => {
    const size = `${row.diameter} ${stack.length}`
    const each = sizes.get(size) ?? rivetMass({ rho: RIVET_DENSITY, D: row.diameter, L: stack.length })
    sizes.set(size, each)
    terms[`${stack.count} of ${stack.name} ${i + 1}`] = alikeMass({ n: stack.count, m: each })
  })
  const mass = massTotal(terms)
  const { x, y, z, along } = middleOf(row, yAt)
  const point: MassReach = { mass: mass.value, x, y, z, along, across: 0 }
  return [{ id: `rivets-${row.id}`, says: `rivets of ${row.says}`, group: 'SH', by: 'derived', words: ['rivets'], mass, points: [point] }]
}

function middleOf({ station, girth, waterline, end }: FastenerRow, yAt: Weighable['yAt']) {
  let x = 0
  let y = 0
  let z = 0
  let from = Number.POSITIVE_INFINITY
  let to = Number.NEGATIVE_INFINITY
  // a row along the coach has one girth, and one buttock line with it
  let last = Number.NaN
  let half = 0
  for (let i = 0; i < station.length; i++) {
    const out = Math.abs(girth[i])
    if (!end && out !== last) {
      last = out
      half = yAt(out)
    }
    x += station[i]
    y += end ? end.y[i] : Math.sign(girth[i]) * half
    z += waterline[i]
    from = Math.min(from, station[i])
    to = Math.max(to, station[i])
  }
  const n = station.length
  return { x: x / n, y: y / n, z: z / n, along: to - from }
}

/** 2117 and the soft alloys of blind rivets, kg/m3. From memory. */
const RIVET_DENSITY = 2750
