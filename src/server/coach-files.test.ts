import { chmodSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type CoachFiles, coachFiles, type OpenedFiles } from './coach-files.js'

/** As the examples are laid out, and read in a fraction of the time. */
const SMALL = {
  'sedge.family.yaml': 'schema: 1\ncoach: {family: Sedge}\n',
  'sedge-6.masses.yaml': 'schema: 1\nmasses: []\n',
  'sedge-6.yaml': 'extends: [sedge.family.yaml, sedge-6.masses.yaml]\nschema: 1\ncoach: {name: Sedge 6}\nframes: []\n',
  'sedge-8.yaml': 'extends: sedge-6.yaml\nschema: 1\ncoach: {name: Sedge 8}\n',
}
let root = ''
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'coachwright-files-'))
  mkdirSync(at('examples'))
  for (const [name, text] of Object.entries(SMALL)) writeFileSync(at(`examples/${name}`), text)
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

const at = (path: string): string => join(root, path)
const files = (also?: string): CoachFiles =>
  coachFiles({ root, examples: at('examples'), ...(also === undefined ? {} : { also: at(also) }) })
const opened = (from: CoachFiles, path: string): OpenedFiles => {
  const got = from.open(path)
  if ('no' in got) throw new Error(got.says)
  return got
}
const SIX = 'examples/sedge-6.yaml'

describe('the coaches on the desk', () => {
  it('are the whole ones of the examples, not families and lists of masses', () => {
    const examples = fileURLToPath(new URL('../../examples', import.meta.url))
    expect(coachFiles({ root: join(examples, '..'), examples }).list()).toEqual([
      { path: 'examples/sedge-4.yaml', name: 'Sedge 4' },
      { path: SIX, name: 'Sedge 6' },
      { path: 'examples/sedge-8.yaml', name: 'Sedge 8' },
    ])
  })

  it('begin with the one that was named, wherever it lies, even one with a fault', () => {
    mkdirSync(at('mine'))
    writeFileSync(at('mine/wren.yaml'), 'schema: 1\ncoach: {name: Wren\n')
    expect(files('mine/wren.yaml').list()[0]).toEqual({ path: 'mine/wren.yaml', name: 'wren.yaml' })
    const elsewhere = coachFiles({ root: at('mine'), examples: at('mine'), also: at(SIX) })
    expect(elsewhere.list()[0]).toEqual({ path: at(SIX), name: 'Sedge 6' })
  })

  it('may extend one another', () =>
    expect(
      files()
        .list()
        .map((coach) => coach.name),
    ).toEqual(['Sedge 6', 'Sedge 8']))

  it('are read anew when what they extend changes', () => {
    const all = files()
    writeFileSync(at('examples/sedge.family.yaml'), 'schema: 1\ncoach: {family: Reed}\n')
    expect(opened(all, SIX).files['examples/sedge.family.yaml']).toContain('Reed')
  })

  it('stay on it while a slip is being mended', () => {
    const all = files()
    writeFileSync(at(SIX), 'coach: {name: [')
    expect(all.list().map((coach) => coach.path)).toContain(SIX)
    expect(opened(all, SIX).files).toEqual({ [SIX]: 'coach: {name: [' })
  })
})

describe('opening', () => {
  it('gives the coach and all it extends, the family and the masses', () => {
    const { path, stamp, files: texts } = opened(files(), SIX)
    expect([path, stamp]).toEqual([SIX, expect.stringMatching(/^[0-9a-f]{64}$/)])
    expect(Object.keys(texts)).toEqual([SIX, 'examples/sedge.family.yaml', 'examples/sedge-6.masses.yaml'])
    for (const [name, text] of Object.entries(texts)) expect(text).toBe(readFileSync(at(name), 'utf8'))
  })

  it('refuses what is not on the desk, in a sentence', () => {
    const all = files()
    for (const path of [
      '',
      '..',
      'package.json',
      '../../etc/hosts',
      'examples/../secret.yaml',
      at(SIX),
      'examples/broken/pitch-zero.yaml',
    ]) {
      expect(all.open(path)).toEqual({ no: 'not allowed', says: expect.stringMatching(/^The desk may not open .*\.$/) })
      expect(all.save(path, 'x', '')).toMatchObject({ no: 'not allowed' })
    }
  })

  it('says so when the file went away', () => {
    const all = files('examples/sedge-8.yaml')
    rmSync(at('examples/sedge-8.yaml'))
    expect(all.open('examples/sedge-8.yaml')).toMatchObject({ no: 'not there' })
  })

  it('reads nothing through extends but YAML of the folders it knows', () => {
    mkdirSync(at('secrets'))
    for (const [path, text] of [
      ['secrets/keys.yaml', 'key: 1'],
      ['examples/notes.txt', 'private'],
      ['examples-not/near.yaml', 'key: 2'],
    ] as const) {
      mkdirSync(join(at(path), '..'), { recursive: true })
      writeFileSync(at(path), text)
    }
    const all = files()
    const { stamp } = opened(all, SIX)
    const sly = `extends: [../secrets/keys.yaml, notes.txt, ../examples-not/near.yaml, ${at('secrets/keys.yaml')}]\nschema: 1\n`
    expect(all.save(SIX, sly, stamp)).toMatchObject({ path: SIX })
    expect(Object.keys(opened(all, SIX).files)).toEqual([SIX])
  })

  it('reads the folders a coach extended when the desk was started', () => {
    mkdirSync(at('mine/coaches'), { recursive: true })
    mkdirSync(at('mine/families'))
    writeFileSync(at('mine/coaches/wren.yaml'), 'extends: ../families/bird.yaml\nschema: 1\ncoach: {name: Wren}\n')
    writeFileSync(at('mine/families/bird.yaml'), 'schema: 1\nframes: []\n')
    expect(Object.keys(opened(files('mine/coaches/wren.yaml'), 'mine/coaches/wren.yaml').files)).toEqual([
      'mine/coaches/wren.yaml',
      'mine/families/bird.yaml',
    ])
  })
})

