/**
 * A strain field in black ink: the more a place is stretched, the closer the hatching; contour lines between the bands, each with its
 * percent. Reads the same on a copier as on a screen.
 */
import type { StrainField } from '../../studies/blanks/nouns.js'
import { textWidth } from './lettering.js'
import type { Mark, Shape } from './page.js'
import { FINE, letter, lines, path, rectangle, THIN } from './page.js'
import type { View } from './view.js'

type Segment = readonly [x1: number, y1: number, x2: number, y2: number]

/** Closest hatching, mm on paper; each band outward has half as many lines. */
const CLOSEST = 0.8
/** Bands at most; the least one is left white. */
const MOST = 5
/** Room kept between two contour labels, mm. */
const APART = 14

/** Levels a person can read between 0 and the peak: 3 to 5 of them, in steps of 1, 2 or 5. */
export function levelsOf(peak: number): readonly number[] {
  const rough = peak / MOST
  const ten = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((k) => k * ten).find((s) => s >= rough) ?? 10 * ten
  return Array.from({ length: MOST }, (_, i) => (i + 1) * step).filter((level) => level < peak)
}

/** Level words: as many decimals as the step needs. */
export const levelWords = (level: number): string => `${Number((100 * level).toPrecision(3))} %`

/** Hatching of band `band` (1 is above the first level of `of`): one line in so many of the closest. */
export const everyNth = (band: number, of: number): number => 2 ** (of - band)

export function strainMarks(field: StrainField, view: View, levels: readonly number[]): readonly Mark[] {
  return [...hatching(field, view, levels), ...contours(field, view, levels)]
}

/** Lines across the blank, between the rows of nodes, drawn where the strain is above their band's level. */
function hatching(field: StrainField, view: View, levels: readonly number[]): readonly Mark[] {
  const { across, along, x } = field
  const length = view.length(Math.max(...x) - Math.min(...x))
  // a whole number of lines, so that each band keeps its share
  const count = Math.max(1, Math.round(length / CLOSEST))
  const segments: Segment[] = []
  for (let n = 0; n < count; n++) {
    const band = levels.findIndex((_, i) => n % everyNth(i + 1, levels.length) === 0)
    if (band < 0) continue
    const row = ((n + 0.5) / count) * along
    const j = Math.min(along - 1, Math.floor(row))
    const at = (i: number): readonly [number, number, number] => mixed(field, i, j, row - j)
    for (let i = 0; i < across; i++) {
      const cut = above(at(i), at(i + 1), levels[band])
      if (cut) segments.push([view.x(cut[0]), view.y(cut[1]), view.x(cut[2]), view.y(cut[3])])
    }
  }
  return segments.length === 0 ? [] : [path(runsOf(segments), { width: FINE, group: 'strain-hatch' })]
}

/** Node line i between rows j and j + 1: x, y, strain. */
function mixed({ across, x, y, major }: StrainField, i: number, j: number, t: number): readonly [number, number, number] {
  const [a, b] = [j * (across + 1) + i, (j + 1) * (across + 1) + i]
  const mix = (v: readonly number[]): number => v[a] + (v[b] - v[a]) * t
  return [mix(x), mix(y), mix(major)]
}

/** The part of a straight stretch where the value is above the level. */
function above(p: readonly [number, number, number], q: readonly [number, number, number], level: number): Segment | null {
  if (p[2] < level && q[2] < level) return null
  const t = (level - p[2]) / (q[2] - p[2])
  const m = [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t] as const
  if (p[2] >= level && q[2] >= level) return [p[0], p[1], q[0], q[1]]
  return p[2] >= level ? [p[0], p[1], m[0], m[1]] : [m[0], m[1], q[0], q[1]]
}

/** Stretches that run on from each other, as one line each. */
function runsOf(segments: readonly Segment[]): readonly Shape[] {
  const runs: [number, number, 0][][] = []
  for (const [x1, y1, x2, y2] of segments) {
    const run = runs[runs.length - 1]
    const end = run?.[run.length - 1]
    if (end && end[0] === x1 && end[1] === y1) run.push([x2, y2, 0])
    else
      runs.push([
        [x1, y1, 0],
        [x2, y2, 0],
      ])
  }
  return runs.map((points) => ({ points, closed: false }))
}

function contours(field: StrainField, view: View, levels: readonly number[]): readonly Mark[] {
  const drawn = levels.map((level) => contour(field, view, level))
  const marks: Mark[] = drawn.filter((s) => s.length > 0).map((s) => lines(s, { width: THIN, group: 'strain-contours' }))
  const taken: (readonly [number, number])[] = []
  for (const [k, segments] of drawn.entries()) {
    // from the middle of the list outward: a label there stands well inside its own line
    const from = Math.floor(segments.length / 2)
    const found = segments
      .map((_, i) => segments[(from + i) % segments.length])
      .find(([x, y]) => taken.every(([a, b]) => Math.hypot(x - a, y - b) > APART))
    if (!found) continue
    const [x, y] = [(found[0] + found[2]) / 2, (found[1] + found[3]) / 2]
    taken.push([x, y])
    const words = levelWords(levels[k])
    const wide = textWidth(words, 2.5)
    marks.push(
      rectangle(x - wide / 2 - 0.5, y - 1.9, wide + 1, 3.8, { width: null, fill: 1, group: 'strain-label' }),
      letter(x, y, words, { height: 2.5, anchor: 'middle', sits: 'middle', group: 'strain-label' }),
    )
  }
  return marks
}

/** Where the strain is just the level: straight through each half cell. */
function contour({ across, along, x, y, major }: StrainField, view: View, level: number): readonly Segment[] {
  const segments: Segment[] = []
  const place = (a: number, b: number): readonly [number, number] => {
    const t = (level - major[a]) / (major[b] - major[a])
    return [view.x(x[a] + (x[b] - x[a]) * t), view.y(y[a] + (y[b] - y[a]) * t)]
  }
  const half = (...corners: readonly [number, number, number]): void => {
    const crossed = corners
      .map((a, i) => [a, corners[(i + 1) % 3]] as const)
      .filter(([a, b]) => major[a] < level !== major[b] < level)
      .map(([a, b]) => place(a, b))
    if (crossed.length === 2) segments.push([...crossed[0], ...crossed[1]])
  }
  for (let j = 0; j < along; j++)
    for (let i = 0; i < across; i++) {
      const a = j * (across + 1) + i
      const [b, c, d] = [a + 1, a + across + 1, a + across + 2]
      half(a, c, d)
      half(a, d, b)
    }
  return segments
}
