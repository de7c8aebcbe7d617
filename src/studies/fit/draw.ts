/** Draws, trial after trial, how far every layer of every hole of a joint lies from where it was drawn. See errors.ts. */
import type { ProcessDefinition } from '../../definition/types.js'
import { even, type Generator } from '../../maths/chance/generator.js'
import { fillNormals } from '../../maths/chance/normal.js'
import { type Carry, carriesOf, depthOf, type Entry, entriesOf, growth, jigGrowth, type PartErrors, partErrors } from './errors.js'
import type { FitModel } from './model.js'
import { once } from './once.js'

export interface Drawing {
  /** displacements of the entries, m, as the last `next` left them: x and y of each in turn */
  readonly centres: Float64Array
  next(state: Generator): void
}

/** Entries of one part with the same sheets under them: they share scale, shift and depth, and differ by place alone. */
interface Kin {
  readonly part: number
  readonly under: readonly number[]
}

/** What a trial reads in the order in which it is read: few lists, each of several figures, are half the time of many. */
interface Places {
  /** entries of hole h are first[h] to first[h + 1] */
  readonly first: Int32Array
  /** x, y and turn of each entry */
  readonly at: Float64Array
  /** where the figures of its kin begin */
  readonly kin: Int32Array
}

/** Figures of a kin in this trial: scale along x and y, shift along x and y, and how far out its middle lies. */
const FIGURES = 5

/** Layers punched at a time: few enough that their deviates stay in the nearest cache. */
const BLOCK = 512

export function drawing(model: FitModel, process: ProcessDefinition): Drawing {
  const errors = partErrors(model, process)
  const entries = entriesOf(model)
  const { places, kin } = placesOf(entries)
  const centres = new Float64Array(2 * entries.length)
  const moved = new Float64Array(FIGURES * kin.length)
  const once = new Float64Array(4 * errors.length)
  const parts: PartDraw = {
    scaleX: new Float64Array(errors.length),
    scaleY: new Float64Array(errors.length),
    shiftX: new Float64Array(errors.length),
    shiftY: new Float64Array(errors.length),
    thick: new Float64Array(errors.length),
  }
  const carries = carriesOf(model)
  const scatter = scatterOf(process.punchSigma, Math.max(...model.holes.map((h) => h.layers.length)))
  const blocks = blocksOf(places.first)
  /** the first layer of a hole is struck true, and each other one takes two deviates */
  const struck = (from: number, to: number): number => 2 * (places.first[to] - places.first[from] - (to - from))
  const punched = new Float64Array(Math.max(...blocks.map(([from, to]) => struck(from, to))))
  return {
    centres,
    next(state) {
      drawParts(state, process, errors, once, parts)
      carry(carries, parts)
      move(kin, parts, moved)
      for (const [from, to] of blocks) {
        fillNormals(state, punched, struck(from, to))
        displace(places, moved, punched, scatter, from, to, centres)
      }
    },
  }
}

function move(kin: readonly Kin[], parts: PartDraw, moved: Float64Array): void {
  for (let k = 0, s = 0; k < kin.length; k++, s += FIGURES) {
    const { part, under } = kin[k]
    moved[s] = parts.scaleX[part]
    moved[s + 1] = parts.scaleY[part]
    moved[s + 2] = parts.shiftX[part]
    moved[s + 3] = parts.shiftY[part]
    moved[s + 4] = depthOf(parts.thick, part, under)
  }
}

interface PartDraw {
  readonly scaleX: Float64Array
  readonly scaleY: Float64Array
  readonly shiftX: Float64Array
  readonly shiftY: Float64Array
  readonly thick: Float64Array
}

