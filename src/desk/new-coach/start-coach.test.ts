import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { chance } from '../../../tests/random.js'
import { root } from '../../../tests/tree.js'
import { packetPlan } from '../../documents/packet/plan.js'
import { deskCoach } from '../desk-coach.js'
import type { DeskCoach } from '../desk-coach-nouns.js'
import { familiesOf, type Pattern, patternFor, patternOf } from './families.js'
import { sectionShown, type TypedSection } from './own-section.js'
import { type Started, startCoach } from './start-coach.js'

const EXAMPLES = join(root, 'examples')
const files = Object.fromEntries(
  readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => [`examples/${name}`, readFileSync(join(EXAMPLES, name), 'utf8')]),
)
const pattern = (name: string): Pattern => {
  const found = patternOf({ path: `examples/${name}.yaml`, files })
  if (!found) throw new Error(`${name} does not read`)
  return found
}
const patterns = ['sedge-4', 'sedge-6', 'sedge-8'].map(pattern)
const [family] = familiesOf(patterns)

function opened({ path, files: all, faults }: Started): DeskCoach {
  expect(faults).toEqual([])
  const desk = deskCoach({ path, files: all })
  if ('faults' in desk) throw new Error(desk.faults.map(({ says }) => says).join(' '))
  return desk
}

/** It reads, is derived and checked, and its packet can be planned. */
function works(started: Started): DeskCoach {
  const desk = opened(started)
  const design = desk.design()
  expect(packetPlan(design).length).toBeGreaterThan(30)
  expect(design.checks.length).toBeGreaterThan(100)
  return desk
}

const fails = (desk: DeskCoach): string[] =>
  desk
    .design()
    .checks.filter(({ verdict }) => verdict === 'fail')
    .map(({ says }) => says)

describe('the families', () => {
  it('are what coaches stand on, with the lengths their sheets and board give', () => {
    expect(family).toMatchObject({ path: 'examples/sedge.family.yaml', name: 'Sedge' })
    expect(family.members.map(({ name }) => name)).toEqual(['Sedge 4', 'Sedge 6', 'Sedge 8'])
    // four bays of 580 mm, and 204 in less its trim, the overlap of the joints and a rounding; each with two ends
    const ends = family.members[1].length - 6 * 0.61
    expect(family.shortest).toBeCloseTo(4 * 0.61 * 0.95 + ends, 6)
    expect(family.longest).toBeCloseTo(Math.min(204 * 0.0254 - 2 * 0.0015 - 0.05, 7.32 - 2 * 1.085) - 0.002 + ends, 6)
  })

  it('a family alone is no pattern', () => expect(patternOf({ path: 'examples/sedge.family.yaml', files })).toBeNull())
})

describe('a coach from a family and a length', () => {
  it.each([...[3].map((seed) => chance(seed).between(family.shortest, family.longest)), family.shortest, family.longest])(
    'works at %d m',
    (length) => {
      const { path } = patternFor(family, length)
      const taken = patterns.find(({ coach }) => coach.path === path) ?? patterns[0]
      const desk = works(startCoach(taken, { name: 'Trial', length, section: null }))
      // the body is as long as asked, to the rounding of its frames
      const { frames } = desk.design().definition
      const reach = desk.design().ends.reach
      expect(frames[frames.length - 1].station - frames[0].station + 2 * reach).toBeCloseTo(length, 2)
      // the layout is clean; what a rating of the pattern cannot carry at another length is said, and not hidden
      expect(fails(desk).filter((says) => !/^Case F/.test(says))).toEqual([])
    },
    60_000,
  )

  it('has the bays of its pattern at the length of its pattern, and takes a name no disk or form would like', () => {
    const { length } = family.members[1]
    const started = startCoach(patterns[1], { name: 'yes: "Ñandú" / 7', length, section: null })
    expect(started.path).toBe('examples/yes-nandu-7.yaml')
    const { definition } = works(started).design()
    expect(definition.frames.map(({ station }) => station)).toEqual(patterns[1].definition.frames.map(({ station }) => station))
    expect(definition.coach.name).toBe('yes: "Ñandú" / 7')
    expect(definition.openings.map(({ id }) => id)).toEqual(['D1'])
  }, 60_000)

  it('puts the axles where every case it is designed for lies in the band', () => {
    const { weight, definition } = opened(startCoach(patterns[1], { name: 'Trial', length: 6.2, section: null })).design()
    if (!('cases' in weight) || !definition.weight) throw new Error('it was not weighed')
    const shares = weight.cases.filter(({ design }) => design).map(({ share }) => share.value)
    const [least, most] = definition.weight.hitch
    expect(Math.min(...shares)).toBeGreaterThan(least)
    expect(Math.max(...shares)).toBeLessThan(most)
  }, 60_000)
})

