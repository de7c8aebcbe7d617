/** Jig data of the demonstration and of a sphere, against evaluations that share no code with the contours. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { loftBetween } from '../../maths/loft.js'
import { at, buildChain, girthAtZ, type TangentChain, widest } from '../../maths/tangent-chain.js'
import { derive } from '../index.js'
import type { RibJig } from '../jig-nouns.js'
import type { Outline } from '../nouns.js'
import { atHeight, walkContour } from './rib-contour.js'
import { profileChain } from './surface.js'

const input = readExample('sedge-6')
const six = derive(input)
const { jig, sideJig, ribs } = six.ends
const { chain } = six.shell.section
/** The section run on a little past the toe, so that slopes can be taken there too. */
const runOn = buildChain(
  { y: 0, z: input.section.crown, heading: 0 },
  six.shell.section.pieces.map((p, i, all) => (i === all.length - 1 && p.kind === 'arc' ? { ...p, to: p.to + 0.05 } : p)),
)
const mm = (metres: number): number => metres * 1000

/** Points along the arcs of a contour, `share` of them an arc, by the circle through its two ends. */
function along(outline: Outline, share: number): (readonly [number, number])[] {
  return outline.slice(0, -1).flatMap((p, i) => {
    const q = outline[i + 1]
    return Array.from({ length: share }, (_, k) => {
      const t = k / share
      const [mx, mz] = [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t]
      if (p[2] === 0) return [mx, mz] as const
      const chord = Math.hypot(q[0] - p[0], q[1] - p[1])
      const radius = (chord * (1 + p[2] * p[2])) / (4 * Math.abs(p[2]))
      // rise of a circle over its chord, on the right of travel where the arc turns left
      const off = (t - 0.5) * chord
      const rise = (Math.sqrt(radius * radius - off * off) - Math.sqrt(radius * radius - (chord * chord) / 4)) * Math.sign(p[2])
      return [mx + ((q[1] - p[1]) / chord) * rise, mz - ((q[0] - p[0]) / chord) * rise] as const
    })
  })
}

/** The surface as its equation says it: |y/Y|^n + |x/L|^n - 1, with Y and L read off the two chains at a height. */
function outside(section: TangentChain, profile: TangentChain, n: number, [x, y, z]: readonly number[]): number {
  const wide = (c: TangentChain): number => at(c, girthAtZ(c, z)!).y
  return Math.abs(y / wide(section)) ** n + Math.abs(x / wide(profile)) ** n - 1
}

/** Distance inside the surface and the outward normal, by stepping along the steepest slope. */
function depthOf(point: readonly number[]): { readonly depth: number; readonly normal: readonly number[] } {
  const profile = profileChain(input)
  const f = (p: readonly number[]): number => outside(runOn, profile, input.ends.exponent, p)
  let foot = [...point]
  let normal = [0, 0, 0]
  for (let i = 0; i < 8; i++) {
    const h = 1e-6
    const slope = [0, 1, 2].map((k) => {
      const [a, b] = [[...foot], [...foot]]
      a[k] += h
      b[k] -= h
      return (f(a) - f(b)) / (2 * h)
    })
    const steep = Math.hypot(...slope)
    normal = slope.map((s) => s / steep)
    // onto the surface, then back under the point along the surface
    const onto = foot.map((v, k) => v - (f(foot) / steep) * normal[k])
    const back = point.map((v, k) => v - onto[k])
    const inward = back.reduce((sum, v, k) => sum + v * normal[k], 0)
    foot = onto.map((v, k) => v + back[k] - inward * normal[k])
  }
  return { depth: -point.reduce((sum, v, k) => sum + (v - foot[k]) * normal[k], 0), normal }
}

const inSpace = (rib: RibJig, [r, z]: readonly [number, number]): readonly number[] => {
  const [c, s] = [Math.cos(rib.azimuth), Math.sin(rib.azimuth)]
  return [r * c - rib.beside * s, r * s + rib.beside * c, z]
}

