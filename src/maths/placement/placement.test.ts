import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { chance } from '../../../tests/random.js'
import { type Alike, alike, FITS, type Found, judge, SHORT, TOO_SHORT } from './alike.js'
import { type Discs, discs, shortfall } from './common-disc.js'
import { boundBySquares, leastSquares, leastSquaresOf } from './least-squares.js'
import { type Meeting, meeting, shortAt } from './meeting.js'
import { minimax } from './minimax.js'

function lay(list: readonly (readonly [number, number, number])[]): Discs {
  const d = discs(list.length)
  d.n = list.length
  list.forEach(([x, y, r], i) => {
    d.x[i] = x
    d.y[i] = y
    d.r[i] = r
  })
  return d
}
/** Least of a convex function on an interval by thirds. */
function least(f: (v: number) => number, from: number, to: number, steps: number): number {
  let [a, b] = [from, to]
  for (let i = 0; i < steps; i++) {
    const [p, q] = [a + (b - a) / 3, b - (b - a) / 3]
    if (f(p) < f(q)) b = q
    else a = p
  }
  return f((a + b) / 2)
}
const byThirds = (list: readonly (readonly [number, number, number])[]): number =>
  least((px) => least((py) => Math.max(...list.map(([x, y, r]) => Math.hypot(px - x, py - y) - r)), -3, 3, 90), -3, 3, 90)

describe('a common point of a few discs', () => {
  it('of two: half the distance less both radii', () => {
    expect(
      shortfall(
        lay([
          [0, 0, 1],
          [3, 4, 2],
        ]),
      ),
    ).toBeCloseTo((5 - 3) / 2, 12)
  })
  it('of two, one in the other: only the smaller can run out', () => {
    expect(
      shortfall(
        lay([
          [0, 0, 2],
          [0.1, 0, 0.5],
        ]),
      ),
    ).toBeCloseTo(-0.5, 12)
  })
  it('of three alike: the smallest circle, 1/√3 round an equilateral triangle of side 1', () => {
    const triangle = [
      [0, 0, 0],
      [1, 0, 0],
      [0.5, Math.sqrt(0.75), 0],
    ] as const
    expect(shortfall(lay(triangle))).toBeCloseTo(1 / Math.sqrt(3), 12)
  })
  it('of three with an obtuse angle: half the longest side', () => {
    expect(
      shortfall(
        lay([
          [0, 0, 0],
          [2, 0, 0],
          [1, 0.3, 0],
        ]),
      ),
    ).toBeCloseTo(1, 12)
  })
  it('of two to five at random, radii alike and unlike: the same as a search of the plane', () => {
    const random = chance(5)
    for (let trial = 0; trial < count(25); trial++) {
      const alike = random.between(0, 1)
      const list = Array.from(
        { length: random.whole(2, 5) },
        () => [random.between(-1, 1), random.between(-1, 1), trial % 2 === 0 ? alike : random.between(0, 1)] as const,
      )
      expect(shortfall(lay(list))).toBeCloseTo(byThirds(list), 7)
    }
  })
  it('moves with its first disc as the pull says', () => {
    const random = chance(6)
    for (let trial = 0; trial < count(40); trial++) {
      const list = Array.from(
        { length: random.whole(2, 4) },
        () => [random.between(-1, 1), random.between(-1, 1), random.between(0, 0.3)] as const,
      )
      const d = lay(list)
      shortfall(d)
      const [gx, gy] = d.pull
      const moved = (dx: number, dy: number): number => shortfall(lay([[list[0][0] + dx, list[0][1] + dy, list[0][2]], ...list.slice(1)]))
      const h = 1e-6
      expect((moved(h, 0) - moved(-h, 0)) / (2 * h)).toBeCloseTo(gx, 5)
      expect((moved(0, h) - moved(0, -h)) / (2 * h)).toBeCloseTo(gy, 5)
    }
  })
})

function made(seed: number, holes: number, mates: number, flat: number): Meeting {
  const random = chance(seed)
  const places = Array.from({ length: holes }, () => [random.between(-1, 1), flat * random.between(-1, 1)] as const)
  const m = meeting(
    places,
    places.map(() => random.between(0, 0.02)),
    places.map(() => Array.from({ length: random.whole(1, mates) }, () => random.between(0, 0.02))),
  )
  for (let i = 0; i < holes; i++) {
    m.bodyX[i] = random.between(-0.1, 0.1) + 0.05
    m.bodyY[i] = random.between(-0.1, 0.1) - 0.03 * places[i][0]
  }
  for (let k = 0; k < m.otherX.length; k++) {
    m.otherX[k] = random.between(-0.05, 0.05)
    m.otherY[k] = random.between(-0.05, 0.05)
  }
  return m
}
const largest = (m: Meeting, x: number, y: number, turn: number): number =>
  Math.max(...Array.from({ length: m.holes }, (_, i) => shortAt(m, i, x, y, turn)))

