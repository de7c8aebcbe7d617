/**
 * How a body feels shaking: the weightings of ISO 2631-1 for a person who sits, up and down (Wk) and sideways (Wd).
 * Filters and their figures: ISO 8041, as an instrument's manual quotes them. Frequencies in Hz.
 */

interface Filter {
  /** band limits, two-pole Butterworth */
  readonly f1: number
  readonly f2: number
  /** from acceleration to speed */
  readonly f3: number
  readonly f4: number
  readonly Q4: number
  /** upward step; null where the weighting has none */
  readonly up: { readonly f5: number; readonly Q5: number; readonly f6: number; readonly Q6: number } | null
}

const FILTERS: Readonly<Record<'Wk' | 'Wd', Filter>> = {
  Wk: { f1: 0.4, f2: 100, f3: 12.5, f4: 12.5, Q4: 0.63, up: { f5: 2.37, Q5: 0.91, f6: 3.35, Q6: 0.91 } },
  Wd: { f1: 0.4, f2: 100, f3: 2, f4: 2, Q4: 0.63, up: null },
}

/** Factor on an acceleration at a frequency, above zero. */
export function weighting(which: 'Wk' | 'Wd', hz: number): number {
  const { f1, f2, f3, f4, Q4, up } = FILTERS[which]
  const high = 1 / Math.sqrt(1 + (f1 / hz) ** 4)
  const low = 1 / Math.sqrt(1 + (hz / f2) ** 4)
  const speed = Math.hypot(1, hz / f3) / pair(hz, f4, Q4)
  const step = up ? (pair(hz, up.f5, up.Q5) / pair(hz, up.f6, up.Q6)) * (up.f5 / up.f6) ** 2 : 1
  return high * low * speed * step
}

/** |1 + s/(Q w) + (s/w)^2| */
function pair(hz: number, f: number, Q: number): number {
  const x = hz / f
  return Math.hypot(1 - x * x, x / Q)
}

/** What people say of a weighted acceleration, m/s2 (ISO 2631-1, annex C, from memory; the bands overlap). */
const BANDS: readonly (readonly [from: number, to: number, says: string])[] = [
  [0, 0.315, 'not uncomfortable'],
  [0.315, 0.63, 'a little uncomfortable'],
  [0.5, 1, 'fairly uncomfortable'],
  [0.8, 1.6, 'uncomfortable'],
  [1.25, 2.5, 'very uncomfortable'],
  [2, Infinity, 'extremely uncomfortable'],
]

/** Every band the figure falls in, mildest first. */
export const comfortOf = (acceleration: number): readonly string[] =>
  BANDS.filter(([from, to]) => acceleration >= from && acceleration <= to).map(([, , says]) => says)
