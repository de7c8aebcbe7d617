/**
 * Couplings, balls and safety chains by gross trailer weight, and the forces of European type approval.
 *
 * Sources: classes and strengths as COMAR 11.13.08.08 and .10 repeat SAE J684 (read); chains as a glossary quotes J684 (read);
 * D, Dc and V values of UN regulation 55 as two sites print them (read), the figures here worked out from them.
 * N and kg inside; the source's own pounds are converted here.
 */
import { G } from '../quantity/gravity.js'

const POUND = 0.45359237
const LBF = POUND * G
/** UN R55 reckons with 9.81. */
const G_R55 = 9.81

export interface CouplingClass {
  readonly class: 1 | 2 | 3 | 4
  /** gross trailer weight it reaches up to, kg */
  readonly upTo: number
  /** least ball diameter as it is bought; null where strength alone decides */
  readonly ball: string | null
  /** least breaking forces, N */
  readonly tension: number
  readonly compression: number
  readonly transverse: number
  readonly verticalTension: number
  readonly verticalCompression: number
  /** least breaking force of each of the two chains, N */
  readonly chain: number
}

/** Upper limits in pounds, and breaking forces in pounds-force, of the classes with figures of their own. */
const FIXED = [
  { class: 1, upTo: 2000, ball: '1-7/8 in', tension: 6000, transverse: 2000, vertical: 2500, chain: 2000 },
  { class: 2, upTo: 3500, ball: '2 in', tension: 10500, transverse: 3000, vertical: 4500, chain: 3500 },
  { class: 3, upTo: 5000, ball: '2 in', tension: 15000, transverse: 4000, vertical: 7000, chain: 5000 },
] as const
const LARGEST = 10000
/** Class 4, in gross weights: along, across, vertical pull and push. The standard itself is said to print 1.3 for both (from memory). */
const LARGE = { tension: 3, transverse: 1, verticalTension: 1.3, verticalCompression: 1.4 } as const
export const COUPLING_SOURCE = 'SAE J684 as COMAR 11.13.08.10, table 1, repeats it; chains as a glossary quotes J684'

/** The class of a gross trailer weight in kg, with what its parts must bear; null above 10 000 lb, which the standard does not cover. */
export function couplingClass(gross: number): CouplingClass | null {
  const pounds = gross / POUND
  const row = FIXED.find(({ upTo }) => pounds <= upTo)
  if (row) {
    return {
      class: row.class,
      upTo: row.upTo * POUND,
      ball: row.ball,
      tension: row.tension * LBF,
      compression: row.tension * LBF,
      transverse: row.transverse * LBF,
      verticalTension: row.vertical * LBF,
      verticalCompression: row.vertical * LBF,
      chain: row.chain * LBF,
    }
  }
  if (!(pounds <= LARGEST)) return null
  const weight = gross * G
  return {
    class: 4,
    upTo: LARGEST * POUND,
    ball: null,
    tension: LARGE.tension * weight,
    compression: LARGE.tension * weight,
    transverse: LARGE.transverse * weight,
    verticalTension: LARGE.verticalTension * weight,
    verticalCompression: LARGE.verticalCompression * weight,
    chain: weight,
  }
}

export interface HitchTest {
  readonly says: string
  readonly along: number
  readonly down: number
  readonly across: number
}

/** Forces a weight-carrying hitch is tested with for a gross trailer weight in kg, N. Same source. */
export function hitchTests(gross: number): readonly HitchTest[] {
  const R = gross / POUND
  const n = (pounds: number): number => pounds * LBF
  return [
    { says: 'down and pushed', down: n(0.47 * R + 480), along: n(0.47 * R + 480), across: 0 },
    { says: 'pulled, then pushed', down: n(0.15 * R), along: n(0.23 * R + 1530), across: 0 },
    { says: 'across, to each side', down: 0, along: 0, across: n(0.2 * R + 500) },
  ]
}

/** D value of a coupling between a car of T and a trailer of R, kg; N. */
export const dValue = (T: number, R: number): number => (G_R55 * T * R) / (T + R)
/** Dc of a centre-axle trailer whose axles carry C, kg; N. */
export const dcValue = (T: number, C: number): number => (G_R55 * T * C) / (T + C)
/** D of a semi-trailer of R pressing on its coupling with U, kg; N. */
export const semiDValue = (T: number, R: number, U: number): number => (G_R55 * 0.6 * T * R) / (T + R - U)
/** V of a centre-axle trailer of body length x and drawbar l (m), axles C (kg); N. 1.8 m/s2 on air springs, 2.4 on others. Wanted above 3.5 t (from memory). */
export const vValue = (x: number, l: number, C: number, air: boolean): number => (air ? 1.8 : 2.4) * Math.max(1, (x / l) ** 2) * C

/** Trailers above it need brakes that go on by themselves and hold for 15 minutes when it breaks away: 49 CFR 393.43(d), from memory; read in a city rule with its words. kg */
export const BREAKAWAY_ABOVE = 3000 * POUND