const arc = (name: string, radius: string, to: string) => ({ name, kind: 'arc' as const, radius, to, length: '' })
const line = (name: string, length: string) => ({ name, kind: 'line' as const, radius: '', to: '', length })

/** A handful of arcs as a shop would chalk them on the floor. */
const SECTIONS: Readonly<Record<string, TypedSection>> = {
  'low and narrow': {
    ...{ crown: '1850 mm', width: '', height: '2050' },
    pieces: [arc('roof', '2800', '14'), arc('shoulder', '350', '80'), arc('side', '6000', '93'), arc('turn-under', '500', 'fit')],
  },
  'round in two arcs and a straight': {
    ...{ crown: '1900', width: '', height: '2100' },
    pieces: [arc('roof', '1500', '25'), arc('side', '1020', '100'), line('under', 'fit')],
  },
  'straight sides, in inches': {
    ...{ crown: '84 in', width: '', height: '92 in' },
    pieces: [arc('roof', '118 in', '15'), arc('shoulder', '15 in', '85'), line('side', 'fit'), arc('turn-under', '13 3/4 in', '140')],
  },
}

describe("a coach from one's own section", () => {
  it.each(Object.entries(SECTIONS))(
    'works: %s',
    (_, typed) => {
      const { section, faults, says } = sectionShown(typed)
      expect(faults).toEqual({})
      if (!section) throw new Error('no section')
      expect(says.join(' ')).toMatch(/as asked/)
      const desk = works(startCoach(patterns[1], { name: 'Own', length: 6.1, section }))
      expect(desk.design().section.residual?.value ?? 0).toBeLessThan(1e-6)
      expect(fails(desk).filter((each) => !/wide; the board is|allowed on the road|asked for/.test(each))).toEqual([])
    },
    60_000,
  )

  it('says what is wrong beside its field', () => {
    const [, , straight] = Object.values(SECTIONS)
    const faulty = (over: Partial<TypedSection>) => sectionShown({ ...straight, ...over })
    expect(faulty({ crown: '6 kg' }).faults.crown).toMatch(/length/)
    expect(faulty({ crown: '' }).faults.crown).toBe('Write a length in mm.')
    expect(faulty({ height: '' }).faults.height).toMatch(/One value is left to fit/)
    expect(faulty({ pieces: [arc('roof', '3000', '15'), arc('shoulder', '380', '10')] }).faults['pieces 1 to']).toMatch(
      /begins at 15 deg and bends down/,
    )
    const short = sectionShown({ crown: '2000', width: '', height: '', pieces: [arc('roof', '3000', '15')] })
    expect(short.faults['pieces 0 to']).toMatch(/ends at waterline 1897\.8 mm, above the floor/)
    expect(short.points.length).toBeGreaterThan(100)
    expect(short.section).toBeNull()
  })

  it('says how far it misses a size nothing is fitted to', () => {
    const { says, section } = sectionShown({ crown: '1000', width: '1990', height: '', pieces: [arc('hoop', '1000', '100')] })
    // a hoop of 1 m radius is 2 m wide
    expect(says[0]).toMatch(/It is 2000\.0 mm wide: 10\.0 mm more than asked/)
    expect(section).not.toBeNull()
  })
})
