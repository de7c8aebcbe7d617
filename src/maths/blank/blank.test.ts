import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { coned, domedGore, rolled, sphereStrip } from '../../../tests/made-up-patches.js'
import { chance } from '../../../tests/random.js'
import { type Blank, blankOf, meshConvergence } from './blank.js'
import { energyOf } from './energy.js'
import { inBlank, strainAt } from './in-blank.js'
import { meshOf, type Patch } from './mesh.js'
import { TOLERANCE } from './minimise.js'
import { developed } from './start.js'

type Shape = (u: number, v: number) => readonly [number, number]

/** The shape moved and turned so that its mid line starts at the origin and its chord runs along +x. */
function straight(shape: Shape): Shape {
  const [[x0, y0], [x1, y1]] = [shape(0.5, 0), shape(0.5, 1)]
  const turn = Math.atan2(y1 - y0, x1 - x0)
  return (u, v) => {
    const [x, y] = shape(u, v)
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    return [c * (x - x0) + s * (y - y0), c * (y - y0) - s * (x - x0)]
  }
}
function furthest(blank: Blank, shape: Shape): number {
  const wanted = straight(shape)
  return Math.max(
    ...blank.x.map((x, node) => {
      const [u, v] = [blank.stops[node % (blank.across + 1)], Math.floor(node / (blank.across + 1)) / blank.along]
      const [a, b] = wanted(u, v)
      return Math.hypot(x - a, blank.y[node] - b)
    }),
  )
}
const signedAreas = ({ x, y, triangles }: Blank): readonly number[] =>
  Array.from({ length: triangles.length / 3 }, (_, t) => {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]]
    return ((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2
  })

// a sheet that narrows and leans: 1.5 long, 0.8 to 0.2 wide, laid at an angle to the axis it is rolled about
const leaning =
  (lean: number): Shape =>
  (u, v) => {
    const [x, y] = [1.5 * v, (u - 0.5) * (0.8 - 0.6 * v) + 0.1 * v * v]
    return [Math.cos(lean) * x - Math.sin(lean) * y, Math.sin(lean) * x + Math.cos(lean) * y]
  }
const polar: Shape = (u, v) => [0.6 + 1.2 * v, 0.5 * u]
const inPlane: Shape = (u, v) => {
  const [slant, angle] = polar(u, v)
  return [slant * Math.cos(angle), slant * Math.sin(angle)]
}

describe('developable patches come out as what was rolled up, without strain (isometry, exact)', () => {
  const cases: readonly (readonly [string, Patch, Shape])[] = [
    ...[0, 0.4, 1.2].map((lean) => [`cylinder, sheet at ${lean} rad`, rolled(0.6, leaning(lean)), leaning(lean)] as const),
    ['cone', coned(0.5, polar), inPlane],
  ]
  it.each(cases)('%s', (_, patch, shape) => {
    const blank = blankOf(patch, { across: 8, along: 24 })
    expect(blank.converged).toBe(true)
    // what is left is the fourth order of a step that turns a tenth of a radian
    expect(furthest(blank, shape)).toBeLessThan(2e-6)
    expect(Math.max(blank.peakStretch, blank.peakShrink, blank.thinning)).toBeLessThan(5e-6)
  })
})

/**
 * Narrow strip of half-width b along a geodesic of a surface of curvature K, D: derived. A line at distance y is shorter than the
 * mid line by K y^2 / 2, so in a straight blank e(y) = K (a^2 - y^2) / 2, and cross lines keep their lengths. Cost is least where the
 * integral of e over the stretched part equals P times that over the shrunk parts: 2 t^3 = P (1 - t)^2 (1 + 2 t) with t = a / b.
 */
function stretchedShare(P: number): number {
  let [low, high] = [0, 1]
  for (let k = 0; k < 60; k++) {
    const t = (low + high) / 2
    if (2 * t ** 3 < P * (1 - t) ** 2 * (1 + 2 * t)) low = t
    else high = t
  }
  return low
}

