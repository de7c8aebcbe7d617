/**
 * Rivets: shear strength by alloy, the hole a strength is reckoned on, the thin-sheet factor, blind rivets, and dash names.
 * A dash name counts the diameter in 1/32 in and the length in 1/16 in with half sizes: -4-5.5 is 1/8 in by 11/32 in.
 */

import type { Datum, Found } from './datum.js'
import { datum } from './datum.js'

export interface RivetAlloy {
  readonly name: string
  /** the letter on the order: AD, D, B */
  readonly code: string
  readonly aliases: readonly string[]
  /** ultimate shear strength as driven, Pa */
  readonly Fsu: Datum
}

const SHEAR = 'MIL-HDBK-5J, table 8.1.2(b)'
const shear = (ksi: string): Datum => datum(`${ksi} ksi`, 'pressure', SHEAR, 'M')

const RIVET_ALLOYS: readonly RivetAlloy[] = Object.freeze([
  { name: '2117-T4', code: 'AD', aliases: ['2117-T3', '2117', 'AD'], Fsu: datum('30 ksi', 'pressure', SHEAR, 'R2') },
  { name: '2017-T4', code: 'D', aliases: ['2017-T3', '2017', 'D'], Fsu: shear('38') },
  { name: '5056-H32', code: 'B', aliases: ['5056', '5056-H321', 'B'], Fsu: shear('28') },
  { name: 'Monel', code: 'M', aliases: [], Fsu: shear('49') },
])

/** The alloy of solid rivets by that name or order letter. */
export function findRivetAlloy(name: string): Found<RivetAlloy> {
  const plain = name.toLowerCase().trim()
  const row = RIVET_ALLOYS.find((each) => [each.name, ...each.aliases].some((known) => known.toLowerCase() === plain))
  const known = RIVET_ALLOYS.map((each) => each.name)
  return row
    ? { ok: true, row }
    : { ok: false, says: `The rivet alloy "${name}" is not in the table; known are ${known.join(', ')}.`, known }
}

export interface RivetSize {
  /** diameter in 1/32 in: the first figure of a dash name */
  readonly dash: number
  /** as it is bought */
  readonly name: string
  /** m */
  readonly diameter: number
  /** hole the strength is reckoned on, m */
  readonly strengthHole: Datum
}

const HOLES = 'MIL-HDBK-5J, table 8.1.2(a)'
const size = (dash: number, name: string, hole: string): RivetSize => ({
  dash,
  name,
  diameter: datum(`${name}`, 'length', HOLES, 'D').value,
  strengthHole: datum(`${hole} in`, 'length', HOLES, dash === 2 ? 'M' : 'R2'),
})

export const RIVET_SIZES: readonly RivetSize[] = Object.freeze([
  size(2, '1/16 in', '0.067'),
  size(3, '3/32 in', '0.096'),
  size(4, '1/8 in', '0.1285'),
  size(5, '5/32 in', '0.159'),
  size(6, '3/16 in', '0.191'),
  size(8, '1/4 in', '0.257'),
  size(10, '5/16 in', '0.323'),
  size(12, '3/8 in', '0.386'),
])

/** The inch rivet of that diameter (m), to within 0.03 mm, less than any two sizes differ and more than a wire tolerance. */
export function findRivetSize(diameter: number): Found<RivetSize> {
  const row = RIVET_SIZES.find((each) => Math.abs(each.diameter - diameter) <= 3e-5)
  const known = RIVET_SIZES.map((each) => each.name)
  const mm = (diameter * 1000).toFixed(2)
  return row
    ? { ok: true, row }
    : { ok: false, says: `A rivet of ${mm} mm is not an inch size with strength figures; known are ${known.join(', ')}.`, known }
}

/**
 * Single-shear factor of protruding-head aluminium rivets in thin sheet against t/D (nominal), MIL-HDBK-5J table 8.1.2.1(b).
 * Factor values R2; thickness labels by alignment on t/D (status M), to be confirmed from the printed page.
 */
export const THIN_SHEET: readonly (readonly [ratio: number, factor: number])[] = Object.freeze([
  [0.189, 0.909],
  [0.192, 0.912],
  [0.2, 0.92],
  [0.2016, 0.922],
  [0.2048, 0.925],
  [0.2133, 0.933],
  [0.2272, 0.944],
  [0.2304, 0.946],
  [0.24, 0.953],
  [0.252, 0.961],
  [0.256, 0.964],
  [0.2667, 0.97],
  [0.284, 0.979],
  [0.288, 0.981],
  [0.32, 0.995],
  [1 / 3, 1],
] as const)

export interface BlindRivet {
  readonly diameter: number
  readonly name: string
  /** least shear and tension of one rivet, N */
  readonly shear: Datum
  readonly tension: Datum
}

// Open-end rivets with 5052 bodies; sealed ones of the same body metal differ by the maker, whose figure governs.
const IFI = 'IFI-114 (5052 body, aluminium mandrel), to be confirmed'
const blind = (name: string, pull: string, tear: string): BlindRivet => ({
  name,
  diameter: datum(name, 'length', IFI, 'D').value,
  shear: datum(`${pull} lbf`, 'force', IFI, 'M'),
  tension: datum(`${tear} lbf`, 'force', IFI, 'M'),
})

const BLIND_RIVETS: readonly BlindRivet[] = Object.freeze([
  blind('1/8 in', '120', '150'),
  blind('5/32 in', '190', '230'),
  blind('3/16 in', '260', '320'),
])

/** The aluminium blind rivet of that diameter (m). */
export function findBlindRivet(diameter: number): Found<BlindRivet> {
  const row = BLIND_RIVETS.find((each) => Math.abs(each.diameter - diameter) <= 3e-5)
  const known = BLIND_RIVETS.map((each) => each.name)
  return row
    ? { ok: true, row }
    : {
        ok: false,
        says: `A blind rivet of ${(diameter * 1000).toFixed(2)} mm has no strength figures; known are ${known.join(', ')}.`,
        known,
      }
}

/** Ratios of the rivets-per-inch rule, AC 43.13-1B tables 4-9 to 4-11: bearing and rivet shear over sheet tension. */
export const PER_INCH = Object.freeze({
  'table 4-9': { says: '2014-T6, 2024-T3, 7075-T6, bare or clad', bearing: 1.6, shear: 0.4 },
  'table 4-10': { says: '2017, clad 2024-T3', bearing: 1.6, shear: 0.5 },
  'table 4-11': { says: '5052', bearing: 1.65, shear: 0.7 },
} as const)

/** Shares of the tabulated count that suffice, AC 43.13-1B notes to tables 4-9 to 4-11. */
export const PER_INCH_SHARE = Object.freeze({ 'lap joint': 0.75, stringer: 0.8, 'intermediate frame': 0.6 } as const)
