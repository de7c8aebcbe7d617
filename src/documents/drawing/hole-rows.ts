/** The rows of holes of one pattern as a person names them: how they lie, how many, at what pitch. Metres, pattern axes. */
import type { Pattern } from '../../derive/nouns.js'

export interface HoleRow {
  readonly row: string
  /** places in the pattern's hole arrays, in the row's order */
  readonly holes: readonly number[]
  /** a column has one x, a line one y, a ring goes round, a scatter is none of these */
  readonly lies: 'column' | 'line' | 'ring' | 'scatter'
  /** the shared x of a column or y of a line; the middle otherwise */
  readonly at: number
  /** first and last place along it */
  readonly from: number
  readonly to: number
  readonly diameter: number
  /** smallest, usual and largest distance between neighbours within a run; null with fewer than two */
  readonly pitch: {
    readonly least: number
    readonly usual: number
    readonly most: number /** parts of the steps that are the usual one, 0 to 1 */
    readonly share: number
  } | null
  /** stretches without a gap longer than one and a half pitches */
  readonly runs: number
}

/** Holes of one row whose x (or y) agree within this are one column (or line), m: a row on a formed lap drifts by microns. */
const STRAIGHT = 0.0005
const GAP = 1.6
/** Steps that differ by less are one pitch, m. */
const SAME_PITCH = 0.00015

export function holeRows(pattern: Pick<Pattern, 'holes'>): readonly HoleRow[] {
  const { holes } = pattern
  const by = holes.rows.map((): number[] => [])
  for (const [i, row] of holes.row.entries()) by[row].push(i)
  return holes.rows.flatMap((row, r) => (by[r].length === 0 ? [] : [oneRow(pattern, row, by[r])]))
}

function oneRow({ holes }: Pick<Pattern, 'holes'>, row: string, list: readonly number[]): HoleRow {
  const xs = list.map((i) => holes.x[i])
  const ys = list.map((i) => holes.y[i])
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const lies =
    x1 - x0 < STRAIGHT && (y1 - y0 >= STRAIGHT || list.length === 1)
      ? 'column'
      : y1 - y0 < STRAIGHT
        ? 'line'
        : list.length > 7
          ? 'ring'
          : 'scatter'
  const sorted =
    lies === 'column'
      ? [...list].sort((a, b) => holes.y[a] - holes.y[b])
      : lies === 'line'
        ? [...list].sort((a, b) => holes.x[a] - holes.x[b])
        : list
  const steps = sorted.slice(1).map((i, n) => Math.hypot(holes.x[i] - holes.x[sorted[n]], holes.y[i] - holes.y[sorted[n]]))
  const middle = [...steps].sort((a, b) => a - b)[Math.floor(steps.length / 2)]
  const within = steps.filter((step) => step <= middle * GAP)
  return {
    row,
    lies,
    holes: sorted,
    diameter: holes.diameter[list[0]],
    at: lies === 'line' ? (y0 + y1) / 2 : (x0 + x1) / 2,
    from: lies === 'line' ? x0 : y0,
    to: lies === 'line' ? x1 : y1,
    pitch:
      steps.length === 0
        ? null
        : {
            least: Math.min(...within),
            usual: middle,
            most: Math.max(...within),
            share: within.filter((step) => Math.abs(step - middle) < SAME_PITCH).length / within.length,
          },
    runs: 1 + steps.length - within.length,
  }
}
