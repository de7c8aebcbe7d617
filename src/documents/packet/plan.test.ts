import { readFileSync } from 'node:fs'
import type { DxfParser, ICircleEntity, ILwpolylineEntity } from 'dxf-parser'
import dxfParser from 'dxf-parser'
import { describe, expect, it } from 'vitest'
import { design as designOf } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import { fileStem } from '../text/heading.js'
import { readCoordinateProgram } from '../text/read-coordinate-program.js'
import { readHoleTable } from '../text/read-hole-table.js'
import { readShopTables } from '../text/shop-tables.js'
import { packetPlan } from './plan.js'

const file = new URL('../../../examples/sedge-6.yaml', import.meta.url).pathname
const design = designOf(readDefinition(file, readFileSync(file, 'utf8'), (path) => readFileSync(path, 'utf8')).definition!)
const plan = packetPlan(design, { program: 'Coachwright test' })
const byPath = new Map(plan.map((d) => [d.path, d]))
const text = (path: string): string => {
  const content = byPath.get(path)?.content
  if (content?.kind !== 'text') throw new Error(`no text document at ${path}`)
  return content.make()
}
const faces = design.parts.flatMap((part) => part.patterns.map((pattern) => ({ part, pattern, stem: fileStem(part, pattern) })))
const punched = faces.filter(({ pattern }) => pattern.holes.x.length > 0)
// the library's types say a namespace where its file gives the class itself
const Parser = dxfParser as unknown as new () => DxfParser

describe('the plan of a packet', () => {
  it('opens with the cover and has every room of the shop', () => {
    expect(plan[0].path).toBe('cover.pdf')
    const folders = new Set(plan.map((d) => d.path.split('/')[0]))
    for (const folder of [
      'sheets',
      'frames',
      'lining',
      'openings',
      'members',
      'templates',
      'holes',
      'programs',
      'tape',
      'schedules',
      'checks',
    ])
      expect(folders).toContain(folder)
  })

  it('gives each face a drawing file in both forms, and each punched face a hole table and a program', () => {
    const ends = (ending: string): readonly string[] => plan.filter((d) => d.path.endsWith(ending)).map((d) => d.path)
    expect(ends('.dxf').length).toBe(faces.length)
    expect(ends('.svg').length).toBe(faces.length)
    const routed = ends('-router.nc')
    expect(routed).toEqual(['programs/floor-panel-router.nc'])
    expect(ends('.nc').length).toBe(punched.length + routed.length)
    expect(plan.filter((d) => /^holes\/.*\.csv$/.test(d.path)).length).toBe(punched.length)
  })

  it('makes programs whose every hit is a hole of the table, which is the pattern', () => {
    for (const { pattern, stem } of punched) {
      const table = readHoleTable(text(`holes/${stem}.csv`))
      const program = readCoordinateProgram(text(`programs/${stem}.nc`))
      expect([stem, table.intact, program.faults, program.checksum]).toEqual([stem, true, [], table.checksum])
      expect(program.hits.length).toBe(pattern.holes.x.length)
      expect(new Set(program.hits.map((h) => h.hole)).size).toBe(program.hits.length)
      for (const hit of program.hits) {
        const row = table.rows[hit.hole! - 1]
        expect([hit.x, hit.y, hit.tool]).toEqual([row.x, row.y, row.tool])
      }
      table.rows.forEach((row, i) => {
        expect(Math.hypot(row.x - pattern.holes.x[i], row.y - pattern.holes.y[i])).toBeLessThan(1e-6)
        expect(row.diameter).toBe(pattern.holes.diameter[i])
      })
    }
  })

  it('makes drawing files that hold the pattern, to a nanometre', () => {
    const folder = (stem: string): string => plan.find((d) => d.path.endsWith(`/${stem}.dxf`))!.path
    for (const { pattern, stem } of faces) {
      const read = new Parser().parseSync(text(folder(stem)))!
      const circles = read.entities.filter((e) => e.layer === 'HOLES') as unknown as ICircleEntity[]
      expect(circles.length).toBe(pattern.holes.x.length)
      const off = circles.map((c, i) => Math.hypot(c.center.x / 1000 - pattern.holes.x[i], c.center.y / 1000 - pattern.holes.y[i]))
      expect(Math.max(0, ...off)).toBeLessThan(2e-9)
      const blank = read.entities.find((e) => e.layer === 'OUTLINE') as unknown as ILwpolylineEntity
      expect(
        blank.vertices
          .map((v) => v.bulge ?? 0)
          .map((b, i) => Math.abs(b - pattern.outline[i][2]))
          .every((d) => d < 1e-9),
      ).toBe(true)
      expect(read.entities.filter((e) => e.layer === 'CUT').length).toBe(pattern.cuts.length)
    }
  })

  it('gives the shop its tables to edit', () => {
    expect(readShopTables(text('programs/shop-tables.json'), 'shop-tables.json').faults).toEqual([])
  })

  it('adds tiles of a part that is asked for, and refuses one that is not there', () => {
    const more = packetPlan(design, { tiles: ['rim-HC1'] })
    expect(more.length).toBe(plan.length + 1)
    expect(() => packetPlan(design, { tiles: ['rim-ZZ'] })).toThrow('no part rim-ZZ')
  })

  it('makes the same texts again', () => {
    const again = packetPlan(design, { program: 'Coachwright test' })
    for (const path of [
      'sheets/strake-crown.dxf',
      'sheets/strake-crown.svg',
      'holes/strake-crown.csv',
      'programs/strake-crown.nc',
      'schedules/rivets.csv',
      'checks/checks.csv',
    ]) {
      const content = again.find((d) => d.path === path)!.content
      expect(content.kind === 'text' && content.make()).toBe(text(path))
    }
  })
})
