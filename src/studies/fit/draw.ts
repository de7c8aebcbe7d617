/** Draws, trial after trial, how far every layer of every hole of a joint lies from where it was drawn. See errors.ts. */
import type { ProcessDefinition } from '../../definition/types.js'
import { even, type Generator } from '../../maths/chance/generator.js'
import { fillNormals } from '../../maths/chance/normal.js'
import { type Carry, carriesOf, depthOf, type Entry, growth, jigGrowth, type PartErrors, partErrors } from './errors.js'
import type { FitModel } from './model.js'

export interface Drawing {
  /** displacements of the entries, m, as the last `next` left them */
  readonly offX: Float64Array
  readonly offY: Float64Array
  next(state: Generator): void
}

/** Entries of one part with the same sheets under them: they share scale, shift and depth, and differ by place alone. */
interface Kin {
  readonly part: number
  readonly under: readonly number[]
}

interface Places {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly turn: Float64Array
  readonly kin: Int32Array
  /** scatter of the layer about the mean of those before it in its hole, m; 0 for the first */
  readonly about: Float64Array
  /** how far that mean goes towards the layer, 1 / number of layers so far */
  readonly share: Float64Array
}

/** Scale and shift of each kin in this trial, and how far out its middle lies. */
interface Moved {
  readonly scaleX: Float64Array
  readonly scaleY: Float64Array
  readonly shiftX: Float64Array
  readonly shiftY: Float64Array
  readonly depth: Float64Array
}

/** Layers punched at a time: few enough that their deviates stay in the nearest cache. */
const BLOCK = 512

export function drawing(model: FitModel, entries: readonly Entry[], process: ProcessDefinition): Drawing {
  const errors = partErrors(model, process)
  const { places, kin } = placesOf(entries, process.punchSigma)
  const n = entries.length
  const [offX, offY] = [new Float64Array(n), new Float64Array(n)]
  const perKin = (): Float64Array => new Float64Array(kin.length)
  const moved: Moved = { scaleX: perKin(), scaleY: perKin(), shiftX: perKin(), shiftY: perKin(), depth: perKin() }
  const once = new Float64Array(4 * errors.length)
  const parts: PartDraw = {
    scaleX: new Float64Array(errors.length),
    scaleY: new Float64Array(errors.length),
    shiftX: new Float64Array(errors.length),
    shiftY: new Float64Array(errors.length),
    thick: new Float64Array(errors.length),
  }
  const carries = carriesOf(model, entries)
  const blocks = blocksOf(entries)
  const struck = blocks.slice(1).map((to, b) => places.about.subarray(blocks[b], to).filter((scatter) => scatter > 0).length)
  const punched = new Float64Array(2 * Math.max(...struck))
  return {
    offX,
    offY,
    next(state) {
      drawParts(state, process, errors, once, parts)
      carry(carries, parts)
      for (let k = 0; k < kin.length; k++) {
        const { part, under } = kin[k]
        moved.scaleX[k] = parts.scaleX[part]
        moved.scaleY[k] = parts.scaleY[part]
        moved.shiftX[k] = parts.shiftX[part]
        moved.shiftY[k] = parts.shiftY[part]
        moved.depth[k] = depthOf(parts.thick, part, under)
      }
      for (let b = 0; b + 1 < blocks.length; b++) {
        const from = blocks[b]
        const to = blocks[b + 1]
        fillNormals(state, punched, 2 * struck[b])
        displace(places, moved, punched, from, to, offX, offY)
      }
    },
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
 * as if every layer had been drawn (Helmert), with a pair of deviates fewer a hole. A block begins with a first layer.
 */
function displace(
  { x, y, turn, kin, about, share }: Places,
  { scaleX, scaleY, shiftX, shiftY, depth }: Moved,
  punched: Float64Array,
  from: number,
  to: number,
  offX: Float64Array,
  offY: Float64Array,
): void {
  let meanX = 0
  let meanY = 0
  for (let k = from, j = 0; k < to; k++) {
    const s = kin[k]
    let px = 0
    let py = 0
    if (about[k] > 0) {
      const dx = about[k] * punched[j]
      const dy = about[k] * punched[j + 1]
      j += 2
      px = meanX + dx
      py = meanY + dy
      meanX += share[k] * dx
      meanY += share[k] * dy
    } else {
      meanX = 0
      meanY = 0
    }
    offX[k] = px + scaleX[s] * x[k] + shiftX[s]
    offY[k] = py + scaleY[s] * y[k] + shiftY[s] - turn[k] * depth[s]
  }
}

/** Where the blocks begin and the last ends, none of them parting the layers of a hole. */
function blocksOf(entries: readonly Entry[]): readonly number[] {
  const out = [0]
  entries.forEach((e, k) => {
    if (k > 0 && e.hole !== entries[k - 1].hole && k - out[out.length - 1] >= BLOCK) out.push(k)
  })
  return [...out, entries.length]
}

function placesOf(entries: readonly Entry[], punch: number): { readonly places: Places; readonly kin: readonly Kin[] } {
  const known = new Map<string, number>()
  const kin: Kin[] = []
  const index = Int32Array.from(entries, ({ part, under }) => {
    const key = `${part}|${under.join()}`
    const at = known.get(key) ?? kin.push({ part, under }) - 1
    known.set(key, at)
    return at
  })
  const layer = layersOf(entries)
  const places = {
    x: Float64Array.from(entries, (e) => e.X),
    y: Float64Array.from(entries, (e) => e.Y),
    turn: Float64Array.from(entries, (e) => e.turn),
    kin: index,
    about: Float64Array.from(layer, (l) => (l === 0 ? 0 : punch * Math.sqrt(1 + 1 / l))),
    share: Float64Array.from(layer, (l) => 1 / (l + 1)),
  }
  return { places, kin }
}

/** How many layers of its hole stand before each entry. */
function layersOf(entries: readonly Entry[]): readonly number[] {
  let layer = 0
  return entries.map((e, k) => {
    layer = k > 0 && e.hole === entries[k - 1].hole ? layer + 1 : 0
    return layer
  })
}
