/**
 * Trailer tyres: what one carries at which pressure, its size, and what the rules make of it. kg, Pa, m.
 *
 * Loads and pressures from memory of the tyre makers' common load tables for special-trailer sizes: the sidewall governs.
 */
import type { Found } from './datum.js'

const POUND = 0.45359237
const PSI = 6894.757293168361

export interface Tyre {
  readonly name: string
  /** special trailer, or passenger, which the rules derate on a trailer */
  readonly service: 'ST' | 'P'
  readonly loadRange: string
  /** carried by one tyre of an axle with two, kg */
  readonly load: number
  /** cold, at that load, Pa */
  readonly pressure: number
  /** section width and rim diameter, m; height over width */
  readonly width: number
  readonly aspect: number
  readonly rim: number
  /** rims it is fitted on, as it is printed: diameter x width in inches */
  readonly rimName: string
  readonly source: string
}

const SOURCE = "common load table of special-trailer tyres (from memory; the tyre's sidewall governs)"

function st(widthMm: number, aspect: number, rimIn: number, rimName: string, loadRange: string, loadLb: number, psi: number): Tyre {
  return Object.freeze({
    name: `ST${widthMm}/${aspect}R${rimIn} LR ${loadRange}`,
    service: 'ST',
    loadRange,
    load: loadLb * POUND,
    pressure: psi * PSI,
    width: widthMm / 1000,
    aspect: aspect / 100,
    rim: rimIn * 0.0254,
    rimName,
    source: SOURCE,
  })
}

const TYRES: readonly Tyre[] = Object.freeze([
  st(175, 80, 13, '13x5.0', 'C', 1360, 50),
  st(185, 80, 13, '13x5.0', 'C', 1480, 50),
  st(185, 80, 13, '13x5.0', 'D', 1710, 65),
  st(205, 75, 14, '14x5.5', 'C', 1760, 50),
  st(205, 75, 14, '14x5.5', 'D', 2040, 65),
  st(215, 75, 14, '14x6.0', 'C', 1870, 50),
  st(205, 75, 15, '15x5.5', 'C', 1820, 50),
  st(205, 75, 15, '15x5.5', 'D', 2150, 65),
  st(225, 75, 15, '15x6.0', 'C', 2150, 50),
  st(225, 75, 15, '15x6.0', 'D', 2540, 65),
  st(225, 75, 15, '15x6.0', 'E', 2830, 80),
  st(235, 80, 16, '16x6.5', 'E', 3520, 80),
])

const SIZE = /^(ST|P)(\d+)\/(\d+)[RDB-]?(\d+)(?:LR|LOADRANGE)?([A-H])$/

/** Size and load range without the ways they may be written. */
const plain = (text: string): string => SIZE.exec(text.toUpperCase().replace(/\s+/g, ''))?.slice(1).join(' ') ?? ''

/** A tyre by its name: size and load range. */
export function findTyre(name: string): Found<Tyre> {
  const wanted = plain(name)
  const row = TYRES.find((each) => plain(each.name) === wanted)
  const known = TYRES.map((each) => each.name)
  return row ? { ok: true, row } : { ok: false, says: `The tyre "${name}" is not in the table; known are ${known.join(', ')}.`, known }
}

/** Outside diameter without load, m: rim and two side walls. */
export const tyreDiameter = ({ rim, width, aspect }: Tyre): number => rim + 2 * width * aspect

/** FMVSS 120 S5.1.2: a passenger tyre on a trailer counts for its rating over 1.10 (an agency letter of 17 November 1976 quotes it). */
const PASSENGER_DERATING = 1.1

/** What one tyre counts for on a trailer, kg. */
export const countedLoad = ({ service, load }: Pick<Tyre, 'service' | 'load'>): number =>
  service === 'P' ? load / PASSENGER_DERATING : load

/** The most an axle with that many tyres may be rated at, kg. */
export const axleOf = (tyre: Pick<Tyre, 'service' | 'load'>, tyres: number): number => countedLoad(tyre) * tyres
