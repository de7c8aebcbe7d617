/**
 * Running dimensions (ISO 129-1, running dimensioning) from one datum along an edge: a fine line from each place, its value written
 * along the line beyond a row of ticks. Where places are closer than the lettering is high the lines fan out, so that no two values meet.
 */
import { textWidth } from './lettering.js'
import type { LetterHeight, Mark, Shape } from './page.js'
import { circles, FINE, letter, lines, path, THIN } from './page.js'
import { spread } from './spread.js'

export interface RunningPlace {
  /** place along the edge on paper, mm */
  readonly at: number
  readonly text: string
  /** where its line starts on the drawing, across the edge, mm; the edge itself unless told */
  readonly from?: number
  readonly bold?: boolean
}

export interface RunningRow {
  /** which edge of the drawing the values stand along */
  readonly edge: 'top' | 'foot' | 'left' | 'right'
  /** paper place of that edge across its own direction: y for top and foot, x for left and right */
  readonly level: number
  readonly places: readonly RunningPlace[]
  /** paper place of the datum along the edge, shown by a circle; null when it is named elsewhere */
  readonly datum: number | null
  readonly height?: LetterHeight
  /** distance from the edge at which the fan begins and ends */
  readonly near?: number
  readonly far?: number
  /** labels stay inside these places along the edge */
  readonly within?: readonly [number, number]
  readonly group?: string
}

/** How far out the longest value of a row reaches from its edge, mm. */
export function runningDepth(row: Pick<RunningRow, 'places' | 'height' | 'far'>): number {
  const height = row.height ?? 2.5
  return (row.far ?? 12) + 1 + Math.max(0, ...row.places.map((place) => textWidth(place.text, height, place.bold ?? false))) + 1
}

/** The marks of a row. Places may come in any order; equal places with equal words are written once. */
export function runningMarks(row: RunningRow): readonly Mark[] {
  const { edge, level, height = 2.5, near = 4, far = 12, within = [-Infinity, Infinity], group = 'dimension' } = row
  const places = distinct(row.places)
  const upright = edge === 'top' || edge === 'foot'
  const out = edge === 'top' || edge === 'left' ? -1 : 1
  const point = (along: number, across: number): readonly [number, number, number] => (upright ? [along, across, 0] : [across, along, 0])
  const at = spread(
    places.map((p) => p.at),
    () => height * 1.55,
    within[0] + height,
    within[1] - height,
  )
  const bends: Shape[] = places.map((place, i) => ({
    points: [
      point(place.at, place.from ?? level + out * 1),
      point(place.at, level + out * near),
      point(at[i], level + out * far),
      point(at[i], level + out * (far + 0.6)),
    ],
    closed: false,
  }))
  const marks: Mark[] = [path(bends, { width: FINE, group })]
  marks.push(
    lines(
      places.map((place) => {
        const [x, y] = point(place.at, level + out * near)
        return [x - 0.7, y + 0.7, x + 0.7, y - 0.7] as const
      }),
      { width: THIN, group },
    ),
  )
  if (row.datum !== null) {
    const [x, y] = point(row.datum, level + out * near)
    marks.push(circles([x, y, 1.8], { width: THIN, group }))
  }
  if (places.length > 1) {
    const ends = places.map((p) => p.at).concat(row.datum === null ? [] : [row.datum])
    const [a, b] = [point(Math.min(...ends), level + out * near), point(Math.max(...ends), level + out * near)]
    marks.push(lines([[a[0], a[1], b[0], b[1]]], { width: FINE, group }))
  }
  places.forEach((place, i) => {
    const [x, y] = point(at[i], level + out * (far + 1.4))
    const anchor = edge === 'top' || edge === 'right' ? 'start' : 'end'
    marks.push(letter(x, y, place.text, { height, anchor, sits: 'middle', turn: upright ? 90 : 0, bold: place.bold ?? false, group }))
  })
  return marks
}

function distinct(places: readonly RunningPlace[]): readonly RunningPlace[] {
  const sorted = [...places].sort((a, b) => a.at - b.at)
  return sorted.filter((place, i) => i === 0 || Math.abs(place.at - sorted[i - 1].at) > 1e-6 || place.text !== sorted[i - 1].text)
}
