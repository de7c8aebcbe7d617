/** Trimmed sheets and their borders. */

export interface PaperSize {
  readonly name: string
  readonly widthMm: number
  readonly heightMm: number
}

export type PaperSeries = 'iso' | 'us'

/** ISO 216 trimmed sizes, used as ISO 5457 lays them: A4 upright, the larger ones across. */
const A4: PaperSize = { name: 'A4', widthMm: 210, heightMm: 297 }
const A3: PaperSize = { name: 'A3', widthMm: 420, heightMm: 297 }
const A2: PaperSize = { name: 'A2', widthMm: 594, heightMm: 420 }
const A1: PaperSize = { name: 'A1', widthMm: 841, heightMm: 594 }
/** US sheets: letter 8.5 x 11 in, tabloid 11 x 17 in, and the next two, 17 x 22 and 22 x 34 in. */
const LETTER: PaperSize = { name: 'letter', widthMm: 215.9, heightMm: 279.4 }
const TABLOID: PaperSize = { name: 'tabloid', widthMm: 431.8, heightMm: 279.4 }
const US_C: PaperSize = { name: '17 × 22 in', widthMm: 558.8, heightMm: 431.8 }
const US_D: PaperSize = { name: '22 × 34 in', widthMm: 863.6, heightMm: 558.8 }

/** Sheets of a series from the smallest; the first is the one for tables. */
export const sheetsOf = (series: PaperSeries): readonly PaperSize[] => (series === 'iso' ? [A4, A3, A2, A1] : [LETTER, TABLOID, US_C, US_D])

/** ISO 5457: 20 mm on the filing edge, 10 mm elsewhere. */
const FILING_EDGE = 20
const BORDER = 10

export interface Room {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The rectangle inside the border of a sheet. */
export const insideBorder = (size: PaperSize): Room => ({
  x: FILING_EDGE,
  y: BORDER,
  width: size.widthMm - FILING_EDGE - BORDER,
  height: size.heightMm - 2 * BORDER,
})