describe('a narrow strip of a sphere against the closed form', () => {
  const b = 0.05
  const strip = (P: number): Blank => blankOf(sphereStrip(b, 0.6), { across: 24, along: 96, shrinkPenalty: P })

  it('shares K b^2/2 as K b^2/6 of stretch in the middle and K b^2/3 of shrink at the edge when both cost the same', () => {
    expect(stretchedShare(1)).toBeCloseTo(1 / Math.sqrt(3), 12)
    const blank = strip(1)
    expect(Math.abs(strainAt(blank, 0.5, 0.5).major / (b ** 2 / 6) - 1)).toBeLessThan(0.02)
    expect(Math.abs(strainAt(blank, 0, 0.5).minor / (-(b ** 2) / 3) - 1)).toBeLessThan(0.04)
  })
  it('makes nearly all of it stretch when shrink costs a hundred times as much', () => {
    const [blank, t] = [strip(100), stretchedShare(100)]
    expect(Math.abs(strainAt(blank, 0.5, 0.5).major / ((b * t) ** 2 / 2) - 1)).toBeLessThan(0.02)
    // only two cells at each edge shrink at all: what they shrink by is told to 2 % of the whole spread
    expect(Math.abs(strainAt(blank, 0, 0.5).minor - (b ** 2 * (t ** 2 - 1)) / 2)).toBeLessThan((0.02 * b ** 2) / 2)
    expect(blank.peakStretch).toBeGreaterThan(5 * blank.peakShrink)
  })
  it('tends to all stretch, K b^2/2, as shrink grows dearer', () => {
    const [low, mid, high] = [1, 10, 1000].map((P) => blankOf(sphereStrip(b, 0.6), { across: 12, along: 96, shrinkPenalty: P }).meanStretch)
    expect(low).toBeLessThan(mid)
    expect(mid).toBeLessThan(high)
    // mean of the parabola that is nought at the edge: a third of K b^2
    expect(Math.abs(high / (b ** 2 / 3) - 1)).toBeLessThan(0.1)
  })
})

describe('a gore of a domed end, 25 degrees wide', () => {
  const gore = domedGore(45, 70)
  const { blank, halved, ratio } = meshConvergence(gore, { across: 16, along: 96 })

  it('converges with no triangle turned over, 4 to 5 % at its peak, and halving moves the peak less than 5 %', () => {
    for (const each of [blank, halved]) {
      expect(each.converged).toBe(true)
      expect(each.residual).toBeLessThanOrEqual(TOLERANCE)
      expect(Math.min(...signedAreas(each))).toBeGreaterThan(0)
      expect(signedAreas(each).reduce((a, c) => a + c)).toBeCloseTo(each.areaFlat, 12)
    }
    expect(Math.abs(ratio - 1)).toBeLessThan(0.05)
    expect(halved.peakStretch).toBeGreaterThan(0.04)
    expect(halved.peakStretch).toBeLessThan(0.05)
    expect(blank.areaFlat).toBeLessThan(blank.areaFormed)
    expect(blank.thinning).toBeGreaterThan(blank.peakStretch * 0.9)
  })
  it('costs more wherever its nodes are moved a little', () => {
    const mesh = meshOf(gore, { across: 16, along: 96 })
    const { between } = chance(3)
    const plane = Float64Array.from(blank.x.flatMap((x, k) => [x, blank.y[k]]))
    expect(energyOf(mesh, plane, 100)).toBeCloseTo(blank.energy, 14)
    for (let k = 0; k < count(10); k++) {
      // waves as well as noise: noise alone never tries the soft ways
      const [a, c, size] = [between(1, 9), between(0, 6), 10 ** between(-5, -3)]
      const wave = plane.map((x, l) => x + size * (k % 2 === 0 ? between(-0.1, 0.1) : Math.sin(a * plane[l - (l % 2)] + c)))
      expect(energyOf(mesh, wave, 100)).toBeGreaterThan(blank.energy)
    }
  })
  it('is the same twice, and the same when the search starts from another mesh', () => {
    expect(blankOf(gore, { across: 16, along: 96 })).toEqual(blank)
    const again = blankOf(gore, { across: 16, along: 96 }, halved)
    expect(Math.max(...again.x.map((x, k) => Math.hypot(x - blank.x[k], again.y[k] - blank.y[k])))).toBeLessThan(1e-6)
  })
  it('of the other side of the coach is its mirror image', () => {
    const other = blankOf(domedGore(-45, -70), { across: 16, along: 96 })
    const swapped = blankOf(domedGore(-70, -45), { across: 16, along: 96 })
    const across = 17
    for (let node = 0; node < blank.x.length; node += 7) {
      expect(other.x[node]).toBeCloseTo(blank.x[node], 6)
      expect(other.y[node]).toBeCloseTo(blank.y[node], 6)
      const mirror = node - (node % across) + across - 1 - (node % across)
      expect(swapped.x[node]).toBeCloseTo(blank.x[mirror], 6)
      expect(swapped.y[node]).toBeCloseTo(-blank.y[mirror], 6)
    }
  })
  it('lies with its mid line from the origin along +x, and every node is found again by its u and v', () => {
    expect(inBlank(blank, 0.5, 0)).toEqual([0, 0])
    expect(inBlank(blank, 0.5, 1)[1]).toBe(0)
    expect(inBlank(blank, 0.5, 1)[0]).toBeGreaterThan(2)
    expect(inBlank(blank, 1, 0.5)[1]).toBeGreaterThan(0)
    for (let node = 0; node < blank.x.length; node += 11) {
      const [x, y] = inBlank(blank, blank.stops[node % 17], Math.floor(node / 17) / 96)
      expect(Math.hypot(x - blank.x[node], y - blank.y[node])).toBeLessThan(1e-12)
    }
  })
})

