/**
 * How much may still be added at a place, and which limit of which load case stops it; and for every limit the case that is
 * nearest to it. All limits are linear in a mass added at a place, so each gives its room in one division.
 */
import type { CaseWeighed, LimitKind, Nearest, Point, Room, WeightDerived } from '../weight-nouns.js'

type Ground = Pick<WeightDerived, 'ball' | 'axle' | 'track' | 'gross' | 'ratings' | 'hitchBand' | 'tyre' | 'cases'>

/** One limit in one case: what is left of it, kg, and how much of that a kilogram at a place takes. */
interface Limit {
  readonly kind: LimitKind
  readonly case: string
  readonly left: number
  readonly takes: (at: Point) => number
  /** what is left over what it is a limit of */
  readonly margin: number
}

/**
 * A case that is filled to the gross rating carries that much less cargo, from where its cargo lies, so nothing is added to its
 * whole weight; the others grow. Ratings hold in every case; the hitch band only in those the coach is designed for.
 */
function limitsOf(ground: Ground, one: CaseWeighed): readonly Limit[] {
  const { ball, axle, track, gross, ratings, hitchBand, tyre } = ground
  const reach = axle - ball
  const { filled } = one
  const grows = filled ? 0 : 1
  const alongOf = (at: Point): number => (filled ? at[0] - filled.at[0] : at[0] - ball)
  const acrossOf = (at: Point): number => (filled ? at[1] - filled.at[1] : at[1])
  const onAxles = (at: Point): number => alongOf(at) / reach
  const onHitch = (at: Point): number => grows - onAxles(at)
  const [least, most] = hitchBand
  const [W, T] = [one.mass.value, one.hitch.value]
  const n = ratings.length
  const limit = (kind: LimitKind, left: number, of: number, takes: Limit['takes']): Limit => {
    return { kind, case: one.id, left, takes, margin: left / of }
  }
  const band = one.design
    ? [
        limit('hitch-least', T - least * W, W, (at) => least * grows - onHitch(at)),
        limit('hitch-most', most * W - T, W, (at) => onHitch(at) - most * grows),
      ]
    : []
  const axles = one.axles.map(({ load, rating }) => limit('axle', rating - load.value, rating, (at) => onAxles(at) / n))
  const wheels =
    tyre === null
      ? []
      : one.axles.flatMap(({ left, right }) => [
          limit('tyre', tyre - right.value, tyre, (at) => onAxles(at) / (2 * n) + acrossOf(at) / (n * track)),
          limit('tyre', tyre - left.value, tyre, (at) => onAxles(at) / (2 * n) - acrossOf(at) / (n * track)),
        ])
  return [limit('gross', filled ? filled.mass : gross - W, gross, () => 1), ...band, ...axles, ...wheels]
}

/** Nothing where a limit is passed already and more makes it worse; a limit that more at this place relieves does not stop it. */
export const roomAt = (ground: Ground, at: Point): Room => roomFinder(ground)(at)

/** The same for many places of one coach: its limits are gathered once. */
export function roomFinder(ground: Ground): (at: Point) => Room {
  const limits = ground.cases.flatMap((one) => limitsOf(ground, one))
  return (at) => {
    let [best, stop]: [number | null, Limit | null] = [null, null]
    for (const limit of limits) {
      const taken = limit.takes(at)
      const mass = taken > 0 ? Math.max(0, limit.left) / taken : null
      if (mass !== null && (best === null || mass < best)) [best, stop] = [mass, limit]
    }
    return { at, mass: best, limit: stop?.kind ?? null, case: stop?.case ?? null }
  }
}

/** For every limit the case that comes nearest to it, the nearest limit first. A filled case is at its gross rating by intent. */
export function nearestOf(ground: Ground): readonly Nearest[] {
  const nearest = new Map<LimitKind, Nearest>()
  for (const one of ground.cases)
    for (const { kind, case: id, left, margin } of limitsOf(ground, one)) {
      if (kind === 'gross' && one.filled) continue
      const known = nearest.get(kind)
      if (!known || margin < known.margin) nearest.set(kind, { limit: kind, case: id, left, margin })
    }
  return [...nearest.values()].sort((a, b) => a.margin - b.margin)
}
