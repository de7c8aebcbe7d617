/** Limiting cases of a derived shell, worked by hand. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import type { Definition, SectionElement } from '../../definition/types.js'
import { derive } from '../index.js'
import type { Shell } from './index.js'
import { patternsOf } from './verify.js'

const sedge4 = readExample('sedge-4')
const DEG = Math.PI / 180

/** A Sedge 4 of another section, without openings or floor, its seams where they are wanted. */
function coach(chain: readonly SectionElement[], crown: number, seams: readonly number[]): Definition {
  return {
    ...sedge4,
    section: { crown, chain, fit: null },
    openings: [],
    gear: null,
    floor: null,
    lining: { ...sedge4.lining, seams: [], joints: [] },
    shell: {
      ...sedge4.shell,
      seams: seams.map((girth, i) => ({ id: `seam-${i + 1}`, girth })),
      strakes: sedge4.shell.strakes.slice(0, seams.length + 1),
    },
  }
}

/** Flat coordinate along the girth of each hole of a row in a part, by the fastener's signed girth. */
function along(shell: Shell, part: string, row: string): Map<number, number> {
  const found = patternsOf(shell).find((p) => p.part === part && p.pattern.holes.rows.includes(row))
  if (!found) throw new Error(`no holes of ${row} in ${part}`)
  const { pattern, plate } = found
  const girths = shell.rows.find((r) => r.id === row)?.girth ?? []
  const out = new Map<number, number>()
  pattern.holes.x.forEach((x, k) => {
    if (pattern.holes.rows[pattern.holes.row[k]] === row)
      out.set(girths[pattern.holes.index[k]], plate.lie === 'hoop' ? x : pattern.holes.y[k])
  })
  return out
}

/** Largest difference between the hole distances in a part and the fasteners' distances on the mould line. */
function stretch(shell: Shell, part: string, row: string, within: (girth: number) => boolean): number {
  const holes = [...along(shell, part, row)].filter(([g]) => within(g)).sort(([a], [b]) => a - b)
  expect(holes.length).toBeGreaterThan(10)
  return Math.max(...holes.map(([g, x]) => Math.abs(Math.abs(x - holes[0][1]) - (g - holes[0][0]))))
}

describe('a flat side', () => {
  const radius = 0.3
  const corner = (Math.PI / 2) * radius
  const box = (side: SectionElement): Definition =>
    coach([{ kind: 'line', name: 'roof', length: 0.8 }, { kind: 'arc', name: 'corner', radius, to: 90 * DEG }, side], 2, [
      0.6,
      0.8 + corner + 0.2,
    ])
  const onSide = (g: number): boolean => g > 0.8 + corner + 0.25

  it('develops to its plain lengths in every layer', () => {
    const { shell } = derive(box({ kind: 'line', name: 'side', length: 1.9 }))
    for (const part of ['frame-F2', 'strake-side-right']) expect(stretch(shell, part, 'hoop-F2', onSide), part).toBeLessThan(1e-12)
    expect(stretch(shell, 'frame-F2', 'lining-F2', onSide)).toBeLessThan(1e-12)
  })

  it('and so does one so slightly curved that nobody could tell', () => {
    const huge = 1e7
    const { shell } = derive(box({ kind: 'arc', name: 'side', radius: huge, to: 90 * DEG + 1.9 / huge }))
    // the sheet a hand inside it is shorter by depth / radius
    for (const part of ['frame-F2', 'strake-side-right'])
      expect(stretch(shell, part, 'hoop-F2', onSide), part).toBeLessThan((1.9 * 0.003) / huge + 1e-12)
  })
})

describe('a quarter circle', () => {
  it('has a frame flange pi/2 (R - d) long from the crown to the side, less the step inward under each lap', () => {
    const R = 1
    const { shell } = derive(
      coach(
        [
          { kind: 'arc', name: 'quarter', radius: R, to: 90 * DEG },
          { kind: 'line', name: 'side', length: 1.2 },
        ],
        2,
        [(Math.PI / 2) * R],
      ),
    )
    const { skin, frame, lap } = shell.laid.input.shell
    const d = skin.thickness.value + frame.thickness.value / 2
    const flange = along(shell, 'frame-F2', 'hoop-F2')
    const quarter = (Math.PI / 2) * R
    const across = (flange.get(quarter) as number) - (flange.get(-quarter) as number)
    // within half a lap of the seam the flange lies one sheet deeper on the arc
    expect(across).toBeCloseTo(2 * ((Math.PI / 2) * (R - d) - (skin.thickness.value * (lap / 2)) / R), 12)
    const strake = along(shell, 'strake-crown', 'seam-1-right')
    expect(new Set([...strake.values()].map((y) => y.toFixed(12))).size).toBe(1)
    const [crown] = [...strake.values()]
    expect(crown).toBeCloseTo(2 * (Math.PI / 2) * (R - skin.thickness.value / 2) + lap / 2, 12)
  })
})

describe('sheets without thickness', () => {
  it('have the same pattern in every layer: the mould line itself', () => {
    const none = { name: 'nothing', value: 1e-12 }
    const thin = <T extends { thickness: { name: string; value: number } }>(sheet: T): T => ({ ...sheet, thickness: none })
    const s = sedge4.shell
    const { shell } = derive({
      ...sedge4,
      shell: {
        ...s,
        skin: thin(s.skin),
        frame: { ...thin(s.frame), height: 1e-12 },
        jointFrame: { ...thin(s.jointFrame), height: 1e-12 },
        stringer: thin(s.stringer),
        post: thin(s.post),
        rim: thin(s.rim),
        edgeChannel: thin(s.edgeChannel),
        underbelly: thin(s.underbelly),
        tape: 0,
      },
      lining: thin(sedge4.lining),
      ends: { ...sedge4.ends, skin: thin(sedge4.ends.skin) },
    })
    let compared = 0
    for (const { plate, pattern, part } of patternsOf(shell)) {
      pattern.holes.x.forEach((x, k) => {
        const row = shell.rows.find((r) => r.id === pattern.holes.rows[pattern.holes.row[k]])
        const girth = row?.girth[pattern.holes.index[k]] ?? Number.NaN
        const flat = plate.lie === 'hoop' ? x : pattern.holes.y[k]
        expect(flat, part).toBeCloseTo(plate.lie === 'right-hand' ? plate.g1 - girth : girth - plate.g0, 9)
        compared++
      })
    }
    expect(compared).toBeGreaterThan(5000)
  })
})
