import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { faultLine } from './faults.js'
import { readDefinition } from './read-definition.js'

const load = (path: string): string | null => (existsSync(path) ? readFileSync(path, 'utf8') : null)
const read = (path: string) => readDefinition(path, readFileSync(path, 'utf8'), load)
const INCH = 0.0254

describe('the Sedge family', () => {
  for (const [bays, axles, openings, massKg] of [
    [4, 1, 13, 0],
    [6, 2, 14, 1757],
    [8, 2, 17, 0],
  ] as const) {
    it(`reads Sedge ${bays} without a fault`, () => {
      const { definition, faults } = read(`examples/sedge-${bays}.yaml`)
      expect(faults.map(faultLine)).toEqual([])
      expect(definition?.coach).toEqual({
        name: `Sedge ${bays}`,
        family: 'Sedge',
        maker: 'Marrowbeck Coachworks',
        market: 'us',
        date: '2026-03-02',
      })
      expect(definition?.frames).toHaveLength(bays + 1)
      expect(definition?.frames.at(-1)?.station).toBeCloseTo(3 + bays * 0.61, 12)
      expect(definition?.gear?.spindles).toHaveLength(axles)
      expect(definition?.openings).toHaveLength(openings)
      // the stated masses add up to the coach as built
      if (massKg) expect(definition?.masses.reduce((sum, m) => sum + m.mass, 0)).toBeCloseTo(massKg, 0)
    })
  }

  const sedge6 = read('examples/sedge-6.yaml').definition
  it('gives SI numbers and keeps bought names', () => {
    expect(sedge6?.section.chain[1]).toEqual({ kind: 'arc', name: 'shoulder', radius: 0.38, to: expect.closeTo((82 * Math.PI) / 180, 12) })
    expect(sedge6?.shell.skin).toEqual({ alloy: '5052-H34', thickness: { name: '0.81 mm', value: 0.81e-3 } })
    expect(sedge6?.fasteners.find((f) => f.id === 'S4')?.diameter).toEqual({ name: '1/8 in', value: INCH / 8 })
    expect(sedge6?.stock.sheets[1]).toEqual({ name: '36 in x 152 in', width: 36 * INCH, length: 152 * INCH })
  })

  it('settles the side letters by the market', () => {
    const side = (id: string) => sedge6?.openings.find((o) => o.id === id)?.surface
    expect([side('D1'), side('RW3'), side('RV1'), side('NW1')]).toEqual(['right', 'left', 'roof', 'nose'])
  })

  it('turns the side letters round where traffic keeps left', () => {
    const family = 'examples/sedge.family.yaml'
    for (const [market, curb] of [
      ['us', 'right'],
      ['eu', 'right'],
      ['uk', 'left'],
      ['au', 'left'],
    ] as const) {
      const elsewhere = (load(family) as string).replace('market: us', `market: ${market}`)
      const { definition } = readDefinition('examples/sedge-6.yaml', load('examples/sedge-6.yaml') as string, (p) =>
        p === family ? elsewhere : load(p),
      )
      expect(definition?.openings.find((o) => o.id === 'D1')?.surface).toBe(curb)
      expect(definition?.openings.find((o) => o.id === 'RW1')?.surface).toBe(curb === 'right' ? 'left' : 'right')
    }
  })

  it('puts a frame of another file in its place along the coach', () => {
    const { definition } = readDefinition(
      'examples/x.yaml',
      'extends: sedge-6.yaml\nschema: 1\nframes:\n  - {id: F3a, station: 4525 mm}\n',
      load,
    )
    expect(definition?.frames.map((f) => f.id)).toEqual(['F1', 'F2', 'F3', 'F3a', 'F4', 'F5', 'F6', 'F7'])
  })

  it('takes a sheet either way round, and a fraction on the tape', () => {
    const added = 'extends: sedge-6.yaml\nschema: 1\nlining: {stock: 152 in x 48 in}\nshell: {tape: 3/64 in}\n'
    const { definition } = readDefinition('examples/x.yaml', added, load)
    expect(definition?.lining.stock).toEqual({ name: '152 in x 48 in', width: 1.2192, length: 3.8608 })
    expect(definition?.shell.tape).toBeCloseTo((3 / 64) * INCH, 12)
  })

  it('fills in the defaults and freezes everything', () => {
    expect(sedge6?.rules.minPitch).toBe(3)
    expect(sedge6?.rules.flueToWindow).toBeCloseTo(0.3, 12)
    expect(sedge6?.openings.find((o) => o.id === 'RV1')?.waterline).toBeNull()
    expect(Object.isFrozen(sedge6?.openings[0])).toBe(true)
    expect(Object.isFrozen(sedge6?.shell.skin.thickness)).toBe(true)
  })
})

describe('text to faults', () => {
  it('takes Sedge 8 less than 150 ms of the processor once warm', () => {
    for (let i = 0; i < 5; i++) read('examples/sedge-8.yaml')
    const took = Array.from({ length: 9 }, () => {
      const before = process.cpuUsage()
      read('examples/sedge-8.yaml')
      const { user, system } = process.cpuUsage(before)
      return (user + system) / 1000
    })
    // the least of nine: what the reading takes, not what runs beside it
    expect(Math.min(...took)).toBeLessThan(150)
  })

  it('points to the last words of a text that breaks off', () => {
    for (const text of ['schema: 1\ncoach: {name: "Sedge\n', 'schema: 1\ncoach: "x', 'schema: 1\r\ncoach: [\r\n\r\n']) {
      const { faults } = readDefinition('x.yaml', text, () => null)
      expect(faults[0]).toMatchObject({ line: 2 })
    }
  })
})
