import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../../tests/tree.js'
import { deskCoach } from './desk-coach.js'
import { chosenCoach, filled, mendingCoach, wantedBy } from './mending.js'

const EXAMPLES = join(root, 'examples')
const files = Object.fromEntries(
  readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => [`examples/${name}`, readFileSync(join(EXAMPLES, name), 'utf8')]),
)
const PATH = 'examples/sedge-4.yaml'
const broken = files[PATH].replace('station: 4580 mm', 'station: 4580').replace('spindles: [4580 mm]', 'spindles: [4580]')

function mending(over: Readonly<Record<string, string>>) {
  const coach = { path: PATH, files: { ...files, ...over } }
  const opened = deskCoach(coach)
  if (!('faults' in opened)) throw new Error('it reads')
  return mendingCoach(coach, opened)
}

describe('a coach that does not read when it is opened', () => {
  it('stands with its text and faults, and opens once it is mended, with a way back', () => {
    const coach = mending({ [PATH]: broken })
    expect(coach.shown()).toMatchObject({ file: PATH, text: broken, undo: 0, wanted: [] })
    expect(coach.shown().faults[0].says).toMatch(/4580.*unit|unit.*4580/)
    expect(coach.write(`${broken}# thinking\n`)).toBeNull()
    const mended = coach.write(files[PATH])
    expect(mended?.state()).toMatchObject({ name: 'Sedge 4', faults: [], text: files[PATH], undo: 1 })
    // the text it had is one step back, and the drawing then stays that of the last text that read
    mended?.undo()
    expect(mended?.state().text).toBe(broken)
    expect(mended?.state().faults.length).toBeGreaterThan(0)
    expect(mended?.design().definition.coach.name).toBe('Sedge 4')
  })

  it('says which file it extends is not there, and takes it', () => {
    const alone = { path: 'sedge-4.yaml', files: { 'sedge-4.yaml': files[PATH] } }
    const opened = deskCoach(alone)
    if (!('faults' in opened)) throw new Error('it reads')
    expect(opened.faults[0].says).toMatch(/There is no file sedge.family.yaml/)
    const coach = mendingCoach(alone, opened)
    expect(coach.shown().wanted).toEqual(['sedge.family.yaml', 'sedge-4.masses.yaml'])
    expect(coach.give({ 'sedge.family.yaml': files['examples/sedge.family.yaml'] })).toBeNull()
    expect(coach.shown().wanted).toEqual(['sedge-4.masses.yaml'])
    expect(coach.give({ 'sedge-4.masses.yaml': files['examples/sedge-4.masses.yaml'] })?.state().name).toBe('Sedge 4')
  })
})

describe('files chosen together', () => {
  const chosen = {
    'sedge.family.yaml': files['examples/sedge.family.yaml'],
    'sedge-4.masses.yaml': files['examples/sedge-4.masses.yaml'],
    'sedge-4.yaml': files[PATH],
  }

  it('are the coach that no other extends, and what it extends', () => {
    const coach = chosenCoach(chosen, {})
    expect(coach?.path).toBe('sedge-4.yaml')
    if (!coach) throw new Error('none')
    expect(wantedBy(coach)).toEqual([])
    expect('faults' in deskCoach(coach)).toBe(false)
    expect(chosenCoach({}, {})).toBeNull()
  })

  it('are filled up from what is known, by name, and what was chosen goes before', () => {
    const coach = chosenCoach({ 'sedge-4.yaml': files[PATH], 'sedge.family.yaml': 'schema: 1\n' }, files)
    expect(coach?.files['sedge.family.yaml']).toBe('schema: 1\n')
    expect(coach?.files['sedge-4.masses.yaml']).toBe(files['examples/sedge-4.masses.yaml'])
    // what leads nowhere stays wanted, and does not go round for ever
    const lost = { path: 'a.yaml', files: { 'a.yaml': 'extends: b.yaml\nschema: 1\n' } }
    expect(wantedBy({ ...lost, files: filled(lost, {}, {}) })).toEqual(['b.yaml'])
  })
})
