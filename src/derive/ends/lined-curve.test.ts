/** The line of the lining's rivets on the demonstration's ribs, against the jig's contours and against chords. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { cross, length, sub, type Vec3 } from '../../maths/vec.js'
import { derive } from '../index.js'
import { linedEdge } from './lined-curve.js'
import type { Rib } from './members.js'
import { atHeight } from './rib-contour.js'

const six = derive(readExample('sedge-6'))
const { ground, ribs } = six.endSections.local
const { frame, tape } = six.definition.shell
const sheet = six.definition.lining.thickness.value
const foot = ground.floor

/** Places down a rib from the ring to the floor. */
const down = (rib: Rib, count: number): number[] => {
  const top = ground.capSigma(rib.phi)
  return Array.from({ length: count }, (_, i) => top + ((foot - top) * i) / (count - 1))
}
/** Distance of a place from the upright plane through the crown at a rib's azimuth, right of it positive. */
const beside = ({ phi }: Rib, [x, y]: Vec3): number => y * Math.cos(phi) - x * Math.sin(phi)
const along = ({ phi }: Rib, [x, y]: Vec3): number => x * Math.cos(phi) + y * Math.sin(phi)

describe("the line of the lining's rivets", () => {
  it('stands upright, as far beyond the web as the skin’s rivets before it, toward the joint', () => {
    for (const rib of ribs) {
      const edge = linedEdge(ground, rib, 0)
      const hand = rib.phi > -1e-9 ? 1 : -1
      for (const sigma of down(rib, 7)) {
        expect(beside(rib, edge.atSigma(sigma))).toBeCloseTo(hand * 0.014, 9)
        expect(beside(rib, rib.lined.place(sigma).point)).toBeCloseTo(hand * 0.014, 8)
        expect(rib.lined.place(sigma).phi).toBeCloseTo(Math.atan2(rib.lined.place(sigma).point[1], rib.lined.place(sigma).point[0]), 9)
      }
    }
  })

  it('lies on the flange that the template of the web has, which leans across it by its bevel', () => {
    let [seen, worst] = [0, 0]
    for (const jig of six.ends.jig.ribs) {
      const rib = ribs.find((r) => r.row === jig.ribs[0])!
      const edge = linedEdge(ground, rib, 0)
      for (const sigma of down(rib, 9).slice(1, -1)) {
        const line = edge.atSigma(sigma)
        const onWeb = atHeight(jig.inner, line[2])
        if (!onWeb) continue
        // square to the contour, from the flange's inner face at the web to the middle of the lining 7 mm beyond it
        const off = (onWeb.r - along(rib, line)) * Math.cos(onWeb.rise)
        const k = jig.inner.findIndex(([, z]) => z < line[2])
        const share = (jig.inner[k - 1][1] - line[2]) / (jig.inner[k - 1][1] - jig.inner[k][1])
        const lean = frame.rowOffset * Math.tan(jig.bevel[k - 1] + share * (jig.bevel[k] - jig.bevel[k - 1]))
        worst = Math.max(worst, Math.abs(off - tape - sheet / 2 - lean))
        seen++
      }
    }
    // 0.038 mm: the way from web to rivets is straight here, and the template's arcs keep to hundredths
    expect(worst).toBeLessThan(0.0001)
    expect(seen).toBeGreaterThan(40)
  })

  it('is as long as chords through it, and the flange outside it longer by what both turn', () => {
    for (const rib of ribs.slice(0, 4)) {
      const edge = linedEdge(ground, rib, 0)
      const [from, to] = [ground.capSigma(rib.phi), foot]
      const points = Array.from({ length: 4001 }, (_, i) => edge.atSigma(from + ((to - from) * i) / 4000))
      const chords = points.slice(1).reduce((sum, p, i) => sum + length(sub(p, points[i])), 0)
      const { lengthAt, flangeAt } = rib.lined
      expect(Math.abs(lengthAt(to) - lengthAt(from) - chords) * 1e6).toBeLessThan(2)
      const chord = (i: number): Vec3 => sub(points[i + 1], points[i])
      let turn = 0
      for (let i = 1; i < 4000; i++) turn += Math.asin(length(cross(chord(i - 1), chord(i))) / length(chord(i - 1)) / length(chord(i)))
      const out = tape + sheet / 2 + frame.thickness.value / 2
      expect(Math.abs(flangeAt(to) - flangeAt(from) - chords - out * turn) * 1e6, rib.row).toBeLessThan(5)
    }
  })
})
