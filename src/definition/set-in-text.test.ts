import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readDefinition } from './read-definition.js'
import { type Step, setInText, whereWritten } from './set-in-text.js'

const coach = readFileSync('examples/sedge-6.yaml', 'utf8')
const family = readFileSync('examples/sedge.family.yaml', 'utf8')
const load = (path: string): string => readFileSync(path, 'utf8')
const readCoach = (text: string) => readDefinition('examples/sedge-6.yaml', text, load)

function changedLines(before: string, after: string): [string | undefined, string | undefined][] {
  const a = before.split('\n')
  const b = after.split('\n')
  return Array.from({ length: Math.max(a.length, b.length) }, (_, i): [string | undefined, string | undefined] => [a[i], b[i]]).filter(
    ([x, y]) => x !== y,
  )
}

describe('writing one value back', () => {
  it('changes one line and leaves every comment', () => {
    const after = setInText(family, ['stock', 'trim'], '2 mm')
    expect(changedLines(family, after)).toEqual([
      ['  trim: 1.5 mm            # squared off each mill edge', '  trim: 2 mm            # squared off each mill edge'],
    ])
  })

  it('finds an item by id inside braces', () => {
    const after = setInText(coach, ['openings', { id: 'RW3' }, 'station'], '5825 mm')
    expect(changedLines(coach, after)).toHaveLength(1)
    expect(readCoach(after).definition?.openings.find((o) => o.id === 'RW3')?.station).toBe(5.825)
  })

  it('adds a key that is not there, in braces and on lines', () => {
    const inBraces = setInText(family, ['shell', 'toe', 'turn'], '30 deg')
    expect(changedLines(family, inBraces)).toEqual([['  toe:   {flange: 19 mm}', '  toe:   {flange: 19 mm, turn: 30 deg}']])
    const onLines = setInText(family, ['rules', 'lap edge'], '12 mm')
    expect(onLines.replace('\n  lap edge: 12 mm', '')).toBe(family)
  })

  it('overrides what the family has by adding the id to the coach', () => {
    const after = setInText(coach, ['openings', { id: 'RW1' }, 'station'], '3320 mm')
    // the openings need not be what the file ends with
    expect(after.replace('\n  - {id: RW1, station: 3320 mm}', '')).toBe(coach)
    const window = readCoach(after).definition?.openings.find((o) => o.id === 'RW1')
    expect([window?.station, window?.width]).toEqual([3.32, 0.52])
  })

  it('opens a group the coach does not have yet', () => {
    const after = setInText(coach, ['rules', 'max pitch'], '10')
    expect(after).toBe(`${coach}rules: {max pitch: 10}\n`)
    expect(readCoach(after).definition?.rules.maxPitch).toBe(10)
    const seam = setInText(coach, ['shell', 'seams', { id: 'seam-3' }, 'girth'], '2604 mm')
    expect(readCoach(seam).definition?.shell.seams.map((s) => s.girth)).toEqual([0.56, 1.415, 2.604])
  })

  it('quotes what would not read back, and reads back what it wrote', () => {
    for (const value of ['window W1, fixed', 'a: b', '# no comment', '- dash', 'say "so"', '5\' 3 1/2"', '']) {
      const after = setInText('openings:\n  - {id: A, says: x}   # why\n', ['openings', 0, 'says'], value)
      expect(setInText(after, ['openings', 0, 'says'], 'x')).toBe('openings:\n  - {id: A, says: x}   # why\n')
    }
  })

  it('keeps a comment after the last key and the last item of a list', () => {
    expect(setInText('a:\n  b: 1 mm # why\n\n# next\nc: 2\n', ['a', 'd'], '3 mm')).toBe('a:\n  b: 1 mm # why\n  d: 3 mm\n\n# next\nc: 2\n')
    expect(setInText('a:\n  - id: X # why\n    b: 1\n', ['a', { id: 'Y' }, 'b'], '2')).toBe(
      'a:\n  - id: X # why\n    b: 1\n  - {id: Y, b: 2}\n',
    )
    expect(setInText('a: [{id: X}]\n', ['a', { id: 'Y' }, 'b'], '2')).toBe('a: [{id: X}, {id: Y, b: 2}]\n')
    expect(setInText('a:\n', ['a'], '2 mm')).toBe('a: 2 mm\n')
  })

  it('refuses a way through a single value', () => {
    expect(() => setInText('a: 1\n', ['a', 'b'], '2')).toThrow('cannot write')
    expect(() => setInText('a: [1\n', ['a'], '2')).toThrow('cannot write')
  })
})

describe('where a value is written', () => {
  const merged = readCoach(coach).merged
  const line = (steps: readonly Step[]) => merged && whereWritten(merged, steps)

  it('names the file of the family or of the coach', () => {
    expect(line(['openings', { id: 'RW1' }, 'station'])?.file).toBe('examples/sedge.family.yaml')
    expect(line(['openings', { id: 'RW3' }, 'station'])?.file).toBe('examples/sedge-6.yaml')
    expect(line(['rules', 'max pitch'])).toBeNull()
  })
})
