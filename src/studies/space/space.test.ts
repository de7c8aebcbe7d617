/** The three coaches of the demonstration in space, held against what is derived of them flat. */
import { describe, expect, it } from 'vitest'
import { exampleText, readExample } from '../../../tests/examples.js'
import { design as designOf } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import type { Definition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import type { Part, PartKind } from '../../derive/nouns.js'
import { cross, dot, length, scale, sub, type Vec3 } from '../../maths/vec.js'
import { insideOf, panelBetween } from '../gores/panel.js'
import { meshArea } from './build.js'
import { gapsOf } from './distance.js'
import type { Mesh, Space } from './nouns.js'
import { spaceMaker } from './space.js'

function subject(definition: Definition) {
  const memo = createMemo()
  return { design: designOf(definition, memo), derived: derive(definition, memo) }
}

function wrapped(name: string): Definition {
  const { path, text, load } = exampleText(name)
  const { definition } = readDefinition(path, setInText(text, ['ends', 'make'], 'wrapped'), load)
  if (!definition) throw new Error('the demonstration is refused')
  return definition
}

const meshOf = (space: Space, id: string): Mesh => {
  const part = space.parts.find((each) => each.id === id)
  if (!part) throw new Error(`${id} is not in space`)
  return part.mesh
}

const coaches = [
  ...['sedge-4', 'sedge-6', 'sedge-8'].map((name) => ({ name, made: subject(readExample(name)) })),
  { name: 'sedge-6 wrapped', made: subject(wrapped('sedge-6')) },
].map(({ name, made }) => ({ name, made, space: spaceMaker()(made) }))

/** Chords of at most four degrees and steps at laps of four millimetres: a thousandth. */
const ROLLED: readonly PartKind[] = ['strake', 'lining', 'stringer', 'edge-channel', 'underbelly']
/** Laps of a gore are derived along its edges on the mould line, here on the sheet itself: five thousandths. */
const DOMED: readonly PartKind[] = ['gore', 'crown-cap']

describe.each(coaches)('$name in space', ({ made, space }) => {
  const { design, derived } = made

  it('has every part, in plain finite figures, with lines that have two ends', () => {
    expect(design.parts.filter(({ id }) => !space.parts.some((each) => each.id === id)).map(({ id }) => id)).toEqual([])
    for (const { id, mesh, apart } of space.parts) {
      const all = [...mesh.positions, ...mesh.normals, ...mesh.lines, ...apart]
      expect(all.filter((v) => !Number.isFinite(v)).length, id).toBe(0)
      expect(mesh.index.length, id).toBeGreaterThan(0)
      expect(Math.max(...mesh.index), id).toBeLessThan(mesh.positions.length / 3)
      expect(mesh.lines.length % 6, id).toBe(0)
      expect(mesh.under.length, id).toBe(mesh.positions.length / 3)
      expect(mesh.linesUnder.length, id).toBe(mesh.lines.length / 3)
    }
  })

  it('has its sheets as large in space as they are flat', () => {
    const off = (part: Part): number => meshArea(meshOf(space, part.id)) / part.area - 1
    // an opening may reach into the cap, which `cutIn` does not name
    const cut = new Set(design.openings.flatMap(({ end, cutIn, surface }) => (end ? [...cutIn, `${surface}-cap`] : [])))
    for (const part of design.parts) {
      if (ROLLED.includes(part.kind)) expect(Math.abs(off(part)), part.id).toBeLessThan(0.001)
      if (DOMED.includes(part.kind) && !cut.has(part.id)) expect(Math.abs(off(part)), part.id).toBeLessThan(0.0055)
    }
  })

  it('has lost no more of its ends to openings than the openings take', () => {
    for (const end of ['nose', 'tail'] as const) {
      const sheets = design.parts.filter(({ id, kind }) => DOMED.includes(kind) && id.startsWith(end))
      const panes = design.openings.filter(({ surface }) => surface === end)
      const whole = sheets.reduce((sum, part) => sum + part.area, 0)
      const left = sheets.reduce((sum, { id }) => sum + meshArea(meshOf(space, id)), 0)
      const taken = panes.reduce((sum, { id }) => sum + meshArea(meshOf(space, `pane-${id}`)), 0)
      expect(panes.length, end).toBeGreaterThan(0)
      expect(Math.abs((left + taken) / whole - 1), end).toBeLessThan(0.0055)
    }
  })

  it('weighs what it weighs', () => {
    const masses = new Map(space.parts.flatMap(({ id, mass }) => (mass === null ? [] : [[id, mass] as const])))
    expect(masses.size).toBe(design.parts.length)
    for (const { id, mass } of design.parts) expect(masses.get(id)).toBe(mass.value)
  })

  it('has every rivet of the skin on the sheet its head is on, to two millimetres', () => {
    // a head is on the outer face; the middle of a sheet is half its thickness in, and under a neighbour one more
    const { positions, normals, part, radius } = space.rivets
    const rows = [...design.rows, ...design.bolts]
    expect(radius.length).toBe(rows.reduce((sum, row) => sum + row.station.length, 0))
    const far: string[] = []
    const finders = new Map<string, (p: Vec3) => number>()
    const away = (id: string, at: Vec3): number => {
      const finder = finders.get(id) ?? distanceTo(meshOf(space, id))
      finders.set(id, finder)
      return finder(at)
    }
    let i = 0
    for (const row of rows)
      for (const stack of row.stack) {
        const at: Vec3 = [positions[3 * i], positions[3 * i + 1], positions[3 * i + 2]]
        // the lining is fastened through its tape, on the inner flange of a frame or a rib
        const [id, most] = row.kind === 'lining' ? [row.stacks[stack].parts[0], 0.012] : [space.parts[part[i]].id, 0.002]
        if (!(away(id, at) < most))
          far.push(`${row.id} ${id} ${(away(id, at) * 1000).toFixed(1)} mm at ${at.map((v) => v.toFixed(3)).join(' ')}`)
        expect(Math.hypot(normals[3 * i], normals[3 * i + 1], normals[3 * i + 2])).toBeCloseTo(1, 5)
        i++
      }
    expect(
      far.filter((_, k) => k % 20 === 0),
      `${far.length} of ${radius.length}`,
    ).toEqual([])
  })

  it('says how far gores lie inside the mould line: as deep as the study finds them, and nothing at their seams', () => {
    const { ground } = derived.endSections.local
    const gaps = gapsOf(derived, space)
    for (let k = 1; k <= ground.gores; k++) {
      const found = insideOf(ground, panelBetween(ground, ground.edges[k - 1], ground.edges[k]))
      const field = gaps.get(`nose-gore-${k}`)
      if (!found || !field) throw new Error(`gore ${k} is refused`)
      // the study bends it on the mould line, here it lies a sheet or two deeper at its edges; and an opening may take the deepest place
      const deepest = Math.max(...field)
      expect(deepest, `gore ${k}`).toBeLessThan(found.depth + 0.0025)
      expect(deepest, `gore ${k}`).toBeGreaterThan(found.depth - 0.003)
      expect(Math.min(...field), `gore ${k}`).toBeLessThan(0.0016)
    }
  })
})

/** Distance of a point to the nearest triangle, m: those whose box is near are looked at. */
function distanceTo({ positions, index }: Mesh): (p: Vec3) => number {
  const at = (i: number): Vec3 => [positions[3 * index[i]], positions[3 * index[i] + 1], positions[3 * index[i] + 2]]
  const triangles = Array.from({ length: index.length / 3 }, (_, i) => {
    const corners = [at(3 * i), at(3 * i + 1), at(3 * i + 2)] as const
    const box = [0, 1, 2].map((axis) => [Math.min(...corners.map((c) => c[axis])), Math.max(...corners.map((c) => c[axis]))])
    return { corners, box }
  })
  return (p) => {
    let least = Number.POSITIVE_INFINITY
    for (const { corners, box } of triangles)
      if (box.every(([low, high], axis) => p[axis] > low - Math.min(least, 0.03) && p[axis] < high + Math.min(least, 0.03)))
        least = Math.min(least, toTriangle(p, corners))
    return least
  }
}

function toTriangle(p: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): number {
  const n = cross(sub(b, a), sub(c, a))
  const long = length(n)
  if (long > 0) {
    const foot = sub(p, scale(n, dot(sub(p, a), n) / (long * long)))
    const inside = [
      [a, b],
      [b, c],
      [c, a],
    ].every(([s, e]) => dot(cross(sub(e, s), sub(foot, s)), n) >= 0)
    if (inside) return length(sub(p, foot))
  }
  return Math.min(toLine(p, a, b), toLine(p, b, c), toLine(p, c, a))
}

function toLine(p: Vec3, a: Vec3, b: Vec3): number {
  const way = sub(b, a)
  const share = Math.min(1, Math.max(0, dot(sub(p, a), way) / Math.max(dot(way, way), 1e-30)))
  return length(sub(p, [a[0] + share * way[0], a[1] + share * way[1], a[2] + share * way[2]]))
}
