import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { design } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import type { Design } from '../../derive/design.js'
import { designJson } from './design-json.js'
import { designJsonSchema, designSchema } from './design-schema.js'
import { rounded } from './rounded.js'

const file = (name: string): string => `examples/${name}`
const text = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8')
function made(name: string): Design {
  const { definition, faults } = readDefinition(file(name), text(file(name)), (path) => text(path))
  expect(faults).toEqual([])
  return design(definition!)
}

describe('the design as JSON', () => {
  for (const name of ['sedge-4.yaml', 'sedge-6.yaml', 'sedge-8.yaml']) {
    const it_ = designJson(made(name))
    const again = JSON.parse(JSON.stringify(it_))

    it(`of ${name} is what its schema says, and nothing more`, () => {
      const read = designSchema.safeParse(again)
      expect(read.error?.issues ?? []).toEqual([])
      // zod leaves unknown keys out of what it gives, so equality also says that no key is missing from the schema
      expect(read.data).toEqual(again)
    })

    it(`of ${name} survives printing: no number is lost, endless or minus nothing`, () => {
      expect(again).toEqual(it_)
      expect(JSON.stringify(again)).not.toMatch(/:-0[,}\]]/)
    })

    it(`of ${name} counts its holes, its fasteners and its masses once`, () => {
      const holes = it_.parts.reduce((n, p) => n + p.holes.length + p.faces.reduce((m, f) => m + f.holes.length, 0), 0)
      expect(holes).toBe(it_.totals.holes)
      const fasteners = it_.joints.flatMap((j) => j.rows).reduce((n, r) => n + r.places.length, 0)
      expect(fasteners).toBe(it_.totals.fasteners.solid + it_.totals.fasteners.blind)
      expect(it_.parts.reduce((sum, p) => sum + p.mass, 0)).toBeCloseTo(it_.totals.mass, 6)
      expect(Object.values(it_.totals.fasteners.byLength).reduce((a, b) => a + b, 0)).toBe(fasteners)
    })

    it(`of ${name} has each hole of a fastener at that fastener's place, in every sheet of its stack`, () => {
      const bolts = it_.bolts.reduce((n, r) => n + r.places.length, 0)
      const rows = [...it_.joints.flatMap((j) => j.rows), ...it_.bolts]
      const places = new Map(rows.flatMap((r) => r.places.map((p) => [p.id, { row: r, place: p }] as const)))
      expect(places.size).toBe(it_.totals.fasteners.solid + it_.totals.fasteners.blind + bolts)
      for (const part of it_.parts) {
        for (const hole of [...part.holes, ...part.faces.flatMap((f) => f.holes)]) {
          const known = places.get(hole.id)!
          expect(known.row.id).toBe(hole.row)
          expect([known.place.station, known.place.girth, known.place.side]).toEqual([
            hole.place.station,
            hole.place.girth,
            hole.place.side,
          ])
          expect(known.row.lengths[known.place.stack].parts).toContain(part.id)
        }
      }
    })
  }

  it('has every row of the section table from crown to toe', () => {
    const { section } = designJson(made('sedge-6.yaml')).shell
    const girths = section.points.map((p) => p.girth)
    expect([...girths].sort((a, b) => a - b)).toEqual(girths)
    expect([section.points[0].id, section.points.at(-1)!.id]).toEqual(['crown', 'toe'])
    // the demonstration's own table: seam 2 at G 1415 lies at y 1142.8, WL 1502.4, lining g 1329.6
    const seam = section.points.find((p) => p.id === 'seam-2')!
    expect([seam.girth, seam.y, seam.z, seam.liningGirth].map((m) => Math.round(m * 1e4) / 10)).toEqual([1415, 1142.8, 1502.4, 1329.6])
  })

  it('gives the same bytes for the same definition', () => {
    expect(JSON.stringify(designJson(made('sedge-4.yaml')))).toBe(JSON.stringify(designJson(made('sedge-4.yaml'))))
  })

  it('derives every opening, and those in the ends with their pane', () => {
    const tree = designJson(made('sedge-6.yaml'))
    expect(tree.openingsNotDerived).toEqual([])
    expect(tree.openings.filter((o) => o.end).map((o) => o.id)).toEqual(['NW1', 'TW1'])
  })
})

describe('the schema of the design', () => {
  it('is JSON Schema and says a unit for every number a person measures', () => {
    const schema = designJsonSchema()
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    const printed = JSON.stringify(schema)
    for (const words of ['mass, kg', 'net area of the first face, m2', 'pi / 2 straight down, rad', 'girth from the crown'])
      expect(printed).toContain(words)
  })
})

describe('rounding', () => {
  it('rounds to 1e-9 and turns minus nothing into nothing', () => {
    expect(rounded({ a: [0.1234567894, -1e-12], b: -0, c: null, d: 'x' })).toEqual({ a: [0.123456789, 0], b: 0, c: null, d: 'x' })
    expect(Object.is(rounded(-0), 0)).toBe(true)
  })
  it('throws on a number that is not one, with where it stands', () => {
    expect(() => rounded({ parts: [{ mass: Number.NaN }] })).toThrow('.parts.0.mass is NaN')
  })
})
