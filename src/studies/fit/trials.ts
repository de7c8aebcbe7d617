/**
 * A joint tried over and over: every error drawn, every body centred, every hole looked at. The same seed and joint give
 * the same figures everywhere, whatever else was tried before: only + - × ÷ √ and a written table take part.
 */
import type { FastenerType, ProcessDefinition } from '../../definition/types.js'
import { generator } from '../../maths/chance/generator.js'
import { type Alike, alike, FITS, type Found, judge } from '../../maths/placement/alike.js'
import type { Discs } from '../../maths/placement/common-disc.js'
import { boundBySquares, leastSquaresOf } from '../../maths/placement/least-squares.js'
import { type Meeting, meeting, type Placement } from '../../maths/placement/meeting.js'
import { minimax } from '../../maths/placement/minimax.js'
import { drawing } from './draw.js'
import { entriesOf } from './errors.js'
import type { FitModel } from './model.js'
import { largestShank } from './shank.js'

/** What is drawn from and what is tried. */
export interface Tried {
  readonly process: ProcessDefinition
  /** fastener of each row */
  readonly fasteners: readonly FastenerType[]
  /** length a slot in the body adds along its longer side, m */
  readonly slot?: number
}

/** Sums over the trials made. */
export interface Tally {
  trials: number
  leastSquares: number
  minimax: number
  /** trials in which every pilot drills out whole */
  pilots: number
  /** fasteners that needed reaming */
  reamed: number
  /** the same by row: trials in which all went in, fasteners reamed, trials in which all pilots drill out */
  readonly rowFits: number[]
  readonly rowReamed: number[]
  readonly rowPilots: number[]
}

