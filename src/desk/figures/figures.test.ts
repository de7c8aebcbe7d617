/** The live figures against the design they are of: the same numbers, on every demonstration coach. */
import { describe, expect, it } from 'vitest'
import { exampleText, readExample } from '../../../tests/examples.js'
import type { Subject } from '../../checks/explain/entry.js'
import { working } from '../../checks/explain/working.js'
import { design } from '../../checks/index.js'
import { readDefinition } from '../../definition/read-definition.js'
import { setInText } from '../../definition/set-in-text.js'
import type { Definition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import { computeBlanks } from '../../studies/blanks/compute.js'
import { blankStudy } from '../../studies/blanks/study.js'
import { swayCurves } from '../../studies/sway/study.js'
import { goresFigure } from './gores.js'
import type { OrNot } from './nouns.js'
import { roomMap, roomSaid } from './room-map.js'
import { sectionLines } from './section-lines.js'
import { swayLines } from './sway-lines.js'
import { weightBars } from './weight-bars.js'

function subject(definition: Definition): Subject {
  const memo = createMemo()
  return { design: design(definition, memo), derived: derive(definition, memo) }
}
const COACHES = ['sedge-4', 'sedge-6', 'sedge-8'].map((name) => ({ name, coach: subject(readExample(name)) }))
const [, { coach: six }] = COACHES

function there<T extends object>(it: OrNot<T>): T {
  if ('notComputed' in it) throw new Error(String(it.notComputed))
  return it as T
}

/** The value behind the figure a bar opens. */
function opened(coach: Subject, id: string): number {
  const found = working(coach, id)
  if (found.kind !== 'number') throw new Error(found.says)
  return found.worked.value
}

describe.each(COACHES)('the figures of $name', ({ coach }) => {
  const weight = there(coach.design.weight)

  it('have a bar for every load case, of the length of the figure it opens', () => {
    const bars = there(weightBars(coach.design, 'metric'))
    expect(bars.cases.map(({ id }) => id)).toEqual(weight.cases.map(({ id }) => id))
    expect([bars.band.least, bars.band.most]).toEqual(weight.hitchBand)
    for (const [i, { id, share, axles }] of bars.cases.entries()) {
      const one = weight.cases[i]
      expect(opened(coach, share.working)).toBe(share.value)
      expect(share.words).toBe(`${(one.share.value * 100).toFixed(1)} %, ${one.hitch.value.toFixed(0)} kg`)
      expect(share.verdict).toBe(coach.design.checks.find((check) => check.id === `weight.hitch.${id}`)?.verdict)
      for (const axle of axles) expect(opened(coach, axle.working)).toBeCloseTo(axle.value * one.axles[0].rating, 9)
      expect(Math.max(share.value, weight.hitchBand[1])).toBeLessThan(bars.ends.share)
    }
  })

  it('say at the places of the definition what the design says of them', () => {
    const map = there(roomMap(coach.design, 'metric'))
    for (const [i, { at, room }] of weight.places.entries()) {
      expect(there(roomSaid(coach.design, at[0], at[1], 'metric')).mass).toBe(room.mass)
      expect(map.places[i].words).toBe(`${Math.floor(room.mass ?? Number.NaN)} kg`)
    }
    // every square is in one band, and the figures written on it lie within that band
    expect(map.bands.flatMap(({ squares }) => squares).length).toBeGreaterThan(2000)
    for (const { x, y, words } of map.soundings)
      expect(`${Math.floor(there(roomSaid(coach.design, x, y, 'metric')).mass ?? -1)}`).toBe(words)
  })

  it('draw the damping that the study has, for the tow car that was chosen', () => {
    const towing = there(coach.design.towing)
    const curves = swayCurves(towing)?.curves ?? []
    for (const { id } of towing.cars) {
      const figure = there(swayLines(coach.design, id, 'metric'))
      expect(figure.car).toBe(id)
      for (const line of figure.lines) {
        const own = curves.find((each) => each.case === line.case && each.car === id)
        expect(line.points.map(([, damping]) => damping)).toEqual(own?.damping)
        const steady = towing.steadiness.find((each) => each.case === line.case && each.car === id)
        expect(line.atStated).toBe(`${((steady?.damping ?? Number.NaN) * 100).toFixed(1)} %`)
        // the curve passes through what is stated at 100 km/h
        const after = line.points.findIndex(([speed]) => speed >= 100)
        const [[v0, d0], [v1, d1]] = [line.points[after - 1], line.points[after]]
        const between = Number(d0) + ((Number(d1) - Number(d0)) * (100 - v0)) / (v1 - v0)
        expect(between).toBeCloseTo(steady?.damping ?? Number.NaN, 3)
      }
      expect(figure.lines.find((line) => line.isWorst)?.case).toBe(towing.moves.find((each) => each.car === id)?.case)
    }
  })

  it('have the points of the section, and its girths on the lining', () => {
    const lines = sectionLines(coach, 'lining', 'named', 'metric')
    const { points } = coach.derived.section
    expect(lines.rows.map(({ name }) => name)).toEqual(points.map(({ says }) => says))
    lines.rows.forEach(({ girth, own, working: id }, i) => {
      expect(Number(girth)).toBeCloseTo(points[i].girth * 1000, 1)
      expect(Number(own)).toBeCloseTo(points[i].liningGirth * 1000, 1)
      expect(opened(coach, id ?? '')).toBeCloseTo(points[i].girth, 9)
    })
    const mould = sectionLines(coach, 'mould', '100 mm', 'metric').rows
    for (const { y, z, name } of mould.filter((row) => row.name !== null)) {
      const point = points.find(({ says }) => says === name)
      expect([y, z]).toEqual([expect.closeTo(point?.y ?? Number.NaN, 9), expect.closeTo(point?.z ?? Number.NaN, 9)])
    }
    const steps = mould.map((row) => Number(row.girth)).filter((girth) => Number.isInteger(girth / 100))
    expect(steps).toEqual(Array.from({ length: Math.floor((coach.derived.section.halfGirth + 1e-9) * 10) + 1 }, (_, i) => i * 100))
  })
})

describe('the figures in the units of the reader', () => {
  it('are in pounds, inches and miles an hour where that was asked for', () => {
    expect(there(weightBars(six.design, 'inch')).cases[0].share.words).toMatch(/ lb$/)
    expect(there(roomMap(six.design, 'inch')).bands[0].says).toBe('under 50 lb')
    expect(there(swayLines(six.design, null, 'inch')).stated).toEqual({ at: expect.closeTo(62.137, 3), says: '62 mph (100 km/h)' })
    const inch = sectionLines(six, 'mould', '4 in', 'inch')
    expect(inch.unit).toBe('in')
    expect(inch.rows.map(({ girth }) => girth)).toEqual(expect.arrayContaining(['0.000', '4.000', '8.000']))
  })

  it('say why there is none where nothing is written', () => {
    const bare = { ...six.design, weight: { notComputed: 'No weight is written.' }, towing: { notComputed: 'No towing is written.' } }
    expect(weightBars(bare, 'metric')).toEqual({ notComputed: 'No weight is written.' })
    expect(roomSaid(bare, 5, 0, 'metric')).toEqual({ notComputed: 'No weight is written.' })
    expect(swayLines(bare, null, 'metric')).toEqual({ notComputed: 'No towing is written.' })
  })
})

describe('the gores laid flat', () => {
  it('have the distance of wrapped gores, as deep as their facts say', () => {
    const { path, text, load } = exampleText('sedge-6')
    const { definition } = readDefinition(path, setInText(text, ['ends', 'make'], 'wrapped'), load)
    if (!definition) throw new Error('the demonstration is refused')
    const wrapped = subject(definition)
    for (const end of ['nose', 'tail'] as const) {
      const { gores, needs, bands } = goresFigure(wrapped, end, null, 'metric')
      expect(needs).toBeNull()
      expect(gores).toHaveLength(wrapped.derived.ends.wrapped?.length ?? -1)
      gores.forEach((gore, i) => {
        const facts = wrapped.derived.ends.wrapped?.[i]
        expect(gore.figures[0].words).toContain(`${((facts?.inside?.depth ?? Number.NaN) * 1000).toFixed(1)} mm`)
        expect(within(gore.above.flat(), gore.outline)).toBe(true)
      })
      expect(bands.length).toBeGreaterThan(2)
      // only what lies that deep is inked above the last level
      const least = Number(/^[\d.]+/.exec(bands[bands.length - 1])?.[0]) / 1000
      gores.forEach((gore, i) => {
        const depth = wrapped.derived.ends.wrapped?.[i].inside?.depth ?? Number.NaN
        expect(gore.above[gore.above.length - 1].length > 0, gore.part).toBe(depth > least)
      })
    }
  })

  it('say that the strain of formed gores is not computed, and have it when it is', () => {
    const before = goresFigure(six, 'tail', null, 'metric')
    expect(before.gores.every((gore) => gore.why === 'Its blank is not worked out yet.' && gore.above.length === 0)).toBe(true)
    const blanks = before.needs && computeBlanks(before.needs.input)
    if (!blanks) throw new Error('nothing was needed')
    const study = blankStudy(six.derived, blanks)
    for (const end of ['nose', 'tail'] as const) {
      const { gores, needs } = goresFigure(six, end, blanks, 'metric')
      expect(needs).toBeNull()
      for (const gore of gores) {
        const blank = study.blanks.find(({ parts }) => parts.some(({ part }) => part === gore.part))
        expect(gore.figures[0].words).toContain(`${((blank?.stretch.peak ?? Number.NaN) * 100).toFixed(1)} %`)
        expect(within(gore.above.flat(), gore.outline)).toBe(true)
      }
    }
    // another coach's blanks are not taken for this one's
    expect(goresFigure(six, 'nose', { ...blanks, key: 'another' }, 'metric').needs).not.toBeNull()
  })
})

/** Whether a field lies in the box round its outline, to a millimetre: turned over by mistake it would not. */
function within(points: readonly number[], outline: readonly number[]): boolean {
  const of = (list: readonly number[], axis: number): number[] => list.filter((_, i) => i % 2 === axis)
  return [0, 1].every((axis) => {
    const [low, high] = [Math.min(...of(outline, axis)), Math.max(...of(outline, axis))]
    return of(points, axis).every((value) => value > low - 1e-3 && value < high + 1e-3)
  })
}
