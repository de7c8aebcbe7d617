/**
 * How much may be added, place by place over a plan, before a limit of a load case is passed: the room of derive/weight asked at
 * the middle of every square. What is added stands on one spot; height does not matter to a coach that stands level.
 */
import type { Outline } from '../../derive/nouns.js'
import { roomAt, roomFinder } from '../../derive/weight/room.js'
import type { LimitKind, Room, WeightDerived } from '../../derive/weight-nouns.js'
import { boundsOf, insideOutline } from '../../maths/outline.js'

/** What stops it: a limit of a load case. */
export interface Stop {
  readonly limit: LimitKind
  readonly case: string
}

/** Squares whose middles lie inside the outline, as parallel arrays. m, kg. */
export interface RoomOverPlan {
  /** side of a square */
  readonly cell: number
  readonly x: readonly number[]
  readonly y: readonly number[]
  /** null where nothing stops it */
  readonly mass: readonly (number | null)[]
  /** index into `stops`; null where nothing stops it */
  readonly stop: readonly (number | null)[]
  readonly stops: readonly Stop[]
}

/** The room at one place: station and buttock line, m. */
export const roomHere = (weight: WeightDerived, x: number, y: number): Room => roomAt(weight, [x, y, 0])

/** Squares lie evenly about whole numbers of `cell` in station and buttock line, so that the centre line has a row of its own. */
export function roomOverPlan(weight: WeightDerived, outline: Outline, cell: number): RoomOverPlan {
  const [x0, y0, x1, y1] = boundsOf(outline)
  const [x, y, mass, stop]: [number[], number[], (number | null)[], (number | null)[]] = [[], [], [], []]
  const stops: Stop[] = []
  const roomOf = roomFinder(weight)
  const numberOf = ({ limit, case: id }: Room): number | null => {
    if (limit === null || id === null) return null
    const known = stops.findIndex((each) => each.limit === limit && each.case === id)
    return known >= 0 ? known : stops.push({ limit, case: id }) - 1
  }
  for (let i = Math.ceil(x0 / cell); i * cell <= x1; i++)
    for (let j = Math.ceil(y0 / cell); j * cell <= y1; j++) {
      const [u, v] = [i * cell, j * cell]
      if (!insideOutline(outline, u, v)) continue
      const room = roomOf([u, v, 0])
      x.push(u)
      y.push(v)
      mass.push(room.mass)
      stop.push(numberOf(room))
    }
  return Object.freeze({ cell, x, y, mass, stop, stops })
}
