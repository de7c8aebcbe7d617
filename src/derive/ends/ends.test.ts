/** The demonstration's ends: figures a shop can tape, and every fastener in all its layers on one normal. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { loftAt, normalOf, pointInside } from '../../maths/loft.js'
import { cross, length, sub, type Vec3 } from '../../maths/vec.js'
import { derive } from '../index.js'
import { meridianGirth, sigmaAtMeridian } from './meridian.js'
import { ribCurve } from './rib-curve.js'
import { patchArea, sigmaAt } from './surface.js'

const six = derive(readExample('sedge-6'))
const { local } = six.endSections
const { ground } = local
const mm = (metres: number): number => metres * 1000

describe('the ends of Sedge 6', () => {
  it('has the area, centroid and perimeter the shop worked out (invented demonstration)', () => {
    expect(six.ends.area).toBeCloseTo(9.03, 2)
    expect(mm(six.ends.centroid.out)).toBeCloseTo(641, 0)
    expect(mm(six.ends.centroid.waterline)).toBeCloseTo(959, 0)
    expect(mm(six.ends.floorPerimeter)).toBeCloseTo(3718, 0)
    expect(mm(six.ends.reach)).toBeCloseTo(1103.56, 2)
  })

  it("lies one barrel thickness in at the joint: its own edge is 2 t times the section's turn shorter", () => {
    expect(mm(six.ends.jointEdge)).toBeCloseTo(6353.3, 1)
    expect(six.ends.jointEdge).toBeCloseTo(2 * (six.section.halfGirth - 0.00081 * ((150 * Math.PI) / 180)), 7)
  })

  it('has gores and a cap that make up the whole surface', () => {
    const whole = patchArea(
      ground.loft,
      Math.PI / 2,
      -Math.PI / 2,
      () => 0,
      () => ground.toe,
    )
    expect(six.ends.area).toBeCloseTo(whole.area, 4)
  })

  it('walks a rib as chords through its points do', () => {
    for (const depth of [0, 0.00153]) {
      const rib = ribCurve(ground.loft, 0.6, depth)
      let run = 0
      let before = rib.atSigma(0)
      const n = 40000
      for (let i = 1; i <= n; i++) {
        const here = rib.atSigma((i * ground.toe) / n)
        run += length(sub(here, before))
        before = here
      }
      expect(Math.abs(rib.length - run)).toBeLessThan(1e-6)
    }
    const own = ribCurve(ground.loft, 0.6, 0)
    for (const sigma of [0.3, 1.1, 1.4, 2.2, 3.1]) {
      expect(own.lengthAt(sigma)).toBeCloseTo(meridianGirth(ground.loft, 0.6, sigma), 6)
      expect(own.sigmaAt(own.lengthAt(sigma))).toBeCloseTo(sigma, 9)
      expect(sigmaAtMeridian(ground.loft, 0.6, meridianGirth(ground.loft, 0.6, sigma))).toBeCloseTo(sigma, 8)
    }
  })

  it('puts a fastener in skin, rib, ring and base channel on one normal, to 0.01 mm', () => {
    let worst = 0
    let seen = 0
    const joint = six.definition.frames[0].station
    for (const row of six.rows) {
      if (row.end?.which !== 'nose' || (row.kind !== 'gore' && row.kind !== 'rib')) continue
      const rib = local.ribs.find((r) => `nose-${r.row}` === row.id)!
      const part = six.parts.find((p) => p.id === `nose-${rib.kind}-rib-${rib.number}`)!
      const [pattern] = part.patterns
      const start = rib.flange.lengthAt(rib.outer.sigmaAt(pattern.flat.origin.girth))
      pattern.holes.x.forEach((x, k) => {
        const i = pattern.holes.index[k]
        const inRib = rib.flange.atSigma(rib.flange.sigmaAt(start + x))
        const onSkin: Vec3 = [joint - row.station[i], row.end!.y[i], row.waterline[i]]
        const sigma = rib.outer.sigmaAt(Math.abs(row.girth[i]))
        const normal = normalOf(loftAt(ground.loft, rib.phi, sigma), rib.phi)
        worst = Math.max(worst, length(cross(sub(inRib, onSkin), normal)))
        seen++
      })
    }
    expect(seen).toBeGreaterThan(800)
    expect(mm(worst)).toBeLessThan(0.01)
  })

  it('and in the ring and the base channel, whose holes are spaced as their own mid surface is', () => {
    for (const [rowId, partId] of [
      ['nose-cap', 'nose-header-ring'],
      ['nose-base', 'nose-base'],
    ]) {
      const row = six.rows.find((r) => r.id === rowId)!
      const part = six.parts.find((p) => p.id === partId)!
      const { holes } = part.patterns[0]
      const t = 0.00102
      const depth = rowId === 'nose-cap' ? 2 * t + 0.0008 : t + 0.0008
      const at = (i: number): Vec3 => {
        const phi = row.end!.azimuth[i]
        const sigma = rowId === 'nose-cap' ? sigmaAtMeridian(ground.loft, phi, 0.45) : ground.base!
        return pointInside(ground.loft, phi, sigma, depth)
      }
      // a fine walk between neighbours along the member's own mid surface
      for (let k = 1; k < holes.x.length; k += 7) {
        const [i, j] = [holes.index[k - 1], holes.index[k]]
        const [from, to] = [row.end!.azimuth[i], row.end!.azimuth[j]]
        let run = 0
        let before = at(i)
        for (let s = 1; s <= 200; s++) {
          const phi = from + ((to - from) * s) / 200
          const sigma = rowId === 'nose-cap' ? sigmaAtMeridian(ground.loft, phi, 0.45) : ground.base!
          const here = pointInside(ground.loft, phi, sigma, depth)
          run += length(sub(here, before))
          before = here
        }
        expect(mm(Math.abs(holes.x[k] - holes.x[k - 1] - run)), `${rowId} ${k}`).toBeLessThan(0.005)
      }
    }
  })

  it('makes nose and tail alike but for their openings', () => {
    for (const part of six.parts.filter((p) => p.id.startsWith('nose-gore'))) {
      const twin = six.parts.find((p) => p.id === part.id.replace('nose', 'tail'))!
      expect(twin.area).toBe(part.area)
      expect(twin.centre[0] - 6.66).toBeCloseTo(3 - part.centre[0], 9)
    }
    const count = (end: string): number =>
      six.rows.filter((r) => r.end?.which === end && r.kind !== 'rim').reduce((sum, r) => sum + r.station.length, 0)
    const [nose, tail] = [count('nose'), count('tail')]
    expect(nose).toBeLessThan(tail)
    const cut = six.parts.find((p) => p.id === 'nose-mid-rib-4')!
    expect(cut.pieces).toBe(2)
    expect(cut.notes[0]).toContain('NW1')
  })

  it('leaves formed panels without a pattern, and says so', () => {
    const waiting = six.parts.filter((p) => p.patterns.length === 0 && p.kind !== 'end-lining')
    expect(waiting.map((p) => p.kind).sort()).toEqual([...Array(2).fill('crown-cap'), ...Array(14).fill('gore')].sort())
    for (const part of waiting) expect(part.notComputed).toContain('blank')
  })

  it('lines each end between its ribs: less area than the skin by what the offset takes, and the cap to the floor gap only', () => {
    const panels = six.parts.filter((p) => p.kind === 'end-lining' && p.id.startsWith('nose'))
    expect(panels).toHaveLength(15)
    const lined = panels.reduce((sum, p) => sum + p.area, 0)
    // the skin from crown to the gap over the floor
    const skin = patchArea(
      ground.loft,
      Math.PI / 2,
      -Math.PI / 2,
      () => 0,
      () => sigmaAt(ground.loft, 0.012),
    ).area
    // 60 mm in, on radii of 0.6 to 7 m one way and 0.4 to 4 m the other, takes some 7 % of it
    expect(lined / skin).toBeGreaterThan(0.88)
    expect(lined / skin).toBeLessThan(0.97)
    for (const p of panels) expect(p.notComputed).toContain(p.id.endsWith('-crown') ? 'domed' : 'packet waits for it')
    const twin = (i: number): number => panels[13 - i].area
    for (let i = 0; i < 7; i++) expect(panels[i].area).toBeCloseTo(twin(i), 9)
  })
})
