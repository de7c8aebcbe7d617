import { describe, expect, it } from 'vitest'
import { fitChain } from './fit-chain.js'
import { integrate } from './quadrature.js'
import {
  at,
  buildChain,
  type ChainPiece,
  girthAtOffset,
  girthAtZ,
  girthFromOffset,
  headingAt,
  heightAt,
  momentsAlong,
  outAt,
  widest,
} from './tangent-chain.js'

const deg = Math.PI / 180
const sedge: ChainPiece[] = [
  { kind: 'arc', name: 'roof', radius: 3.6, to: 13.5 * deg },
  { kind: 'arc', name: 'shoulder', radius: 0.38, to: 82 * deg },
  { kind: 'arc', name: 'side', radius: 7, to: 95 * deg },
  { kind: 'arc', name: 'turn-under', radius: 0.3, to: 150 * deg },
]
const start = { y: 0, z: 2.03, heading: 0 }
const chain = buildChain(start, sedge)

describe('a tangent chain', () => {
  it('a quarter circle has the length and the offset lengths of a quarter circle', () => {
    const quarter = buildChain({ y: 0, z: 1, heading: 0 }, [{ kind: 'arc', name: 'q', radius: 1, to: 90 * deg }])
    expect(quarter.length).toBeCloseTo(Math.PI / 2, 14)
    expect(girthAtOffset(quarter, quarter.length, 0.25)).toBeCloseTo((0.75 * Math.PI) / 2, 14)
    expect(at(quarter, quarter.length, 0.25)).toMatchObject({ y: expect.closeTo(0.75, 12), z: expect.closeTo(0, 12) })
  })

  it('has its moments: the arc of a quarter circle has its centre at 2 r / pi, as handbooks have it', () => {
    const quarter = buildChain({ y: 0, z: 1, heading: 0 }, [{ kind: 'arc', name: 'q', radius: 1, to: 90 * deg }])
    const [y, z] = momentsAlong(quarter, 0, quarter.length)
    expect(y / quarter.length).toBeCloseTo(2 / Math.PI, 14)
    expect(z / quarter.length).toBeCloseTo(2 / Math.PI, 14)
    for (const { girth0, girth1 } of chain.elements) {
      const [y, z] = momentsAlong(chain, girth0, girth1)
      expect(y).toBeCloseTo(
        integrate((g) => outAt(chain, g), girth0, girth1, 4),
        13,
      )
      expect(z).toBeCloseTo(
        integrate((g) => heightAt(chain, g), girth0, girth1, 4),
        13,
      )
    }
  })

  it('gives the invented demonstration section its point table to 0.1 mm', () => {
    const rows: [number, number, number, number, number][] = [
      [560, 557.7, 1986.5, 8.9, 550.8],
      [848.2, 840.4, 1930.5, 13.5, 834.3],
      [1302.5, 1128, 1614, 82, 1218.1],
      [1415, 1142.8, 1502.4, 82.9, 1329.6],
      [1503, 1153.1, 1415, 83.6, 1416.9],
      [1759.1, 1176.8, 1160, 85.7, 1670.9],
      [2014.6, 1191.1, 905, 87.8, 1924.1],
      [2279.6, 1196.1, 640, 90, 2187],
      [2603, 1188.7, 316.7, 92.6, 2507.6],
      [2890.8, 1169.5, 29.6, 95, 2793],
      [2920.7, 1165.4, 0, 100.7, 2817],
      [3178.8, 1020.6, -204, 150, 3024.3],
    ]
    for (const [g, y, z, h, lining] of rows) {
      // the table prints G to 0.1, so compare at the girth of the printed WL where it moves fast
      const girth = girthAtZ(chain, z / 1000) ?? chain.length
      expect(Math.abs(girth * 1000 - g)).toBeLessThan(g < 1000 ? 0.5 : 0.16)
      const p = at(chain, g / 1000)
      expect(Math.abs(p.y * 1000 - y)).toBeLessThan(0.1)
      expect(Math.abs(p.z * 1000 - z)).toBeLessThan(0.1)
      expect(Math.abs(p.heading / deg - h)).toBeLessThan(0.051)
      expect(Math.abs(girthAtOffset(chain, g / 1000, 0.059) * 1000 - lining)).toBeLessThan(0.1)
    }
    expect(2 * widest(chain).y * 1000).toBeCloseTo(2392.2, 1)
  })

  it('is tangent and continuous where pieces meet, and offset lengths invert', () => {
    for (const e of chain.elements.slice(1)) {
      const a = at(chain, e.girth0 - 1e-9)
      const b = at(chain, e.girth0 + 1e-9)
      expect(Math.hypot(a.y - b.y, a.z - b.z)).toBeLessThan(3e-9)
      expect(Math.abs(a.heading - b.heading)).toBeLessThan(1e-7)
    }
    for (let g = 0; g < 3.3; g += 0.05) {
      expect(girthFromOffset(chain, girthAtOffset(chain, g, 0.0593), 0.0593)).toBeCloseTo(g, 12)
      if (g > 0 && g <= chain.length) expect(girthAtZ(chain, at(chain, g).z)).toBeCloseTo(g, 9)
    }
    expect(headingAt(chain, 5)).toBeCloseTo(150 * deg, 14)
  })

  it('is solved for width, belt and height, with the residual', () => {
    const w = widest(chain)
    const fit = fitChain(
      start,
      [
        { kind: 'arc', name: 'roof', radius: 3.6, to: null },
        { kind: 'arc', name: 'shoulder', radius: 0.38, to: null },
        { kind: 'arc', name: 'side', radius: 7, to: null },
        { kind: 'arc', name: 'turn-under', radius: 0.3, to: 150 * deg },
      ],
      { width: 2 * w.y, belt: w.z, height: 2.03 - at(chain, chain.length).z, floorWidth: null },
    )
    expect(fit?.residual).toBeLessThan(1e-7)
    expect(fit?.chain.length).toBeCloseTo(chain.length, 5)
    expect(
      fitChain(start, [{ kind: 'arc', name: 'q', radius: 1, to: null }], { width: 9, belt: null, height: null, floorWidth: null }),
    ).toBeNull()
  })
})
