import { describe, expect, it } from 'vitest'
import { cross, dot, length, sub, type Vec3 } from '../../maths/vec.js'
import { cutPlane, cutRange } from './cut.js'
import { axesOf, fittedTo, START, slidBy, type Turned, turnedBy, zoomedBy } from './turned.js'

const at: Turned = { ...START, centre: [4, 0.2, 0.9], perPixel: 0.005 }
/** Where a place lies in the picture, in pixels right and up of its middle. */
const seen = (now: Turned, p: Vec3): readonly [number, number] => {
  const { right, up } = axesOf(now)
  const from = sub(p, now.centre)
  return [dot(from, right) / now.perPixel, dot(from, up) / now.perPixel]
}

describe('the coach turned', () => {
  it('keeps three directions square to each other, however it is turned', () => {
    for (const yaw of [-3, 0, 1.2])
      for (const pitch of [-1.5, 0.3, Math.PI / 2]) {
        const { right, up, ahead } = axesOf({ yaw, pitch })
        expect(length(sub(cross(right, up), [-ahead[0], -ahead[1], -ahead[2]]))).toBeLessThan(1e-12)
        expect(length(right)).toBeCloseTo(1, 12)
        expect(up[2]).toBeGreaterThanOrEqual(-1e-12)
      }
  })
  it('shows the left side with the nose to the left, the plan with it as well, and does not turn over', () => {
    const { right, up } = axesOf({ yaw: 0, pitch: 0 })
    expect([right[0], up[2]]).toEqual([1, 1])
    const over = turnedBy(at, 0, 9)
    expect(over.pitch).toBe(Math.PI / 2)
    expect(axesOf(over).ahead[2]).toBe(-1)
  })
  it('zooms about the place under the pointer, and slides with it', () => {
    const p: Vec3 = [5, -1, 1.4]
    const [x, y] = seen(at, p)
    const near = seen(zoomedBy(at, 3, x, y), p)
    expect(near[0]).toBeCloseTo(x, 9)
    expect(near[1]).toBeCloseTo(y, 9)
    const slid = seen(slidBy(at, 30, 12), p)
    expect(slid[0]).toBeCloseTo(x + 30, 9)
    expect(slid[1]).toBeCloseTo(y - 12, 9)
  })
  it('fits all of it into the picture, and fills it one way', () => {
    const points: Vec3[] = [
      [2, -1.2, -0.5],
      [8, 1.2, 2.1],
      [2, 1.2, 2],
      [5, -1, 0],
    ]
    const fitted = fittedTo(at, points, 900, 300)
    const places = points.map((p) => seen(fitted, p))
    const most = [Math.max(...places.map(([x]) => Math.abs(x))) / 450, Math.max(...places.map(([, y]) => Math.abs(y))) / 150]
    expect(Math.max(...most)).toBeLessThan(1)
    expect(Math.max(...most)).toBeGreaterThan(0.8)
    expect(fittedTo(at, [], 900, 300).perPixel).toBeGreaterThan(0)
  })
})

describe('a cut', () => {
  it('takes away what stands before it, from whichever side one looks', () => {
    // looking from the left, to the right: what lies to the left of it goes
    const plane = cutPlane('along', 0.3, [0, 1, 0])
    const isGone = (p: Vec3): boolean => dot(plane.normal, p) > plane.at
    expect(isGone([0, -1, 0])).toBe(true)
    expect(isGone([0, 0.4, 0])).toBe(false)
    const back = cutPlane('along', 0.3, [0, -1, 0])
    expect(dot(back.normal, [0, 1, 0]) > back.at).toBe(true)
    expect(cutPlane('level', 1, [0, 0, -1])).toEqual({ normal: [0, 0, 1], at: 1 })
  })
  it('may stand as far as the things reach', () => {
    expect(cutRange('across', [Float32Array.from([2, 0, 0, 7, 0, 0]), Float32Array.from([3, -1, 2])])).toEqual([2, 7])
    expect(cutRange('level', [Float32Array.from([3, -1, 2, 3, -1, -0.5])])).toEqual([-0.5, 2])
    expect(cutRange('along', [])).toEqual([0, 1])
  })
})
