/**
 * A joint tried over and over: every error drawn, every body centred, every hole looked at. The same seed and joint give
 * the same figures everywhere, whatever else was tried before: only + - × ÷ √ and a written table take part.
 */
import type { FastenerType, ProcessDefinition } from '../../definition/types.js'
import { generator } from '../../maths/chance/generator.js'
import { type Alike, FITS, judge } from '../../maths/placement/alike.js'
import { boundBySquares, leastSquaresOf } from '../../maths/placement/least-squares.js'
import type { Meeting, Placement } from '../../maths/placement/meeting.js'
import { minimax } from '../../maths/placement/minimax.js'
import { type Body, bodyOf, sharedHoles } from './bodies.js'
import { drawing } from './draw.js'
import type { FitModel } from './model.js'

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

export interface Trials {
  readonly tally: Tally
  /** `best` false leaves out the minimax placement */
  run(trials: number, best: boolean): void
}

export function trialsOf(model: FitModel, tried: Tried, seed: number): Trials {
  const drawn = drawing(model, tried.process)
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
