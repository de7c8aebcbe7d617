/**
 * Lamps and reflectors a trailer must show, by its width, length and rating, with the heights they may stand at.
 *
 * Source: 49 CFR 571.108 (FMVSS 108), table I-b, as a lamp maker's table, a state police chart and agency letters print it.
 * Heights are to the centre of the lamp, coach at curb weight; the least height is absolute (agency letter 11804).
 * Lengths m, masses kg. The law in force governs; other markets are not in this table.
 */

const INCH = 0.0254
const FOOT = 12 * INCH
const POUND = 0.45359237

export const WIDE = 80 * INCH
export const LONG = 30 * FOOT
const SHORT = 6 * FOOT
/** Rating above which a wide trailer carries red and white tape. */
const TAPED = 10000 * POUND

export interface LampRow {
  readonly device: string
  readonly count: number
  readonly colour: 'red' | 'amber' | 'white' | 'red and white' | 'red or amber'
  /** where on the coach */
  readonly where: string
  /** heights above the ground, m; null where none is set */
  readonly least: number | null
  readonly greatest: number | null
  /** why it is asked for: of every trailer, or by which size */
  readonly because: string
  readonly source: string
}

export interface TrailerSize {
  readonly width: number
  /** over all, with the tongue */
  readonly length: number
  readonly gross: number
}

const TABLE = '49 CFR 571.108, table I-b'
const EVERY = 'every trailer'

/** A width, length or rating at its limit counts as over it: the rule says "80 inches or more", "30 feet or longer". */
const HAIR = 1e-9
const reaches = (size: number, limit: number): boolean => size >= limit - HAIR

export function lampSchedule({ width, length, gross }: TrailerSize): readonly LampRow[] {
  const wide = reaches(width, WIDE)
  const long = reaches(length, LONG)
  const inches = (each: number | null): number | null => (each === null ? null : each * INCH)
  const row = (
    device: string,
    count: number,
    colour: LampRow['colour'],
    where: string,
    [least, greatest]: readonly [number | null, number | null],
    because = EVERY,
    source = TABLE,
  ): LampRow => ({ device, count, colour, where, least: inches(least), greatest: inches(greatest), because, source })
  const rows: LampRow[] = [
    row('tail lamp', 2, 'red', 'rear, one each side, as far apart as practicable, at one height', [15, 72]),
    row('stop lamp', 2, 'red', 'rear, one each side, as far apart as practicable, at one height', [15, 72]),
    row('turn lamp', 2, 'red or amber', 'rear, one each side, as far apart as practicable, at one height', [15, 83]),
    row('rear reflector', 2, 'red', 'rear, one each side, at one height', [15, 60]),
    row('plate lamp', 1, 'white', 'rear, lighting the plate from top or sides', [null, null]),
    row('side reflector, rear', 2, 'red', 'each side, as far to the rear as practicable', [15, 60]),
    row('side reflector, front', 2, 'amber', 'each side, as far to the front as practicable', [15, 60]),
    row('side marker, rear', 2, 'red', 'each side, as far to the rear as practicable', [15, wide ? 60 : null]),
  ]
  if (length > SHORT + HAIR || reaches(length, SHORT))
    rows.push(
      row(
        'side marker, front',
        2,
        'amber',
        'each side, as far to the front as practicable; the tongue is permitted (agency letter 07-005972)',
        [15, null],
        'trailers of 6 ft and longer (from memory)',
      ),
    )
  if (long) {
    const because = '30 ft long or longer'
    rows.push(
      row('side marker, between', 2, 'amber', 'each side, near the middle of the length', [15, null], because),
      row('side reflector, between', 2, 'amber', 'each side, near the middle of the length', [15, 60], because),
    )
  }
  if (wide) {
    const because = '80 in wide or wider'
    rows.push(
      row('clearance lamp, front', 2, 'amber', 'front, to show the whole width, as near the top as practicable', [null, null], because),
      row('clearance lamp, rear', 2, 'red', 'rear, to show the whole width, as near the top as practicable', [null, null], because),
      row(
        'identification lamps',
        3,
        'red',
        'rear, about the centre line, 6 to 12 in apart, as near the top as practicable',
        [null, null],
        because,
      ),
    )
  }
  if (wide && gross > TAPED)
    rows.push({
      ...row('tape', 1, 'red and white', 'half of each side, the whole width of the rear; two white pairs of 300 mm at the upper corners', [
        null,
        null,
      ]),
      least: 0.375,
      greatest: 1.525,
      because: '80 in wide or wider and rated above 10 000 lb',
    })
  return rows
}

/** Whether a lamp's centre may stand at a height above the ground, m; a sentence where it may not. */
export function lampHeightFault({ device, least, greatest }: LampRow, height: number): string | null {
  const says = (m: number): string => `${Number((m / INCH).toFixed(1))} in (${Math.round(m * 1000)} mm)`
  if (least !== null && height < least - HAIR) return `The ${device} at ${says(height)} stands below ${says(least)}.`
  if (greatest !== null && height > greatest + HAIR) return `The ${device} at ${says(height)} stands above ${says(greatest)}.`
  return null
}
