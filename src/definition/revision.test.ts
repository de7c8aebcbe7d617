import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { mergedYaml } from './merged-yaml.js'
import { readDefinition } from './read-definition.js'
import { canonicalJson, revisionOf } from './revision.js'
import { setInText } from './set-in-text.js'
import { shareUnchanged } from './share-unchanged.js'
import type { Definition } from './types.js'

const load = (path: string): string => readFileSync(path, 'utf8')
const path = 'examples/sedge-6.yaml'
const text = load(path)

function whole(entry: string, content: string, from = load): Definition {
  const { definition, faults } = readDefinition(entry, content, from)
  if (!definition) throw new Error(faults[0].says)
  return definition
}
const coach = whole(path, text)

describe('the revision', () => {
  it('is twelve hex digits of the content', () => {
    expect(revisionOf(coach)).toMatch(/^[0-9a-f]{12}$/)
    expect(revisionOf(whole(path, text))).toBe(revisionOf(coach))
  })

  it('does not count comments, key order, file names, or the unit a size is written in', () => {
    const commented = `# another comment\n${text.replace('coach: {name: Sedge 6}', '\ncoach:   # here too\n  name: Sedge 6')}`
    expect(revisionOf(whole(path, commented))).toBe(revisionOf(coach))
    const turned = text.replace('{id: F2, station: 3610 mm}', '{station: 3.61 m, id: F2}')
    expect(turned).not.toBe(text)
    expect(revisionOf(whole(path, turned))).toBe(revisionOf(coach))
    const { merged } = readDefinition(path, text, load)
    expect(revisionOf(whole('other/name.yaml', mergedYaml(merged as NonNullable<typeof merged>)))).toBe(revisionOf(coach))
  })

  it('is kept by the printed form even of names that look like figures', () => {
    for (const name of ['007', '1.10', '"6"', 'yes', '0x1F', '"a: b # c"']) {
      const named = text.replace('{name: Sedge 6}', `{name: ${name}}`)
      const { merged } = readDefinition(path, named, load)
      const printed = mergedYaml(merged as NonNullable<typeof merged>)
      expect(canonicalJson(whole('printed.yaml', printed))).toBe(canonicalJson(whole(path, named)))
    }
  })

  it('does not count the order fasteners are listed in', () => {
    const family = load('examples/sedge.family.yaml')
    const [first] = family.match(/^ {2}S4:.*\n/m) as RegExpMatchArray
    const [last] = family.match(/^ {2}B5:.*\n/m) as RegExpMatchArray
    const turned = family.replace(first, '').replace(last, last + first)
    expect(turned).not.toBe(family)
    const other = whole(path, text, (p) => (p === 'examples/sedge.family.yaml' ? turned : load(p)))
    expect(revisionOf(other)).toBe(revisionOf(coach))
  })

  it('counts a tenth of a millimetre, and the written default as the default', () => {
    const moved = whole(path, setInText(text, ['openings', { id: 'RW3' }, 'station'], '5745.1 mm'))
    expect(revisionOf(moved)).not.toBe(revisionOf(coach))
    expect(revisionOf(whole(path, setInText(text, ['rules', 'min pitch'], '3')))).toBe(revisionOf(coach))
  })

  it('states the schema version and numbers to 1e-9', () => {
    const json = canonicalJson(coach)
    expect(JSON.parse(json).schema).toBe(1)
    expect(json).not.toMatch(/\d\.\d{10}/)
    expect(Object.keys(JSON.parse(json))).toEqual(Object.keys(JSON.parse(json)).sort())
  })
})

describe('sharing what did not change', () => {
  it('gives the former definition back when nothing changed', () => {
    expect(shareUnchanged(coach, whole(path, `# new comment\n${text}`))).toBe(coach)
  })

  it('keeps everything but the way to the change', () => {
    const next = whole(path, setInText(text, ['openings', { id: 'RW3' }, 'station'], '5825 mm'))
    const shared = shareUnchanged(coach, next)
    expect(shared).toEqual(next)
    expect(shared).not.toBe(coach)
    expect(shared.shell).toBe(coach.shell)
    expect(shared.frames).toBe(coach.frames)
    expect(shared.openings).not.toBe(coach.openings)
    const changed = shared.openings.filter((o, i) => o !== coach.openings[i])
    expect(changed.map((o) => o.id)).toEqual(['RW3'])
    expect(Object.isFrozen(shared) && Object.isFrozen(shared.openings)).toBe(true)
  })

  it('keeps the others when a frame is put in between', () => {
    const next = whole(path, text.replace('  - {id: F4,', '  - {id: F3a, station: 4525 mm}\n  - {id: F4,'))
    const shared = shareUnchanged(coach, next)
    expect(shared.frames.map((f) => f.id)).toEqual(['F1', 'F2', 'F3', 'F3a', 'F4', 'F5', 'F6', 'F7'])
    expect(shared.frames[7]).toBe(coach.frames[6])
    expect(shared.openings).toBe(coach.openings)
  })
})