/** The holes of a meeting as lists of alike ones, runs with one count of others in a list of their own; `reach` and `allowed` by list. */
function listed(m: Meeting, of: (list: number) => { readonly reach: number; readonly allowed: number }) {
  const centres: number[] = []
  const lists: Alike[] = []
  const others = (i: number): number => m.first[i + 1] - m.first[i]
  for (let first = 0, to = 0; first < m.holes; first = to) {
    for (to = first + 1; to < m.holes && others(to) === others(first); ) to++
    // the body's layer outermost, in the middle and innermost by turns
    const own = lists.length % (others(first) + 1)
    const at = Array.from({ length: others(first) + 1 }, (_, l) => centres.length + 2 * l)
    const where = { first, count: to - first, own: at[own], others: at.filter((_, l) => l !== own), step: 2 * at.length }
    const { reach, allowed } = of(lists.length)
    lists.push(alike(where, { reach, allowed }))
    for (let i = first; i < to; i++) {
      m.bodyR[i] = reach
      m.otherR.fill(reach, m.first[i], m.first[i + 1])
      const layers = Array.from({ length: others(i) }, (_, j) => [m.otherX[m.first[i] + j], m.otherY[m.first[i] + j]])
      layers.splice(own, 0, [m.bodyX[i], m.bodyY[i]])
      centres.push(...layers.flat())
    }
  }
  const places = Float64Array.from({ length: 2 * m.holes }, (_, k) => (k % 2 === 0 ? m.x : m.y)[k >> 1])
  return { lists, centres: Float64Array.from(centres), places }
}

describe('the least-squares placement', () => {
  it('takes out a shift and a rotation whole', () => {
    const m = made(1, 9, 1, 0.3)
    for (let i = 0; i < 9; i++) {
      m.bodyX[i] = 0.02 - 0.01 * m.y[i]
      m.bodyY[i] = -0.04 + 0.01 * m.x[i]
      m.otherX[i] = 0
      m.otherY[i] = 0
    }
    const placed = leastSquares(m)
    expect([placed.shiftX, placed.shiftY, placed.turn]).toEqual([0.02, -0.04, 0.01].map((v) => expect.closeTo(v, 12)))
  })
  it('leaves a stretch: along a row of three it is the stretch itself at the ends', () => {
    const m = meeting(
      [
        [-1, 0],
        [0, 0],
        [1, 0],
      ],
      [0, 0, 0],
      [[0], [0], [0]],
    )
    m.bodyX.set([-0.3, 0, 0.3])
    const placed = leastSquares(m)
    expect(shortAt(m, 2, placed.shiftX, placed.shiftY, placed.turn)).toBeCloseTo(0.15, 12)
  })
  it('has the least squares of all placements tried', () => {
    const m = made(2, 12, 1, 0.4)
    const squares = (x: number, y: number, turn: number): number => {
      let sum = 0
      for (let i = 0; i < 12; i++) {
        sum += (m.bodyX[i] - m.otherX[i] - x + turn * m.y[i]) ** 2 + (m.bodyY[i] - m.otherY[i] - y - turn * m.x[i]) ** 2
      }
      return sum
    }
    const { shiftX, shiftY, turn } = leastSquares(m)
    for (const [dx, dy, dt] of [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
      [1, 1, -1],
    ]) {
      expect(squares(shiftX + dx * 1e-4, shiftY + dy * 1e-4, turn + dt * 1e-4)).toBeGreaterThan(squares(shiftX, shiftY, turn))
    }
  })
  it('of holes in lists of alike ones is the same', () => {
    for (let seed = 1; seed <= count(10); seed++) {
      const m = made(seed, 20, 3, 0.2)
      const { lists, centres, places } = listed(m, () => ({ reach: 0.01, allowed: 0 }))
      expect(lists.length).toBeGreaterThan(3)
      const [one, other] = [leastSquares(m), leastSquaresOf(lists, centres, places, m.spread)]
      for (const key of ['shiftX', 'shiftY', 'turn'] as const) expect(other[key]).toBeCloseTo(one[key], 14)
    }
  })
  it('bounds the largest shortfall of every placement', () => {
    let nearest = Infinity
    for (let seed = 1; seed <= count(30); seed++) {
      const m = made(seed, 7, 3, 0.2)
      const random = chance(100 + seed)
      const { lists, centres, places } = listed(m, () => ({ reach: random.between(0, 0.02), allowed: 0 }))
      const placed = leastSquares(m)
      const { largest } = minimax(m, placed, 1e-9)
      const bound = boundBySquares(lists, centres, places, placed)
      expect(bound).toBeLessThanOrEqual(largest + 1e-12)
      nearest = Math.min(nearest, (largest - bound) / largest)
    }
    // and is of use: most trials of a long joint are settled by it
    expect(nearest).toBeLessThan(0.5)
  })
})

