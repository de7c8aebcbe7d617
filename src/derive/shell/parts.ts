/** From plates and rows to parts: patterns, net areas, masses and centres. */

import type { Bought, Side } from '../../definition/types.js'
import { type Development, developed, undeveloped } from '../../maths/development.js'
import { GAUSS, WEIGHT } from '../../maths/quadrature.js'
import { at, heightAt, momentsAlong, outAt, type TangentChain } from '../../maths/tangent-chain.js'
import type { Worked } from '../../quantity/formula.js'
import { densityOf } from '../common/density.js'
import { memberMass, sheetMass } from '../common/mass.formulas.js'
import type { Part, PartKind, Pattern, Place } from '../nouns.js'
import { chordAtLength, type OpeningShape } from './opening-shape.js'
import { netArea, patternOf, piecesOf, type Through } from './patterns.js'
import type { Plate } from './plates.js'

export interface PartHead {
  readonly kind: PartKind
  readonly thickness: Bought
  readonly stock: string | null
  readonly notes: readonly string[]
  /** members are weighed by the metre: mass per length and cut length; null for sheet */
  readonly member: { readonly linearMass: number | Worked<'kg/m'>; readonly length: number } | null
}

/** One part from its plates; the first plate gives its name, side and net area. */
export function partOf(
  chain: TangentChain,
  skin: Development,
  plates: readonly Plate[],
  through: ReadonlyMap<Plate, readonly Through[]>,
  head: PartHead,
): Part {
  const first = plates[0]
  const patterns = plates.map((plate): Pattern => patternOf(plate, skin, through.get(plate) ?? []))
  const area = netArea(patterns[0])
  const pieces = piecesOf(patterns[0])
  return Object.freeze({
    id: first.part,
    says: first.says,
    trade: 'shell' as const,
    kind: head.kind,
    material: first.material,
    thickness: head.thickness,
    side: sideOf(first),
    place: placeAt(chain, (first.x0 + first.x1) / 2, (first.g0 + first.g1) / 2),
    patterns,
    area,
    mass: massOf(first, area, head),
    centre: centreOf(chain, skin, first),
    stock: head.stock,
    pieces,
    notes: head.notes,
  })
}

function massOf(plate: Plate, area: number, head: PartHead): Worked<'kg'> {
  if (head.member) return memberMass({ w: head.member.linearMass, L: head.member.length })
  return sheetMass({ rho: densityOf(plate.material, plate.thickness), t: plate.thickness, A: area })
}

function sideOf(plate: Plate): Side {
  if (plate.g0 >= 0) return 'right'
  return plate.g1 <= 0 ? 'left' : 'centre'
}

export function placeAt(chain: TangentChain, station: number, girth: number): Place {
  const p = at(chain, Math.abs(girth))
  return { side: Math.abs(girth) < 1e-9 ? 'centre' : girth > 0 ? 'right' : 'left', station, girth: Math.abs(girth), waterline: p.z }
}

/** Centre of area of a plate in space, less its cuts; of a ring, the band between its outlines. */
function centreOf(chain: TangentChain, skin: Development, plate: Plate): [number, number, number] {
  const sum: Sum = { a: 0, x: 0, y: 0, z: 0 }
  if (plate.ring) {
    addShape(sum, chain, skin, plate, plate.ring.outer, 1)
    addShape(sum, chain, skin, plate, plate.ring.inner, -1)
  } else {
    addWhole(sum, chain, plate)
    for (const cut of plate.cuts) addShape(sum, chain, skin, plate, cut, -1)
  }
  if (Math.abs(sum.a) > NO_AREA) return [sum.x / sum.a, sum.y / sum.a, sum.z / sum.a]
  // a sheet that openings take whole weighs nothing, and is where it would have been
  const p = at(chain, Math.abs(plate.g0 + plate.g1) / 2)
  return [(plate.x0 + plate.x1) / 2, Math.sign(plate.g0 + plate.g1) * p.y, p.z]
}

/** Less than this is nothing, m2. */
const NO_AREA = 1e-12

interface Sum {
  a: number
  x: number
  y: number
  z: number
}

/** Girths at which the chain's pieces or the plate's depth change, from one to another. */
const stopsBetween = ({ development: { girth } }: Plate, from: number, to: number): number[] => [
  from,
  ...girth.filter((g) => g > from && g < to),
  to,
]

/** Adds a plate that is as wide all the way, exactly. */
function addWhole(sum: Sum, chain: TangentChain, plate: Plate): void {
  const stops = stopsBetween(plate, plate.g0, plate.g1)
  const wide = plate.x1 - plate.x0
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i], stops[i + 1]]
    const run = developed(plate.development, to) - developed(plate.development, from)
    // the mid surface is longer or shorter than the curve by the same share all the way
    const area = run * wide
    const share = area / (to - from)
    const hand = from + to < 0 ? -1 : 1
    const [y, z] = momentsAlong(chain, Math.min(Math.abs(from), Math.abs(to)), Math.max(Math.abs(from), Math.abs(to)))
    sum.a += area
    sum.x += (area * (plate.x0 + plate.x1)) / 2
    sum.y += hand * share * y
    sum.z += share * z
  }
}

/** Adds (or with -1 takes away) the area of a shape within a plate, band of girth by band. */
function addShape(sum: Sum, chain: TangentChain, skin: Development, plate: Plate, shape: OpeningShape, sign: 1 | -1): void {
  const bands = cornerBands(shape, skin, plate)
  for (let i = 0; i + 1 < bands.length; i++)
    if (bands[i + 1] > bands[i]) addBand(sum, chain, skin, plate, bands[i], bands[i + 1], shape, sign)
}

function addBand(
  sum: Sum,
  chain: TangentChain,
  skin: Development,
  plate: Plate,
  from: number,
  to: number,
  shape: OpeningShape,
  sign: 1 | -1,
): void {
  const d = plate.development
  const stops = stopsBetween(plate, from, to)
  for (let i = 0; i + 1 < stops.length; i++) {
    const run = developed(d, stops[i + 1]) - developed(d, stops[i])
    for (let k = 0; k < GAUSS.length; k++) {
      const g = stops[i] + GAUSS[k] * (stops[i + 1] - stops[i])
      const along = chordAtLength(shape, developed(skin, g))
      if (!along) continue
      const x0 = Math.max(along[0], plate.x0)
      const x1 = Math.min(along[1], plate.x1)
      if (!(x1 > x0)) continue
      const out = Math.abs(g)
      const area = sign * run * WEIGHT[k] * (x1 - x0)
      sum.a += area
      sum.x += (area * (x0 + x1)) / 2
      sum.y += area * Math.sign(g) * outAt(chain, out)
      sum.z += area * heightAt(chain, out)
    }
  }
}

/** Girths within a plate between which a shape is added: its ends and where its corners start. */
function cornerBands(shape: OpeningShape, skin: Development, plate: Plate): readonly number[] {
  const r = Math.min(shape.corner, (shape.v1 - shape.v0) / 2)
  const within = (v: number): number => Math.min(plate.g1, Math.max(plate.g0, undeveloped(skin, v)))
  return [within(shape.v0), within(shape.v0 + r), within(shape.v1 - r), within(shape.v1)]
}
