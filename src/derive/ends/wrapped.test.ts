/** The demonstration's ends wrapped instead of formed: flats, holes and ribs held against the sheets in space. */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../../tests/examples.js'
import { randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import type { Flat } from '../../maths/strip/on-strip.js'
import { type Derived, derive } from '../index.js'
import type { Part, Pattern } from '../nouns.js'

function sedge(make: 'formed' | 'wrapped'): Derived {
  const { path, text, load } = exampleText('sedge-6')
  const { definition } = readDefinition(path, setInText(text, ['ends', 'make'], make), load)
  if (!definition) throw new Error('the demonstration is refused')
  return derive(definition)
}

const design = sedge('wrapped')
const gores = (end: 'nose' | 'tail'): Part[] => design.parts.filter((p) => p.kind === 'gore' && p.id.startsWith(end))
const sheet = (part: Part): Pattern => {
  if (part.patterns.length !== 1) throw new Error(`${part.id} has no flat pattern`)
  return part.patterns[0]
}
/** places of a row's holes on a sheet, by the fastener's index */
const holesOf = ({ holes }: Pattern, row: string): Map<number, Flat> => {
  const k = holes.rows.indexOf(row)
  return new Map(holes.index.flatMap((i, n) => (holes.row[n] === k ? [[i, [holes.x[n], holes.y[n]] as const] as const] : [])))
}
const apart = ([a, b]: Flat, [c, d]: Flat): number => Math.hypot(a - c, b - d)
const away = ([x, y]: Flat, a: readonly number[], b: readonly number[]): number => {
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const on = Math.min(1, Math.max(0, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v)))
  return Math.hypot(x - a[0] - on * u, y - a[1] - on * v)
}

describe('wrapped gores of the demonstration', () => {
  it('are all sheets, and say what wrapping costs', () => {
    const facts = design.ends.wrapped ?? []
    expect(facts).toHaveLength(gores('nose').length)
    for (const each of facts) expect(each.refused).toBeNull()
    for (const part of [...gores('nose'), ...gores('tail')]) {
      expect(part.notComputed, part.id).toBeUndefined()
      expect(part.notes.join(' ')).toContain('not stretched')
    }
    expect(sedge('formed').ends.wrapped).toBeUndefined()
  })

  it('are held against the radius they spring back from', () => {
    // D: derived, E t / 2 Fty of 5052-O, 1.02 mm: 10.1e3 ksi and 9.5 ksi as the alloy table gives them
    expect(design.ends.wrapped?.[0].elastic.value).toBeCloseTo((10.1e3 * 0.00102) / (2 * 9.5), 4)
  })

  it('have neighbours whose seam holes stand the same distances apart on both flats', () => {
    for (const end of ['nose', 'tail'] as const) {
      const all = gores(end)
      const seams = new Set(all.flatMap((p) => sheet(p).holes.rows.filter((r) => r.startsWith(`${end}-seam-`))))
      expect(seams.size).toBe(all.length - 1)
      for (const seam of seams) {
        const on = all.map((p) => holesOf(sheet(p), seam)).filter((holes) => holes.size > 3)
        expect(on, seam).toHaveLength(2)
        const both = [...on[0].keys()].filter((i) => on[1].has(i)).sort((a, b) => a - b)
        expect(both.length).toBeGreaterThan(20)
        for (let n = 1; n < both.length; n++) {
          const [one, other] = on.map((holes) => apart(holes.get(both[n - 1]) as Flat, holes.get(both[n]) as Flat))
          // the two sheets lie one thickness apart, so the distances differ by thickness over bend radius
          expect(Math.abs(one - other), `${seam} ${both[n]}`).toBeLessThan(1e-4 + 0.02 * one)
        }
      }
    }
  })

  it('hold every hole inside the outline, clear of its edge by 1.5 diameters', () => {
    for (const part of [...gores('nose'), ...gores('tail')]) {
      const { outline, holes } = sheet(part)
      holes.x.forEach((x, n) => {
        const at: Flat = [x, holes.y[n]]
        let turns = 0
        let near = Number.POSITIVE_INFINITY
        outline.forEach((a, i) => {
          const b = outline[(i + 1) % outline.length]
          near = Math.min(near, away(at, a, b))
          const over = a[1] > at[1] !== b[1] > at[1]
          if (over && at[0] < a[0] + ((at[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) turns++
        })
        expect(turns % 2, `${part.id} ${holes.rows[holes.row[n]]} ${holes.index[n]}`).toBe(1)
        expect(near, `${part.id} ${holes.rows[holes.row[n]]} ${holes.index[n]}`).toBeGreaterThan(1.5 * holes.diameter[n])
      })
    }
  })

  it('mirror one another, and the tail the nose', () => {
    const [nose, tail] = [gores('nose'), gores('tail')]
    nose.forEach((part, i) => {
      expect(part.area).toBeCloseTo(nose[nose.length - 1 - i].area, 9)
      expect(part.area).toBeCloseTo(tail[i].area, 9)
    })
  })

  it('have mid holes on the flats as far apart as in space', () => {
    const part = gores('nose')[1]
    const row = design.rows.find((r) => r.id === 'nose-mid-2')
    if (!row?.end || !row.waterline) throw new Error('no row nose-mid-2')
    const holes = holesOf(sheet(part), row.id)
    const { end, waterline, station } = row
    let worst = 0
    for (let i = 1; i < station.length; i++) {
      const [a, b] = [holes.get(i - 1), holes.get(i)]
      if (!a || !b) continue
      const chord = Math.hypot(station[i] - station[i - 1], end.y[i] - end.y[i - 1], waterline[i] - waterline[i - 1])
      // bent in space and nearly straight on the flat: a chord is shorter by its square over 24 radii squared
      worst = Math.max(worst, Math.abs(apart(a, b) / chord - 1))
    }
    expect(holes.size).toBeGreaterThan(20)
    expect(worst).toBeLessThan(0.02)
  })
})

describe('the girth of a place on a wrapped end', () => {
  // 1064: a made-up coach whose sheets all but lie in the plane they are cut by beside the joint
  const odd = readDefinition('trial.yaml', randomCoach(1064).text, () => null).definition
  it.each([
    ['the demonstration', design],
    ['a made-up coach', odd && derive(odd)],
  ])('runs on evenly to the joint: %s', (_says, made) => {
    if (!made) throw new Error('the coach is refused')
    const { skin } = made.endSections.local
    const girthAt = (short: number): number => skin.locate(Math.PI / 2 - short, { at: 'base' }).girth
    const shorts = Array.from({ length: 40 }, (_, i) => 0.02 - i * 5e-4)
    const steps = shorts.slice(1).map((short, i) => girthAt(short) - girthAt(shorts[i]))
    // a fifth of a millimetre a thousandth of a radian is more than the demonstration's end turns by
    for (const step of steps) expect(Math.abs(step)).toBeLessThan(1e-4)
    for (const [i, step] of steps.slice(1).entries()) expect(Math.abs(step - steps[i])).toBeLessThan(2e-6)
  })
})
