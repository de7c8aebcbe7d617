/** `coachwright blanks` as a person runs it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from '../run.js'

const folder = mkdtempSync(join(tmpdir(), 'coachwright-blanks-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const coach = resolve('examples/sedge-6.yaml')

async function said(...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

const changed = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, `extends: ${coach}\nschema: 1\n${text}\n`)
  return path
}

describe('blanks', () => {
  it('says of each distinct panel what it is cut from, how far it is stretched and where, and ends well', async () => {
    const { code, out } = await said('blanks', coach)
    expect(code).toBe(0)
    expect(out).toContain('Gore 1 of 7')
    expect(out).toContain('from 36 in x 152 in')
    expect(out).toMatch(/Stretched 4\.3 % at most, at nose gore 1, G \d+/)
    expect(out).toContain('Least thickness 0.962 mm of 1.02 mm')
    expect(out).toContain('tail-gore-6')
    expect(out).toContain('drill at assembly')
  }, 60_000)

  it('ends with 1 when the shop wants more metal left, and gives it as data when asked', async () => {
    const { code, out } = await said('blanks', changed('thick.yaml', 'ends: { least thickness: 0.99 mm }'), '--json')
    expect(code).toBe(1)
    const study = JSON.parse(out) as { blanks: { panel: string; checks: { id: string; verdict: string }[] }[] }
    expect(study.blanks.map((b) => b.panel)).toEqual(['gore-1', 'gore-2', 'gore-3', 'gore-4', 'cap'])
    expect(study.blanks[0].checks.find((c) => c.id === 'blank.gore-1.thickness')?.verdict).toBe('fail')
  }, 60_000)

  it('has none to work out where gores are bent and not formed', async () => {
    const { code, err } = await said('blanks', changed('bent.yaml', 'ends: { make: wrapped }'))
    expect(code).toBe(2)
    expect(err).toContain('only formed panels need a blank')
  }, 60_000)
})