/** What is drawn once a part and a coach. */
function drawParts(state: Generator, process: ProcessDefinition, errors: readonly PartErrors[], once: Float64Array, to: PartDraw): void {
  const [sheetFrom, sheetTo] = process.sheetTempC
  const [jigFrom, jigTo] = process.jigTempC
  const assemblyC = jigFrom + (jigTo - jigFrom) * even(state)
  const jig = jigGrowth(assemblyC)
  fillNormals(state, once, once.length)
  for (let p = 0; p < errors.length; p++) {
    const e = errors[p]
    const own = growth(e.cte, assemblyC, sheetFrom + (sheetTo - sheetFrom) * even(state))
    const drift = e.drift * once[4 * p]
    to.scaleX[p] = e.jigX ? jig : own + (e.along === 'x' ? drift : 0)
    to.scaleY[p] = e.jigY ? jig : own + (e.along === 'y' ? drift : 0)
    to.thick[p] = e.thickness * once[4 * p + 1]
    to.shiftX[p] = e.jig * once[4 * p + 2]
    to.shiftY[p] = e.jig * once[4 * p + 3]
  }
}

function carry(carries: readonly Carry[], { scaleX, scaleY, shiftX, shiftY }: PartDraw): void {
  for (const { part, on, share, X, Y } of carries) {
    shiftX[part] += share * (scaleX[on] * X + shiftX[on])
    shiftY[part] += share * (scaleY[on] * Y + shiftY[on])
  }
}

/**
 * Only how the layers of a hole lie to each other can matter, so the first is taken as struck true and each other one is drawn
 * about the mean of those before it, with variance 1 + 1/k for the kth after the first: their differences are scattered just
 * as if every layer had been drawn (Helmert), with a pair of deviates fewer a hole.
 */
function displace(
  { first, at, kin }: Places,
  moved: Float64Array,
  punched: Float64Array,
  scatter: Float64Array,
  from: number,
  to: number,
  centres: Float64Array,
): void {
  let k = first[from]
  let j = 0
  for (let hole = from; hole < to; hole++) {
    const end = first[hole + 1]
    let px = 0
    let py = 0
    let meanX = 0
    let meanY = 0
    for (let l = 0; ; l += 2) {
      const s = kin[k]
      const turn = at[3 * k + 2]
      centres[2 * k] = px + moved[s] * at[3 * k] + moved[s + 2]
      centres[2 * k + 1] = py + moved[s + 1] * at[3 * k + 1] + moved[s + 3] - turn * moved[s + 4]
      k++
      if (k === end) break
      const dx = scatter[l] * punched[j]
      const dy = scatter[l] * punched[j + 1]
      j += 2
      px = meanX + dx
      py = meanY + dy
      meanX += scatter[l + 1] * dx
      meanY += scatter[l + 1] * dy
    }
  }
}

/** Of the kth layer after the first: its scatter about the mean of those before it, m, and how far that mean then goes towards it. */
function scatterOf(punch: number, layers: number): Float64Array {
  const out = new Float64Array(2 * (layers - 1))
  for (let k = 1; k < layers; k++) out.set([punch * Math.sqrt(1 + 1 / k), 1 / (k + 1)], 2 * (k - 1))
  return out
}

/** Holes of each block, none of them parted. */
function blocksOf(first: Int32Array): readonly (readonly [from: number, to: number])[] {
  const out: (readonly [number, number])[] = []
  const holes = first.length - 1
  for (let from = 0, to = 0; from < holes; from = to) {
    while (to < holes && first[to] - first[from] < BLOCK) to++
    out.push([from, to])
  }
  return out
}

const placesOf = once((entries: readonly Entry[]): { readonly places: Places; readonly kin: readonly Kin[] } => {
  const known = new Map<string, number>()
  const kin: Kin[] = []
  const index = Int32Array.from(entries, ({ part, under }) => {
    const key = `${part}|${under.join()}`
    const at = known.get(key) ?? kin.push({ part, under }) - 1
    known.set(key, at)
    return FIGURES * at
  })
  const begins = entries.flatMap((e, k) => (k === 0 || e.hole !== entries[k - 1].hole ? [k] : []))
  const at = Float64Array.from(entries.flatMap((e) => [e.X, e.Y, e.turn]))
  return { places: { first: Int32Array.of(...begins, entries.length), at, kin: index }, kin }
})