interface Body {
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

export interface Trials {
  readonly tally: Tally
  /** `best` false leaves out the minimax placement */
  run(trials: number, best: boolean): void
}

export function trialsOf(model: FitModel, tried: Tried, seed: number): Trials {
  const entries = entriesOf(model)
  const drawn = drawing(model, entries, tried.process)
  const shared = sharedHoles(model)
  const bodies = model.bodies.map((part) => bodyOf(model, part, shared, tried.fasteners))
  const state = generator(seed, model.id)
  const rows = model.rows.length
  const tally: Tally = {
    trials: 0,
    leastSquares: 0,
    minimax: 0,
    pilots: 0,
    reamed: 0,
    rowFits: new Array<number>(rows).fill(0),
    rowReamed: new Array<number>(rows).fill(0),
    rowPilots: new Array<number>(rows).fill(0),
  }
  const marks: Marks = {
    sharedRow: Int32Array.from(shared.keys(), (h) => model.holes[h].row),
    misfit: new Uint8Array(shared.size),
    reamed: new Int32Array(rows),
    spoilt: new Uint8Array(rows),
  }
  const slot = tried.slot ?? 0
  return {
    tally,
    run(trials, best) {
      for (let n = 0; n < trials; n++) {
        drawn.next(state)
        tryOnce(bodies, drawn.centres, marks, tally, best, slot)
      }
    },
  }
}

/** What is marked in one trial. */
interface Marks {
  /** of the holes of several bodies: the row, and whether it is a misfit in one of them */
  readonly sharedRow: Int32Array
  readonly misfit: Uint8Array
  readonly reamed: Int32Array
  readonly spoilt: Uint8Array
}

function tryOnce(bodies: readonly Body[], centres: Float64Array, marks: Marks, tally: Tally, best: boolean, slot: number): void {
  const { sharedRow, misfit, reamed, spoilt } = marks
  misfit.fill(0)
  reamed.fill(0)
  spoilt.fill(0)
  let [fits, bestFits] = [true, best]
  for (const body of bodies) {
    const placed = leastSquaresOf(body.alikes, centres, body.places, body.spread)
    const slid = slot > 0 ? slide(body, centres, placed, slot) : null
    const isWhole = judgeBody(body, centres, placed, marks)
    fits = fits && isWhole
    // most trials are settled by the bound that the least squares prove; few need the search
    if (!isWhole && bestFits) bestFits = isBestWhole(body, centres, placed)
    slid?.putBack()
  }
  for (let s = 0; s < misfit.length; s++) reamed[sharedRow[s]] += misfit[s]
  let pilots = true
  for (let r = 0; r < reamed.length; r++) {
    tally.reamed += reamed[r]
    tally.rowReamed[r] += reamed[r]
    if (reamed[r] === 0) tally.rowFits[r]++
    if (spoilt[r] === 0) tally.rowPilots[r]++
    else pilots = false
  }
  tally.trials++
  if (fits) tally.leastSquares++
  if (bestFits) tally.minimax++
  if (pilots) tally.pilots++
}

/** Whether every hole fits with the body so placed; those that do not are marked. */
function judgeBody({ lists, places, stands, work, found }: Body, centres: Float64Array, placed: Placement, marks: Marks): boolean {
  let isWhole = true
  for (const { row, alike, shared } of lists) {
    judge(alike, centres, places, placed, work, stands, found)
    if (found.misfits === 0) continue
    isWhole = false
    if (found.tooShort > 0) marks.spoilt[row] = 1
    if (shared === null) marks.reamed[row] += found.misfits
    else for (let i = 0; i < alike.count; i++) if (stands[alike.first + i] !== FITS) marks.misfit[shared[i]] = 1
  }
  return isWhole
}

function isBestWhole({ alikes, places, m }: Body, centres: Float64Array, placed: Placement): boolean {
  if (boundBySquares(alikes, centres, places, placed) > 0) return false
  for (const list of alikes) gather(list, centres, m)
  return minimax(m, placed).largest <= 0
}

function gather({ first, count, own, others, step }: Alike, centres: Float64Array, m: Meeting): void {
  for (let i = 0, k = 0; i < count; i++, k += step) {
    m.bodyX[first + i] = centres[own + k]
    m.bodyY[first + i] = centres[own + k + 1]
    for (let j = 0; j < others.length; j++) {
      m.otherX[m.first[first + i] + j] = centres[others[j] + k]
      m.otherY[m.first[first + i] + j] = centres[others[j] + k + 1]
    }
  }
}

/** A slot lets the body's hole go to the others along it, as far as it is long. */
function slide(
  { alikes, places, slotAlongX }: Body,
  centres: Float64Array,
  { shiftX, shiftY, turn }: Placement,
  slot: number,
): { putBack(): void } {
  const axis = slotAlongX ? 0 : 1
  const were: number[] = []
  for (const { first, count, own, others, step } of alikes) {
    for (let i = 0, k = axis; i < count; i++, k += step) {
      const p = 2 * (first + i)
      const off = centres[own + k]
      const placed = slotAlongX ? off - shiftX + turn * places[p + 1] : off - shiftY - turn * places[p]
      let sum = 0
      for (const other of others) sum += centres[other + k]
      const miss = placed - sum / others.length
      were.push(off)
      centres[own + k] = off - Math.max(-slot / 2, Math.min(slot / 2, miss))
    }
  }
  return {
    putBack() {
      let at = 0
      for (const { count, own, step } of alikes) for (let i = 0; i < count; i++) centres[own + axis + i * step] = were[at++]
    },
  }
}

/** Numbers of the holes that several bodies go through, a lap's in a row along it. */
function sharedHoles(model: FitModel): ReadonlyMap<number, number> {
  const bodies = new Set(model.bodies)
  const shared = model.holes.flatMap((h, i) => (h.layers.filter((p) => bodies.has(p)).length > 1 ? [i] : []))
  return new Map(shared.map((h, n) => [h, n]))
}

function bodyOf(model: FitModel, part: number, shared: ReadonlyMap<number, number>, fasteners: readonly FastenerType[]): Body {
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