describe('saving', () => {
  it('replaces the text, gives the new stamp, and leaves nothing beside it', () => {
    const all = files()
    const { stamp, files: texts } = opened(all, SIX)
    const text = `${texts[SIX]}# a note\n`
    const before = readdirSync(at('examples'))
    expect(all.save(SIX, text, stamp)).toEqual({ path: SIX, stamp: opened(all, SIX).stamp })
    expect(readFileSync(at(SIX), 'utf8')).toBe(text)
    expect(readdirSync(at('examples'))).toEqual(before)
  })

  it('never saves over a text it has not seen', () => {
    const all = files()
    const { stamp, files: texts } = opened(all, SIX)
    const theirs = `${texts[SIX]}# theirs\n`
    writeFileSync(at(SIX), theirs)
    const told = all.save(SIX, `${texts[SIX]}# mine\n`, stamp)
    expect(told).toEqual({
      no: 'overtaken',
      says: expect.stringContaining('changed elsewhere'),
      text: theirs,
      stamp: opened(all, SIX).stamp,
    })
    expect(readFileSync(at(SIX), 'utf8')).toBe(theirs)
    if (!('no' in told)) throw new Error('saved')
    expect(all.save(SIX, 'mine, after reading theirs', told.no === 'overtaken' ? told.stamp : '')).toMatchObject({ path: SIX })
  })

  it('keeps the rights of the file, and writes through a link to the file it names', () => {
    chmodSync(at(SIX), 0o640)
    mkdirSync(at('desk'))
    symlinkSync(at(SIX), at('desk/linked.yaml'))
    const all = files('desk/linked.yaml')
    const { stamp } = opened(all, 'desk/linked.yaml')
    expect(all.save('desk/linked.yaml', 'schema: 1\n', stamp)).toMatchObject({ path: 'desk/linked.yaml' })
    expect(readFileSync(at(SIX), 'utf8')).toBe('schema: 1\n')
    expect(statSync(at(SIX)).mode & 0o777).toBe(0o640)
  })
})

describe('a new coach', () => {
  it('is written beside the others, listed, opened and saved like them', () => {
    const all = files()
    const path = 'examples/wren.yaml'
    const text = 'extends: sedge.family.yaml\nschema: 1\ncoach: {name: Wren}\nframes: []\n'
    const made = all.create(path, text)
    if ('no' in made) throw new Error(made.says)
    expect(readFileSync(at(path), 'utf8')).toBe(text)
    expect(all.list()).toContainEqual({ path, name: 'Wren' })
    expect(opened(all, path)).toMatchObject({ stamp: made.stamp, files: { [path]: text } })
    expect(all.save(path, `${text}# mine\n`, made.stamp)).toMatchObject({ path })
  })

  it('comes with the family it stands on, which is no coach itself', () => {
    const all = files()
    expect(all.create('examples/bird.family.yaml', 'schema: 1\ncoach: {family: Bird}\n')).toMatchObject({
      path: 'examples/bird.family.yaml',
    })
    const text = 'extends: bird.family.yaml\nschema: 1\ncoach: {name: Wren}\nframes: []\n'
    expect(all.create('examples/wren.yaml', text)).toMatchObject({ path: 'examples/wren.yaml' })
    expect(all.list().map(({ name }) => name)).toEqual(['Sedge 6', 'Sedge 8', 'Wren'])
    expect(Object.keys(opened(all, 'examples/wren.yaml').files)).toEqual(['examples/wren.yaml', 'examples/bird.family.yaml'])
  })

  it('is never written over a file, nor through a link', () => {
    const all = files()
    const before = readFileSync(at(SIX), 'utf8')
    expect(all.create(SIX, 'x')).toEqual({ no: 'taken', says: expect.stringContaining('left as it is') })
    expect(readFileSync(at(SIX), 'utf8')).toBe(before)
    symlinkSync(at('nowhere.yaml'), at('examples/link.yaml'))
    expect(all.create('examples/link.yaml', 'x')).toMatchObject({ no: 'taken' })
    expect(readdirSync(root)).not.toContain('nowhere.yaml')
  })

  it('goes nowhere else and takes no strange name', () => {
    mkdirSync(at('secrets'))
    const all = files()
    const before = readdirSync(at('examples'))
    for (const path of [
      '',
      'wren.yaml',
      '../wren.yaml',
      'secrets/wren.yaml',
      'examples/../secrets/wren.yaml',
      'examples/./wren.yaml',
      'examples/broken/wren.yaml',
      'examples/.wren.yaml',
      'examples/wren.yaml.sh',
      'examples/wren',
      'examples/wr en.yaml',
      'examples/\u0000.yaml',
      at('examples/wren.yaml'),
    ])
      expect(all.create(path, 'x')).toEqual({ no: 'not allowed', says: expect.stringMatching(/ends in \.yaml, in .*examples\.$/) })
    expect(readdirSync(at('examples'))).toEqual(before)
    expect(readdirSync(at('secrets'))).toEqual([])
  })
})
