/** The coach drawn small or large: outline, frames, seams, openings, and one part filled. Paper millimetres. */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import type { CoachView, Points } from './coach-geometry.js'
import {
  barrelEnds,
  bodyOutline,
  endPartOnCoach,
  fromAbove,
  openingOnCoach,
  patternOnCoach,
  placeOnCoach,
  project,
  seen,
  underPartOnCoach,
} from './coach-geometry.js'
import type { LineWidth, Mark, Shape } from './page.js'
import { circles, FINE, OUTLINE, path, THIN } from './page.js'

/** Metres to paper: `at` is the paper place of (station, level) = (0, 0); a view of the right side runs stations to the left. */
export interface FigurePlace {
  readonly x0: number
  readonly y0: number
  readonly perMetre: number
  readonly view: CoachView
}

export const figureX = (place: FigurePlace, station: number): number =>
  place.x0 + (place.view === 'right' ? -1 : 1) * station * place.perMetre
/** In plan forward is to the left and the right of travel above, as it looks from over the roof. */
export const figureY = (place: FigurePlace, level: number): number => place.y0 - level * place.perMetre

const shapeOf = (place: FigurePlace, points: Points, closed: boolean): Shape => ({
  points: points.map(([s, v]) => [figureX(place, s), figureY(place, v), 0] as const),
  closed,
})

export interface Extent {
  readonly station: readonly [number, number]
  readonly level: readonly [number, number]
}

/** Stations and levels the body fills in a view, m. */
export function extentOf(design: Design, view: CoachView): Extent {
  const { nose, tail, reach } = barrelEnds(design)
  const { barrel } = bodyOutline(design, view)
  const levels = barrel.map((p) => p[1])
  // what hangs under the floor reaches as far forward as the coupler
  const front = view === 'under' && design.under.chassis ? Math.min(nose - reach, design.definition.ends.couplerFace) : nose - reach
  return { station: [front, tail + reach], level: [Math.min(...levels), Math.max(...levels)] }
}

/** Where to put a view so that it fills a box as large as it can, centred. */
export function placeIn(
  design: Design,
  view: CoachView,
  x: number,
  y: number,
  width: number,
  height: number,
  perMetre?: number,
): FigurePlace {
  const { station, level } = extentOf(design, view)
  const k = perMetre ?? Math.min(width / (station[1] - station[0]), height / (level[1] - level[0]))
  const blank: FigurePlace = { x0: 0, y0: 0, perMetre: k, view }
  return {
    ...blank,
    x0: x + width / 2 - figureX(blank, (station[0] + station[1]) / 2),
    y0: y + height / 2 - figureY(blank, (level[0] + level[1]) / 2),
  }
}

/** Outline, ends, frames, seams and openings of one view. `plain` leaves out frames and seams, for small figures. */
export function coachMarks(design: Design, place: FigurePlace, weight: LineWidth, plain: boolean): readonly Mark[] {
  const { view } = place
  const group = 'coach'
  const { barrel, ends } = bodyOutline(design, view)
  const { nose, tail } = barrelEnds(design)
  const marks: Mark[] = [
    path([shapeOf(place, barrel, true)], { width: weight, group }),
    path(
      ends.map((points) => shapeOf(place, points, false)),
      { width: weight, group },
    ),
  ]
  if (!plain) {
    const levels = barrel.map((p) => p[1])
    const [low, high] = [Math.min(...levels), Math.max(...levels)]
    marks.push(
      path(
        design.definition.frames.map((f) =>
          shapeOf(
            place,
            [
              [f.station, low],
              [f.station, high],
            ],
            false,
          ),
        ),
        { width: FINE, type: 'long-dash-dot', group },
      ),
    )
    const signs = fromAbove(view) ? [1, -1] : view === 'right' ? [1] : [-1]
    const seams = signs
      .flatMap((sign) => design.definition.shell.seams.map((seam) => sign * seam.girth))
      .filter((girth) => seen(design, view, girth))
    marks.push(
      path(
        seams.map((girth) => shapeOf(place, [project(design, view, nose, girth), project(design, view, tail, girth)], false)),
        { width: FINE, group },
      ),
    )
  }
  const openings = design.openings.filter(
    (o) => o.outline.length > 0 && o.surface !== 'nose' && o.surface !== 'tail' && o.side === (view === 'plan' ? 'centre' : view),
  )
  marks.push(
    path(
      openings.map((o) => shapeOf(place, openingOnCoach(design, o.outline, view), true)),
      { width: plain ? FINE : THIN, group },
    ),
  )
  return marks
}

const strip = (pattern: { readonly outline: readonly (readonly [number, number, number])[] }): number => {
  const ys = pattern.outline.map((p) => p[1])
  return Math.max(...ys) - Math.min(...ys)
}

/** The part filled black where it sits; a part with no pattern, or one too slim to see, is shown by a dot. */
export function partMarks(design: Design, part: Part, place: FigurePlace): readonly Mark[] {
  const group = 'key'
  const pattern = part.patterns[0]
  const at = placeOnCoach(design, part, place.view)
  const dot = circles([figureX(place, at[0]), figureY(place, at[1]), 1.6], { width: FINE, fill: 0, group })
  if (part.place.end) {
    const on = endPartOnCoach(design, part, place.view)
    return on ? [path([shapeOf(place, on.points, on.closed)], { width: OUTLINE, fill: on.closed ? 0 : null, group })] : [dot]
  }
  if (!pattern) return [dot]
  if (part.place.buttock !== undefined) {
    const on = underPartOnCoach(design, part)
    return on ? [path([shapeOf(place, on, true)], { width: OUTLINE, fill: 0, group })] : [dot]
  }
  const points = patternOnCoach(design, part, pattern, place.view)
  const xs = points.map((p) => figureX(place, p[0]))
  const ys = points.map((p) => figureY(place, p[1]))
  const slim = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)) < 0.6
  const body = path([shapeOf(place, points, true)], { width: slim ? OUTLINE : FINE, fill: 0, group })
  return slim && strip(pattern) * place.perMetre < 0.6 && Math.max(...xs) - Math.min(...xs) < 2 && Math.max(...ys) - Math.min(...ys) < 2
    ? [dot]
    : [body]
}
