/**
 * Vehicle identification numbers: what each character may be, the check digit, and a trailer's number put together.
 *
 * Source: 49 CFR 565.15, tables III to VI for the check digit (read in several copies), the requirement that positions 4 to 8
 * of a trailer's number tell make, type of trailer, body type, length and axle configuration (read in the rule of 2008), and
 * the rule that a small maker has 9 in position 3 and is named by positions 1-3 with 12-14 (565.15(a)). Year letters from memory.
 *
 * Does not cover: who may use a maker's identifier, and what the shop's own characters mean: it files those with the authority.
 */

const WORTH: Readonly<Record<string, number>> = (() => {
  const worth: Record<string, number> = {}
  for (let digit = 0; digit <= 9; digit++) worth[String(digit)] = digit
  for (const [letters, from] of [
    ['ABCDEFGH', 1],
    ['JKLMN', 1],
    ['P', 7],
    ['R', 9],
    ['STUVWXYZ', 2],
  ] as const)
    Array.from(letters).forEach((letter, i) => {
      worth[letter] = from + i
    })
  return Object.freeze(worth)
})()

const WEIGHTS = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2] as const
const LENGTH = WEIGHTS.length
/** Where the check digit stands, counted from 0. */
const CHECK = 8

/** Weighted sum whose remainder by eleven is the check digit. Seventeen characters that may stand in a number. */
export function vinSum(vin: string): number {
  let sum = 0
  WEIGHTS.forEach((weight, i) => {
    sum += weight * WORTH[vin[i]]
  })
  return sum
}

/** The character position 9 must hold, whatever it holds now. */
export function checkDigit(vin: string): string {
  const rest = vinSum(vin) % 11
  return rest === 10 ? 'X' : String(rest)
}

/** What is wrong with a number, in sentences; none when nothing is. */
export function vinFaults(vin: string): readonly string[] {
  if (vin.length !== LENGTH) return [`A vehicle identification number has 17 characters; "${vin.slice(0, 40)}" has ${vin.length}.`]
  const bad = [...new Set(Array.from(vin).filter((each) => !(each in WORTH)))]
  if (bad.length > 0) return [`"${bad.join('')}" may not stand in a vehicle identification number: digits and capitals, but not I, O or Q.`]
  const out: string[] = []
  const due = checkDigit(vin)
  if (vin[CHECK] !== due) out.push(`Position 9 of ${vin} is ${vin[CHECK]}; its check digit is ${due}.`)
  if (!/^\d{3}$/.test(vin.slice(14))) out.push(`The last three characters of ${vin} must be digits.`)
  if (yearOf(vin[9]) === null) out.push(`${vin[9]} in position 10 of ${vin} stands for no model year.`)
  return out
}

/** Letters and digits of model years, thirty in a round; 2010 begins with A. 49 CFR 565.15, table VII (from memory). */
const YEARS = 'ABCDEFGHJKLMNPRSTVWXY123456789'
const FIRST_YEAR = 2010

/** Character of a model year, and the year 2010 to 2039 of a character; null for what is none. */
export const yearLetter = (year: number): string => YEARS[(((year - FIRST_YEAR) % YEARS.length) + YEARS.length) % YEARS.length]
export const yearOf = (letter: string): number | null =>
  YEARS.includes(letter) && letter !== '' ? FIRST_YEAR + YEARS.indexOf(letter) : null

export interface VinPieces {
  /** positions 1 to 3; of a small maker the third is 9 */
  readonly maker: string
  /** positions 4 to 8: make, type of trailer, body, length, axles, as the shop has filed them */
  readonly attributes: string
  readonly year: number
  /** position 11 */
  readonly plant: string
  /** positions 12 to 14 of a small maker; null for a large one, which counts there too */
  readonly smallMaker: string | null
  readonly serial: number
}

/** The number, or what stands in the way of it. */
export function composeVin(pieces: VinPieces): { readonly vin: string } | { readonly faults: readonly string[] } {
  const { maker, attributes, year, plant, smallMaker, serial } = pieces
  const faults: string[] = []
  const digits = smallMaker === null ? 6 : 3
  if (maker.length !== 3) faults.push(`The maker's identifier "${maker}" must have 3 characters.`)
  if (attributes.length !== 5) faults.push(`Positions 4 to 8 must have 5 characters; "${attributes}" has ${attributes.length}.`)
  if (plant.length !== 1) faults.push(`The plant "${plant}" must be one character.`)
  if (smallMaker !== null && smallMaker.length !== 3)
    faults.push(`Positions 12 to 14 of a small maker, "${smallMaker}", must be 3 characters.`)
  if (smallMaker !== null && maker.length === 3 && maker[2] !== '9')
    faults.push(`The third character of a small maker is 9; "${maker}" ends with ${maker[2]}.`)
  if (smallMaker === null && maker[2] === '9')
    faults.push(`"${maker}" ends with 9, which says a small maker: positions 12 to 14 must name it too.`)
  if (!Number.isInteger(serial) || serial < 0 || serial >= 10 ** digits)
    faults.push(`The serial ${serial} must be a whole number of at most ${digits} digits.`)
  if (!Number.isInteger(year) || year < FIRST_YEAR || year >= FIRST_YEAR + YEARS.length)
    faults.push(`Model year ${year} has no character here; known are ${FIRST_YEAR} to ${FIRST_YEAR + YEARS.length - 1}.`)
  if (faults.length > 0) return { faults }
  const blank = `${maker}${attributes}0${yearLetter(year)}${plant}${smallMaker ?? ''}${String(serial).padStart(digits, '0')}`
  const bad = vinFaults(blank).filter((says) => !says.startsWith('Position 9'))
  if (bad.length > 0) return { faults: bad }
  return { vin: `${blank.slice(0, CHECK)}${checkDigit(blank)}${blank.slice(CHECK + 1)}` }
}
