/** `coachwright fit` as a person runs it. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from '../run.js'

const folder = mkdtempSync(join(tmpdir(), 'coachwright-fit-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const coach = resolve('examples/sedge-6.yaml')

async function said(...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('fit', () => {
  it('tells one joint in full, and gives the same as data', async () => {
    const asked = ['fit', coach, '--joint', 'joint-rim-AC1', '--trials', '20', '--seed', '7'] as const
    const told = await said(...asked)
    expect(told.code).toBe(0)
    expect(told.out).toContain('20 trials, seed 7')
    expect(told.out).toContain('rim-AC1: pilot, drill at assembly.')
    const data = JSON.parse((await said(...asked, '--json')).out) as { joints: { id: string; fasteners: number }[]; seed: number }
    expect(data).toMatchObject({ seed: 7, joints: [{ id: 'joint-rim-AC1', fasteners: 48 }] })
  }, 60_000)

  it('refuses a joint there is not, a shop that has not said how it punches, and figures that are none', async () => {
    const none = await said('fit', coach, '--joint', 'joint-F99')
    expect([none.code, none.err]).toEqual([2, expect.stringMatching(/^There is no joint joint-F99; there are joint-seam-1-left, /)])
    const path = join(folder, 'unsaid.yaml')
    writeFileSync(path, `extends: ${coach}\nschema: 1\nprocess: null\n`)
    const unsaid = await said('fit', path)
    expect(unsaid.code).toBe(2)
    expect((await said('fit', coach, '--trials', '0')).code).toBe(2)
    expect((await said('fit', coach, '--seed', 'x')).code).toBe(2)
  }, 60_000)
})