describe('places between the nodes', () => {
  it('lie right on a sheet that only was rolled', () => {
    const shape = leaning(0.4)
    const blank = blankOf(rolled(0.6, shape), { across: 8, along: 24 })
    const wanted = straight(shape)
    for (const [u, v] of [
      [0.03, 0.01],
      [0.47, 0.33],
      [0.98, 0.99],
      [1, 0.5],
    ] as const) {
      const [[x, y], [a, c]] = [inBlank(blank, u, v), wanted(u, v)]
      expect(Math.hypot(x - a, y - c)).toBeLessThan(2e-6)
    }
  })
})

describe('a patch whose development folds over itself', () => {
  // the inside of a thick ring: its mid line turns more sharply than the cross lines are long
  const ring: Patch = {
    point: (u, v) => {
      const tube = Math.PI - 2 + 2 * u
      const r = 0.6 + 0.5 * Math.cos(tube)
      return [r * Math.cos(v), r * Math.sin(v), 0.5 * Math.sin(tube)]
    },
  }
  it('is begun square, and its blank has no triangle turned over', () => {
    const mesh = meshOf(ring, { across: 12, along: 24 })
    expect(energyOf(mesh, developed(mesh), 1)).toBe(Number.POSITIVE_INFINITY)
    const blank = blankOf(ring, { across: 12, along: 24 })
    expect(blank.converged).toBe(true)
    expect(Math.min(...signedAreas(blank))).toBeGreaterThan(0)
  })
})

describe('what cannot be a blank is refused in words', () => {
  it('a mesh that is none, a shrink that is cheap, a patch that narrows to nothing', () => {
    expect(() => blankOf(sphereStrip(0.1, 1), { across: 7, along: 10 })).toThrow('the first is even')
    expect(() => blankOf(sphereStrip(0.1, 1), { across: 8, along: 10, shrinkPenalty: 0.5 })).toThrow('1 or more')
    expect(() => blankOf({ point: (u, v) => [v, v * u, 0] }, { across: 8, along: 10 })).toThrow('narrows to nothing')
  })
})
