/** Openings and mid ribs of a wrapped end: they lie on its sheets, in space as on the flats. */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../../tests/examples.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import { dot, sub, type Vec3 } from '../../maths/vec.js'
import { type Derived, derive } from '../index.js'
import type { Pattern } from '../nouns.js'
import type { GoreSheet } from './wrapped-strip.js'

function sedge(make: 'formed' | 'wrapped'): Derived {
  const { path, text, load } = exampleText('sedge-6')
  const { definition } = readDefinition(path, setInText(text, ['ends', 'make'], make), load)
  if (!definition) throw new Error('the demonstration is refused')
  return derive(definition)
}

const design = sedge('wrapped')
const { wrapped, ground } = design.endSections.local
if (!wrapped) throw new Error('the end is not wrapped')
const rim = design.rows.find((r) => r.id === 'rim-NW1')
if (!rim?.end) throw new Error('no rim of NW1')
const joint = design.definition.frames[0].station
const flatOf = (part: string): Pattern => design.parts.find((p) => p.id === part)?.patterns[0] as Pattern

/** How far a point stands off a sheet's outer face, by the two rulings it lies between: the sheet's planes through them. */
function offSheet({ strip, out, thickness }: GoreSheet, p: Vec3): number {
  const sides = strip.rulings.map((r, k) => {
    const beside = sub(p, r.from)
    // along the sheet, square to the ruling
    const ahead = dot(beside, [
      out[k][1] * r.direction[2] - out[k][2] * r.direction[1],
      out[k][2] * r.direction[0] - out[k][0] * r.direction[2],
      out[k][0] * r.direction[1] - out[k][1] * r.direction[0],
    ])
    return { ahead, off: dot(beside, out[k]) - thickness / 2 }
  })
  const nearest = sides.reduce((a, b) => (Math.abs(b.ahead) < Math.abs(a.ahead) ? b : a))
  return nearest.off
}

describe('a window in a wrapped end', () => {
  it('has its rim rivets on the sheets: off the plane of the nearest ruling by no more than the sheet bends away', () => {
    const { azimuth, y } = rim.end as NonNullable<typeof rim.end>
    let seen = 0
    for (const gore of wrapped.gores) {
      const { sheet } = gore
      if (!sheet) throw new Error(`gore ${gore.number} has no sheet`)
      const [right, left] = [ground.edges[gore.number - 1], ground.edges[gore.number]]
      azimuth.forEach((phi, i) => {
        if (phi >= right || phi <= left) return
        const point: Vec3 = [joint - rim.station[i], gore.turned ? -y[i] : y[i], rim.waterline[i]]
        // rulings stand 15 mm apart at most and the sheet bends to 250 mm at the least: 7.5 mm squared over 500 mm
        expect(Math.abs(offSheet(sheet, point)), `${gore.number} ${i}`).toBeLessThan(1.2e-4)
        seen++
      })
    }
    expect(seen).toBe(azimuth.length)
  })

  it('touches the middle gore, whose bending lines run level: a flat pane lies closer there than on the loft', () => {
    const sag = (of: Derived): number => of.openings.find((o) => o.id === 'NW1')?.end?.sag ?? Number.NaN
    expect(sag(design)).toBeLessThan(0.6 * sag(sedge('formed')))
    const place = design.openings.find((o) => o.id === 'NW1')?.place
    const out = joint - (place?.station ?? Number.NaN)
    const middle = wrapped.gores[(wrapped.gores.length - 1) / 2].sheet
    if (!middle || !place) throw new Error('no middle gore')
    expect(Math.abs(offSheet(middle, [out, 0, place.waterline]))).toBeLessThan(1.2e-4)
  })

  it("has its edge drawn on the flats, a rivet line's distance from its rim's holes", () => {
    const line = design.definition.shell.rim.line
    let holes = 0
    for (const gore of ['nose-gore-3', 'nose-gore-4', 'nose-gore-5']) {
      const flat = flatOf(gore)
      const edge = flat.marks.slice(flat.marks.findIndex((m) => m.says.startsWith('NW1')))
      const k = flat.holes.rows.indexOf('rim-NW1')
      if (k < 0) continue
      flat.holes.x.forEach((x, i) => {
        if (flat.holes.row[i] !== k) return
        const away = Math.min(...edge.map((m) => fromLine([x, flat.holes.y[i]], m.from, m.to)))
        // measured square on the pane, so a little more on a sheet that slopes away; its ends may stop at the lap
        expect(away, `${gore} ${flat.holes.index[i]}`).toBeGreaterThan(line - 2e-4)
        expect(away, `${gore} ${flat.holes.index[i]}`).toBeLessThan(line * 1.35)
        holes++
      })
      expect(design.parts.find((p) => p.id === gore)?.notes.join(' ')).toContain('drawn, not cut')
    }
    expect(holes).toBeGreaterThan(60)
  })
})

function fromLine([x, y]: readonly [number, number], a: readonly [number, number], b: readonly [number, number]): number {
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const on = Math.min(1, Math.max(0, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v)))
  return Math.hypot(x - a[0] - on * u, y - a[1] - on * v)
}

describe('mid ribs of a wrapped end', () => {
  it('stand on their sheets, in their vertical planes', () => {
    for (const rib of design.endSections.local.ribs) {
      if (rib.kind !== 'mid') continue
      const { sheet, turned } = wrapped.gores[rib.number - 1]
      if (!sheet) throw new Error(`gore ${rib.number} has no sheet`)
      for (const girth of [0.6, 1, 1.4, 1.9, 2.4]) {
        const [x, y, z] = rib.outer.atSigma(rib.outer.sigmaAt(girth))
        expect(Math.abs(y * Math.cos(rib.phi) - x * Math.sin(rib.phi))).toBeLessThan(1e-8)
        expect(Math.abs(offSheet(sheet, [x, turned ? -y : y, z]))).toBeLessThan(1.2e-4)
        expect(rib.outer.lengthAt(rib.outer.sigmaAt(girth))).toBeCloseTo(girth, 9)
      }
    }
  })
})
