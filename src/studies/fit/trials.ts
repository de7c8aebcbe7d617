/**
 * A joint tried over and over: every error drawn, every body centred, every hole looked at. The same seed and joint give
 * the same figures everywhere, whatever else was tried before: only + - × ÷ √ and a written table take part.
 */
import type { FastenerType, ProcessDefinition } from '../../definition/types.js'
import { generator } from '../../maths/chance/generator.js'
import { boundBySquares, leastSquares } from '../../maths/placement/least-squares.js'
import { FITS, judge, type Meeting, meeting, type Placement, TOO_SHORT } from '../../maths/placement/meeting.js'
import { minimax } from '../../maths/placement/minimax.js'
import { drawing } from './draw.js'
import { type Entry, entriesOf } from './errors.js'
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
  readonly m: Meeting
  /** holes of the model, and the entries of the body's and of the others' layers */
  readonly hole: Int32Array
  readonly own: Int32Array
  readonly others: Int32Array
  /** most the discs may fall short for pilots to drill out whole, by hole */
  readonly pilot: Float64Array
  readonly stands: Uint8Array
  /** whether a slot runs along x */
  readonly slotAlongX: boolean
}

export interface Trials {
  readonly tally: Tally
  /** `best` false leaves out the minimax placement */
  run(trials: number, best: boolean): void
}

export function trialsOf(model: FitModel, tried: Tried, seed: number): Trials {
  const entries = entriesOf(model)
  const bodies = model.bodies.map((part) => bodyOf(model, entries, part, tried.fasteners))
  const drawn = drawing(model, entries, tried.process)
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
  const rowOf = Int32Array.from(model.holes, (h) => h.row)
  const state0 = { misfit: new Uint8Array(model.holes.length), reamed: new Int32Array(rows), spoilt: new Uint8Array(rows) }
  return {
    tally,
    run(trials, best) {
      for (let n = 0; n < trials; n++) {
        drawn.next(state)
        tryOnce(bodies, drawn.offX, drawn.offY, rowOf, state0, tally, best, tried.slot ?? 0)
      }
    },
  }
}

interface Marks {
  readonly misfit: Uint8Array
  readonly reamed: Int32Array
  readonly spoilt: Uint8Array
}

function tryOnce(
  bodies: readonly Body[],
  offX: Float64Array,
  offY: Float64Array,
  rowOf: Int32Array,
  marks: Marks,
  tally: Tally,
  best: boolean,
  slot: number,
): void {
  const { misfit, reamed, spoilt } = marks
  misfit.fill(0)
  reamed.fill(0)
  spoilt.fill(0)
  let [fits, bestFits, pilots] = [true, best, true]
  for (const body of bodies) {
    const { m, hole, own, others, pilot, stands } = body
    gather(offX, offY, own, m.bodyX, m.bodyY)
    gather(offX, offY, others, m.otherX, m.otherY)
    const placed = leastSquares(m)
    if (slot > 0) slide(body, placed, slot)
    judge(m, placed, pilot, stands)
    let whole = true
    for (let i = 0; i < hole.length; i++) {
      const stand = stands[i]
      if (stand === FITS) continue
      const h = hole[i]
      whole = false
      misfit[h] = 1
      if (stand === TOO_SHORT) {
        pilots = false
        spoilt[rowOf[h]] = 1
      }
    }
    if (!whole) {
      fits = false
      // most trials are settled by the bound that the least squares prove; few need the search
      bestFits = bestFits && boundBySquares(m, placed) <= 0 && minimax(m, placed).largest <= 0
    }
  }
  for (let h = 0; h < misfit.length; h++) reamed[rowOf[h]] += misfit[h]
  tally.trials++
  if (fits) tally.leastSquares++
  if (bestFits) tally.minimax++
  if (pilots) tally.pilots++
  for (let r = 0; r < reamed.length; r++) {
    tally.reamed += reamed[r]
    tally.rowReamed[r] += reamed[r]
    if (reamed[r] === 0) tally.rowFits[r]++
    if (spoilt[r] === 0) tally.rowPilots[r]++
  }
}

function gather(fromX: Float64Array, fromY: Float64Array, at: Int32Array, toX: Float64Array, toY: Float64Array): void {
  for (let i = 0; i < at.length; i++) {
    const k = at[i]
    toX[i] = fromX[k]
    toY[i] = fromY[k]
  }
}

/** A slot lets the body's hole go to the others along it, as far as it is long. */
function slide({ m, slotAlongX }: Body, { shiftX, shiftY, turn }: Placement, slot: number): void {
  const [off, other] = slotAlongX ? [m.bodyX, m.otherX] : [m.bodyY, m.otherY]
  for (let i = 0; i < m.holes; i++) {
    const placed = slotAlongX ? off[i] - shiftX + turn * m.y[i] : off[i] - shiftY - turn * m.x[i]
    let sum = 0
    for (let k = m.first[i]; k < m.first[i + 1]; k++) sum += other[k]
    const miss = placed - sum / (m.first[i + 1] - m.first[i])
    off[i] -= Math.max(-slot / 2, Math.min(slot / 2, miss))
  }
}

function bodyOf(model: FitModel, entries: readonly Entry[], part: number, fasteners: readonly FastenerType[]): Body {
  const byHole = new Map<number, number[]>()
  entries.forEach((e, k) => {
    byHole.set(e.hole, [...(byHole.get(e.hole) ?? []), k])
  })
  const holes = model.holes.flatMap((h, i) => (h.layers.includes(part) ? [i] : []))
  const layers = holes.map((h) => byHole.get(h) ?? [])
  const own = layers.map((ks) => ks.findIndex((k) => entries[k].part === part))
  const of = (h: number): FastenerType => fasteners[model.holes[h].row]
  const reach = (h: number): number => (of(h).hole - largestShank(of(h))) / 2
  const m = meeting(
    holes.map((h) => [model.holes[h].x, model.holes[h].y] as const),
    holes.map(reach),
    holes.map((h, i) => layers[i].slice(1).map(() => reach(h))),
  )
  const extent = (v: Float64Array): number => Math.max(...v) - Math.min(...v)
  return {
    m,
    hole: Int32Array.from(holes),
    own: Int32Array.from(layers, (ks, i) => ks[own[i]]),
    others: Int32Array.from(layers.flatMap((ks, i) => ks.filter((_, l) => l !== own[i]))),
    // every pilot within the final hole drilled round the middle of them all: radius of the circle round them (hole - pilot) / 2
    pilot: Float64Array.from(holes, (h) => (largestShank(of(h)) - of(h).pilot) / 2),
    stands: new Uint8Array(holes.length),
    slotAlongX: extent(m.x) >= extent(m.y),
  }
}