describe('contours of the ribs of Sedge 6', () => {
  it('gives one contour for each rib of the right hand and of the centre line', () => {
    const named = jig.ribs.flatMap((r) => r.ribs)
    expect([...named].sort()).toEqual(ribs.map((r) => r.id).sort())
    expect(new Set(named).size).toBe(named.length)
  })

  it('lies at its depth under the lofted surface, at its points and between them, to 0.05 mm', () => {
    let [worst, seen] = [0, 0]
    for (const rib of jig.ribs)
      for (const p of along(rib.outer, 4)) {
        worst = Math.max(worst, Math.abs(depthOf(inSpace(rib, p)).depth - rib.depth))
        seen++
      }
    expect(seen).toBeGreaterThan(1500)
    expect(mm(worst)).toBeLessThan(0.05)
  })

  it('stands no farther apart than it says, and runs as long as its chords do', () => {
    for (const rib of jig.ribs) {
      const steps = rib.run.slice(1).map((v, i) => v - rib.run[i])
      expect(Math.max(...steps)).toBeLessThanOrEqual(rib.spacing)
      const dense = along(rib.outer, 64)
      let length = 0
      for (let i = 1; i < dense.length; i++) length += Math.hypot(dense[i][0] - dense[i - 1][0], dense[i][1] - dense[i - 1][1])
      expect(mm(Math.abs(rib.run[rib.run.length - 1] - length))).toBeLessThan(1)
    }
  })

  it('has its inner face one frame in from its outer face, measured square', () => {
    for (const rib of jig.ribs) {
      const outer = along(rib.outer, 40)
      for (const [r, z] of along(rib.inner, 1).slice(3, -3)) {
        const near = Math.min(...outer.map((p) => Math.hypot(p[0] - r, p[1] - z)))
        expect(mm(Math.abs(near - rib.height))).toBeLessThan(0.05)
      }
    }
  })

  it('bevels its flange as the skin leans there', () => {
    for (const rib of jig.ribs) {
      const across = [-Math.sin(rib.azimuth), Math.cos(rib.azimuth), 0]
      rib.outer.forEach(([r, z], i) => {
        if (i % 9 !== 0) return
        const { normal } = depthOf(inSpace(rib, [r, z]))
        expect(Math.asin(normal.reduce((sum, v, k) => sum + v * across[k], 0))).toBeCloseTo(rib.bevel[i], 4)
      })
      expect(rib.leastBevel.angle).toBe(Math.min(...rib.bevel))
      expect(rib.greatestBevel.angle).toBe(Math.max(...rib.bevel))
    }
  })

  it('has the flange the uncut ribs are sheared to', () => {
    for (const rib of jig.ribs) {
      const part = six.parts.find((p) => p.id === `tail-${rib.kind}-rib-${rib.ribs[0].split('-')[1]}`)!
      if (part.notes.length > 0) continue
      expect(rib.flangeLength).toBeCloseTo(part.patterns[0].outline[1][0], 9)
    }
  })

  it('is a circle on a sphere, whatever the plane and the depth', () => {
    // a plane d beside the centre cuts a sphere of radius R in a circle of radius sqrt(R^2 - d^2)
    const [R, depth, beside] = [0.9, 0.002, 0.03]
    const dome = (): TangentChain => buildChain({ y: 0, z: R, heading: 0 }, [{ kind: 'arc', name: 'dome', radius: R, to: 2.4 }])
    const walked = walkContour({ loft: loftBetween(dome(), dome(), 2), phi: 0.7, beside, depth }, 0.3, 2, 0.05, 0.06)
    const radius = Math.sqrt((R - depth) ** 2 - beside ** 2)
    for (const [r, z] of along(walked.outer, 4)) expect(mm(Math.hypot(r, z))).toBeCloseTo(mm(radius), 5)
    for (const [r, z] of along(walked.inner, 4)) expect(mm(Math.hypot(r, z))).toBeCloseTo(mm(radius - 0.05), 5)
    expect(atHeight(walked.outer, 0.4)!.r).toBeCloseTo(Math.sqrt(radius ** 2 - 0.16), 8)
    expect(atHeight(walked.outer, 0.95)).toBeNull()
  })
})