describe('how holes stand', () => {
  it('is the sign of the shortfall, and of the shortfall less what is allowed', () => {
    const seen = [0, 0, 0]
    const found: Found = { misfits: 0, tooShort: 0 }
    for (let seed = 1; seed <= count(40); seed++) {
      const m = made(seed, 40, 4, 0.2)
      const placed = { shiftX: 0.05, shiftY: 0, turn: -0.03 }
      const random = chance(200 + seed)
      // now and then a pin larger than its hole, which nothing but growing mends
      const { lists, centres, places } = listed(m, () => ({ reach: random.between(-0.005, 0.06), allowed: random.between(0, 0.06) }))
      const out = new Uint8Array(40)
      for (const list of lists) {
        judge(list, centres, places, placed, m.work, out, found)
        const mine = out.subarray(list.first, list.first + list.count)
        expect(found).toEqual({ misfits: mine.filter((s) => s !== FITS).length, tooShort: mine.filter((s) => s === TOO_SHORT).length })
        mine.forEach((stand, i) => {
          const t = shortAt(m, list.first + i, 0.05, 0, -0.03)
          const expected = t > list.allowed ? TOO_SHORT : t > 0 ? SHORT : FITS
          expect(stand, `hole ${list.first + i} of ${seed}, short by ${t}`).toBe(expected)
          seen[expected]++
        })
      }
    }
    // every answer is given often enough to count as tried
    expect(Math.min(...seen)).toBeGreaterThan(count(40) * 4)
  })
})

describe('the minimax placement', () => {
  it('of three holes off by a triangle’s corners: the circle round them, no rotation helping', () => {
    // all holes in one point: only a shift is free, so it is the smallest circle round the three misses
    const m = meeting(
      [
        [0, 0],
        [0, 0],
        [0, 0],
      ],
      [0, 0, 0],
      [[0], [0], [0]],
    )
    m.bodyX.set([0, 1, 0.5])
    m.bodyY.set([0, 0, Math.sqrt(0.75)])
    expect(2 * minimax(m, leastSquares(m), 1e-10).largest).toBeCloseTo(1 / Math.sqrt(3), 9)
  })
  it('of a stretched row is half the stretch each side', () => {
    const m = meeting(
      [
        [-1, 0],
        [-0.9, 0],
        [-0.8, 0],
        [1, 0],
      ],
      [0, 0, 0, 0],
      [[0], [0], [0], [0]],
    )
    for (let i = 0; i < 4; i++) m.bodyX[i] = 0.1 * m.x[i]
    expect(2 * minimax(m, leastSquares(m), 1e-10).largest).toBeCloseTo(0.1, 9)
  })
  it('is proved from both sides, and is what a search of all placements finds', () => {
    for (let seed = 1; seed <= count(2); seed++) {
      const m = made(seed, 5, 3, 0.5)
      const best = minimax(m, leastSquares(m), 1e-9)
      expect(best.largest - best.bound).toBeLessThanOrEqual(1e-9)
      const found = least((x) => least((y) => least((turn) => largest(m, x, y, turn), -0.3, 0.3, 30), -0.3, 0.3, 30), -0.3, 0.3, 30)
      expect(best.largest).toBeCloseTo(found, 4)
      expect(best.largest).toBeLessThanOrEqual(found + 1e-9)
    }
  })
  it('closes on long rows, one to three others a hole, from any start', () => {
    for (let seed = 1; seed <= count(20); seed++) {
      const m = made(seed, 200, 1 + (seed % 3), seed % 2 === 0 ? 0.001 : 0)
      const best = minimax(m, leastSquares(m), 1e-7)
      expect(best.largest - best.bound).toBeLessThanOrEqual(1e-7)
      expect(best.steps).toBeLessThan(120)
      expect(largest(m, best.shiftX, best.shiftY, best.turn)).toBeCloseTo(best.largest, 12)
    }
  })
  it('never does worse than least squares, and settles the sign alone sooner', () => {
    for (let seed = 1; seed <= count(30); seed++) {
      const m = made(seed, 20, 2, 0.3)
      for (const radius of [m.bodyR, m.otherR]) for (let k = 0; k < radius.length; k++) radius[k] += 0.06
      const start = leastSquares(m)
      const whole = minimax(m, start, 1e-10)
      const sign = minimax(m, start)
      expect(whole.largest).toBeLessThanOrEqual(largest(m, start.shiftX, start.shiftY, start.turn) + 1e-12)
      expect(sign.largest <= 0).toBe(whole.largest <= 0)
      expect(sign.steps).toBeLessThanOrEqual(whole.steps)
    }
  })
})
