/**
 * The sheets of a joint that are placed, each with its holes in lists of alike ones: what a trial reads of them, in the order in
 * which it is read. Centres are as draw.ts leaves them.
 */
import type { FastenerType } from '../../definition/types.js'
import { type Alike, alike, type Found } from '../../maths/placement/alike.js'
import type { Discs } from '../../maths/placement/common-disc.js'
import { type Meeting, meeting } from '../../maths/placement/meeting.js'
import type { FitModel } from './model.js'
import { largestShank } from './shank.js'

export interface Body {
  /** in the order of its holes; none parts a row or holds shared holes and others */
  readonly lists: readonly Listed[]
  readonly alikes: readonly Alike[]
  /** x and y of its holes from their own centre, in turn, and their mean square distance from it */
  readonly places: Float64Array
  readonly spread: number
  /** hole by hole, how it stood when it was last judged */
  readonly stands: Uint8Array
  readonly work: Discs
  readonly found: Found
  /** whether a slot runs along x */
  readonly slotAlongX: boolean
  /** the same for the search of the best placement, filled when it is needed */
  readonly m: Meeting
}

interface Listed {
  readonly row: number
  readonly alike: Alike
  /** their numbers among the holes of several bodies; null where they are this body's alone */
  readonly shared: Int32Array | null
}

/** Numbers of the holes that several bodies go through, a lap's in a row along it. */
export function sharedHoles(model: FitModel): ReadonlyMap<number, number> {
  const bodies = new Set(model.bodies)
  const shared = model.holes.flatMap((h, i) => (h.layers.filter((p) => bodies.has(p)).length > 1 ? [i] : []))
  return new Map(shared.map((h, n) => [h, n]))
}

export function bodyOf(model: FitModel, part: number, shared: ReadonlyMap<number, number>, fasteners: readonly FastenerType[]): Body {
  const reachOf = (h: number): number => {
    const type = fasteners[model.holes[h].row]
    return (type.hole - largestShank(type)) / 2
  }
  const holes = model.holes.flatMap((h, i) => (h.layers.includes(part) ? [i] : []))
  const m = meeting(
    holes.map((h) => [model.holes[h].x, model.holes[h].y] as const),
    holes.map(reachOf),
    holes.map((h) => model.holes[h].layers.slice(1).map(() => reachOf(h))),
  )
  const extent = (v: Float64Array): number => Math.max(...v) - Math.min(...v)
  const lists = listsOf(model, part, holes, shared, fasteners)
  return {
    lists,
    alikes: lists.map((list) => list.alike),
    places: Float64Array.from(holes.flatMap((_, i) => [m.x[i], m.y[i]])),
    spread: m.spread,
    stands: new Uint8Array(holes.length),
    work: m.work,
    found: { misfits: 0, tooShort: 0 },
    slotAlongX: extent(m.x) >= extent(m.y),
    m,
  }
}

/** The holes of a body in lists of alike ones. */
function listsOf(
  model: FitModel,
  part: number,
  holes: readonly number[],
  shared: ReadonlyMap<number, number>,
  fasteners: readonly FastenerType[],
): readonly Listed[] {
  const begins = beginsOf(model)
  const own = (h: number): number => model.holes[h].layers.indexOf(part)
  const isLike = (h: number, next: number): boolean => {
    const [a, b] = [model.holes[h], model.holes[next]]
    const isAlike = a.row === b.row && a.layers.length === b.layers.length && own(h) === own(next)
    return next === h + 1 && isAlike && shared.has(h) === shared.has(next)
  }
  const out: Listed[] = []
  for (let first = 0, to = 0; first < holes.length; first = to) {
    for (to = first + 1; to < holes.length && isLike(holes[to - 1], holes[to]); ) to++
    const h = holes[first]
    const { row, layers } = model.holes[h]
    const type = fasteners[row]
    const at = layers.map((_, l) => 2 * (begins[h] + l))
    const others = at.filter((_, l) => l !== own(h))
    // every pilot within the final hole drilled round the middle of them all: radius of the circle round them (hole - pilot) / 2
    const reaches = { reach: (type.hole - largestShank(type)) / 2, allowed: (largestShank(type) - type.pilot) / 2 }
    out.push({
      row,
      alike: alike({ first, count: to - first, own: at[own(h)], others, step: 2 * layers.length }, reaches),
      shared: shared.has(h) ? Int32Array.from(holes.slice(first, to), (one) => shared.get(one) as number) : null,
    })
  }
  return out
}

/** Where the entries of each hole begin. */
function beginsOf(model: FitModel): readonly number[] {
  let k = 0
  return model.holes.map((h) => {
    const from = k
    k += h.layers.length
    return from
  })
}