describe('locators and diagonals', () => {
  it('bear on the contour, at the heights they name', () => {
    for (const rib of jig.ribs) {
      expect(rib.locators.map((l) => l.says)).toEqual(['cap row', 'brow', 'belt', 'floor', 'toe'])
      for (const l of rib.locators) {
        expect(mm(Math.abs(depthOf(l.point).depth - rib.depth))).toBeLessThan(0.001)
        expect(l.station.nose).toBeCloseTo(3 - l.point[0], 12)
        expect(l.station.tail).toBeCloseTo(6.66 + l.point[0], 12)
      }
      const [cap, brow, belt, floor] = rib.locators
      expect(Math.hypot(cap.r, 0)).toBeLessThan(input.ends.cap + 0.005)
      expect(brow.rise).toBeCloseTo(Math.PI / 4, 8)
      expect(belt.z).toBeCloseTo(widest(chain).z, 9)
      expect(floor.z).toBeCloseTo(0, 9)
    }
  })

  it('states the thicknesses over each face: seam ribs under two end sheets, mid ribs under one, joint frames under both skins', () => {
    const t = input.ends.skin.thickness.value
    for (const rib of jig.ribs) expect(rib.depth).toBe(rib.kind === 'seam' ? 2 * t : t)
    for (const l of jig.joint) expect(l.depth).toBeCloseTo(t + input.shell.skin.thickness.value, 12)
    expect(jig.joint.find((l) => l.id === 'crown')!.z).toBeCloseTo(2.03 - 0.00081 - 0.00102, 9)
  })

  it('has the same diagonals on both hands, as long as the tape between their ends', () => {
    expect(jig.diagonals.length).toBeGreaterThan(10)
    for (const d of [...jig.diagonals, ...sideJig.diagonals]) expect(d.right, d.id).toBe(d.left)
    const at0 = (id: string) => jig.joint.find((l) => l.id === id)!
    const crown = jig.diagonals.find((d) => d.id === 'crown-floor')!
    expect(crown.right).toBeCloseTo(Math.hypot(at0('crown').z, at0('floor').y), 12)
    const tip = jig.diagonals.find((d) => d.id === 'tip-belt')!
    const centre = jig.ribs[0]
    expect(centre.azimuth).toBe(0)
    // the web stands 7 mm off the centre line, the mark on it: a tenth of a millimetre apart at most
    expect(mm(Math.abs(tip.right - Math.hypot(centre.locators[2].r, at0('belt').y)))).toBeLessThan(0.1)
  })

  it('sets the barrel by its first frame, under one sheet more at a lap', () => {
    expect(sideJig.frames.map((f) => Math.round(mm(f.fromFirst)))).toEqual([0, 610, 1220, 1830, 2440, 3050, 3660])
    expect(sideJig.frames.map((f) => f.kind)).toEqual(['joint', ...Array(5).fill('hoop'), 'joint'])
    const t = input.shell.skin.thickness.value
    for (const l of sideJig.hoop) expect(l.depth, l.id).toBe(l.id.startsWith('seam') ? 2 * t : t)
    const floor = sideJig.joint.find((l) => l.id === 'floor')!
    expect(sideJig.diagonals.find((d) => d.id === 'floor')!.right).toBeCloseTo(Math.hypot(3.66, 2 * floor.y), 9)
  })

  it('bends the mid ribs of a wrapped end to their sheets, which lie well inside the lofted surface', () => {
    const wrapped = derive({ ...input, openings: [], ends: { ...input.ends, make: 'wrapped' } })
    expect(wrapped.ends.jig.ribs.map((r) => r.ribs)).toEqual(jig.ribs.map((r) => r.ribs))
    for (const rib of wrapped.ends.jig.ribs.filter((r) => r.kind === 'mid')) {
      const row = wrapped.rows.find((r) => r.id === `tail-${rib.ribs[0]}`)!
      const contour = along(rib.outer, 400)
      const formed = along(jig.ribs.find((r) => r.ribs[0] === rib.ribs[0])!.outer, 400)
      const [c, s] = [Math.cos(rib.azimuth), Math.sin(rib.azimuth)]
      const lean = Math.max(...rib.bevel.map(Math.abs))
      let inside = 0
      row.station.forEach((station, i) => {
        // a rivet stands on the sheet's outer face, a web's offset beside the contour, which lies under the sheet
        const x = station - wrapped.ends.jig.jointStation.tail
        const [r, z] = [x * c + row.end!.y[i] * s, row.waterline![i]]
        const off = (line: typeof contour): number => Math.min(...line.map((p) => Math.hypot(p[0] - r, p[1] - z)))
        expect(mm(Math.abs(off(contour) - rib.depth)), `${rib.ribs[0]} at ${z}`).toBeLessThan(mm(rib.beside * Math.tan(lean)) + 0.2)
        inside = Math.max(inside, off(formed))
      })
      // 45.6 mm in the second gore of seven, least in the middle one
      expect(mm(inside)).toBeGreaterThan(5)
    }
  })
})

describe('an end as drawn', () => {
  it('reaches as far as the end does and is as wide as the coach', () => {
    const { plan, profile, lines } = six.ends.drawn
    expect(Math.max(...plan.map((p) => p[0]))).toBeCloseTo(six.ends.reach, 6)
    expect(Math.max(...plan.map((p) => p[1]))).toBeCloseTo(six.section.width / 2, 6)
    expect(profile[0]).toEqual([0, 2.03])
    expect(profile[profile.length - 1][1]).toBeCloseTo(six.section.points[six.section.points.length - 1].z, 9)
    for (const line of lines)
      for (const p of line.points) expect(Math.abs(depthOf(p[0] < 1e-9 ? [1e-7, p[1], p[2]] : p).depth)).toBeLessThan(1e-5)
  })
})
