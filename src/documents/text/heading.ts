/** What stands at the head of every text a machine or a spreadsheet reads: whose it is, what it shows, which revision. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { sideWords } from '../drawing/words.js'

export interface TextOptions {
  /** the unit's serial, or MASTER when the document belongs to no unit yet */
  readonly unit?: string
  /** ISO date; the definition's when absent, never today */
  readonly date?: string
  /** name and version of the program, e.g. Coachwright 0.1.0 */
  readonly program?: string
}

/** 0.001 mm, never -0.000. */
export function mmText(metres: number, decimals = 3): string {
  if (!Number.isFinite(metres)) throw new RangeError(`A document was asked to print the length ${metres}`)
  return (metres * 1000).toFixed(decimals).replace(/^-(0(\.0*)?)$/, '$1')
}

export const CHECK_BEFORE_METAL = 'Check before metal: dry run, clamps, first-off.'

/** A part with one face is named alone; a face of several is named too. */
export function faceName(part: Part, pattern: Pattern): string {
  return part.patterns.length > 1 ? `${part.id} ${pattern.face}` : part.id
}

/** Safe in a file name on any disk: the part and, where there are several, the face. */
export function fileStem(part: Part, pattern: Pattern): string {
  return faceName(part, pattern).replace(/[^A-Za-z0-9.-]+/g, '-')
}

/** Name and value of each line, in reading order. */
export function headingOf(design: Design, part: Part, pattern: Pattern, options: TextOptions = {}): readonly (readonly [string, string])[] {
  const { coach } = design.definition
  const { flat } = pattern
  return [
    ['coach', `${coach.name} by ${coach.maker}`],
    ['unit number', options.unit ?? 'MASTER'],
    ['part', faceName(part, pattern)],
    ['what', part.says],
    ['side', sideWords(part.side, coach.market)],
    ['view', `seen from ${flat.view.toUpperCase()}, x runs ${flat.x}, y runs ${flat.y}`],
    [
      'origin',
      `${flat.origin.says}: STA ${mmText(flat.origin.station, 1)} mm, ${part.place.buttock === undefined ? 'girth' : 'BL'} ${mmText(flat.origin.girth, 1)} mm`,
    ],
    ['revision', design.revision],
    ['lengths', 'mm, at 1:1, flat'],
    ['date', options.date ?? coach.date],
    ['material', part.thickness.name ? `${part.material} ${part.thickness.name}` : part.material],
    ...(options.program ? [['made by', options.program] as const] : []),
    ['caution', CHECK_BEFORE_METAL],
  ]
}
