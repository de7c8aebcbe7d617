/**
 * Normal deviates by the ziggurat (Marsaglia and Tsang, J. Stat. Software 5, 2000). Only + - × ÷, whole-number
 * mixing and a written table: no engine's exp or log, so the same seed gives the same deviates everywhere.
 */
import { even, type Generator } from './generator.js'
import { EDGE, HEIGHT, TAIL } from './ziggurat-table.js'

const edge = Float64Array.from(EDGE)
/** a layer's width in steps of the 24 bits a place is drawn with; exact, because it is a power of two */
const step = edge.map((width) => width / 2 ** 23)
const height = Float64Array.from(HEIGHT)
/** slope of the curve, x times its height, over the slope of its chord across the layer: at the layer's foot beyond 1, at its head before */
const steep = height.map((high, layer) => {
  if (layer === 0) return 0
  const [low, from, to] = [height[layer - 1], edge[layer + 1], edge[layer]]
  return ((from >= 1 ? to * low : from * high) * (to - from)) / (high - low)
})

/** Fills out[0..n) with independent deviates of mean 0 and variance 1. */
export function fillNormals(state: Generator, out: Float64Array, n: number): void {
  let a = state[0]
  let b = state[1]
  let c = state[2]
  let count = state[3]
  for (let i = 0; i < n; i++) {
    // the words of generator.ts, written out here because this loop is most of a trial
    const drawn = (((a + b) | 0) + count) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = (((c << 21) | (c >>> 11)) + drawn) | 0
    count = (count + 1) | 0
    // seven bits choose the layer and 24 others the place, its sign among them: disjoint, so that they are independent
    const layer = drawn & 127
    const x = ((drawn >> 8) + 0.5) * step[layer]
    if (Math.abs(x) < edge[layer + 1]) {
      out[i] = x
      continue
    }
    state[0] = a
    state[1] = b
    state[2] = c
    state[3] = count
    const far = layer === 0 ? beyond(state) : underCurve(state, layer, Math.abs(x))
    // a point of the layer over the curve is thrown away and drawn again
    if (Number.isNaN(far)) i--
    else out[i] = x < 0 ? -far : far
    a = state[0]
    b = state[1]
    c = state[2]
    count = state[3]
  }
  state[0] = a
  state[1] = b
  state[2] = c
  state[3] = count
}

/** Whether a point of the layer drawn at x lies under the curve: x where it does, not a number where it does not. */
function underCurve(state: Generator, layer: number, x: number): number {
  const up = even(state)
  const along = (edge[layer] - x) / (edge[layer] - edge[layer + 1])
  // beyond 1 the curve sags under its chord and stays over the tangent at its foot, before 1 it bulges over the chord and
  // stays under the tangent at its head: five points of six are settled without its height
  if (edge[layer + 1] >= 1) {
    if (up > along) return Number.NaN
    if (up < along * steep[layer]) return x
  } else if (edge[layer] <= 1) {
    if (up < along) return x
    if (up > 1 - (1 - along) * steep[layer]) return Number.NaN
  }
  const low = height[layer - 1]
  return low + up * (height[layer] - low) < falling((x * x) / 2) ? x : Number.NaN
}

/** Marsaglia's tail: two exponential deviates until twice the second exceeds the square of the first over the tail's edge. */
function beyond(state: Generator): number {
  for (;;) {
    const x = waiting(state) / TAIL
    if (2 * waiting(state) > x * x) return TAIL + x
  }
}

/** An exponential deviate of mean 1 by comparing even ones (von Neumann 1951): the length of a falling run is odd with chance exp(-x). */
function waiting(state: Generator): number {
  for (let whole = 0; ; whole++) {
    const first = even(state)
    let [last, run] = [first, 1]
    for (let next = even(state); next < last; next = even(state)) {
      last = next
      run++
    }
    if (run % 2 === 1) return whole + first
  }
}

/** exp(-y) for y from 0 to 8 by its series at y/64, squared six times; to 1e-15. */
function falling(y: number): number {
  const z = y / 64
  let [sum, term] = [1, 1]
  for (let k = 1; k <= 12; k++) {
    term *= -z / k
    sum += term
  }
  for (let k = 0; k < 6; k++) sum *= sum
  return sum
}
