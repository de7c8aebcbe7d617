/** Heavy studies from the command's side: the thread, the cache, stopping. */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { derive } from '../../derive/index.js'
import { blanksKey, computeBlanks } from '../../studies/blanks/compute.js'
import { blanksInput } from '../../studies/blanks/shape.js'
import { fromCache, intoCache } from './cache.js'
import { runStudy } from './run-study.js'

const folder = mkdtempSync(join(tmpdir(), 'coachwright-cache-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const input = blanksInput(derive(readExample('sedge-6')))

describe('a study in its own thread', () => {
  it('gives what it gives in place, to the last byte, and says how far it is', async () => {
    const said: string[] = []
    const result = await runStudy('blanks', input, { onProgress: (p) => said.push(p.says) })
    expect(JSON.stringify(result)).toBe(JSON.stringify(computeBlanks(input)))
    expect(result?.key).toBe(blanksKey(input))
    expect(said).toEqual(['blank of gore 1', 'blank of gore 2', 'blank of gore 3', 'blank of gore 4', 'blank of cap'])
  }, 60_000)

  it('ends at once when it is stopped', async () => {
    const stop = new AbortController()
    const result = runStudy('blanks', input, { signal: stop.signal, onProgress: () => stop.abort() })
    expect(await result).toBeNull()
    expect(await runStudy('blanks', input, { signal: stop.signal })).toBeNull()
  }, 60_000)

  it('throws what the study throws', async () => {
    await expect(runStudy('blanks', { ...input, thickness: Number.NaN })).rejects.toThrow(/no normal|no area/)
  }, 60_000)
})

describe('the cache', () => {
  const of = (key: string): { key: string; figure: number } => ({ key, figure: 1.5 })

  it('gives back what was kept under a key, and nothing under another', () => {
    intoCache('try', of('a'), folder)
    expect(fromCache('try', 'a', folder)).toEqual(of('a'))
    expect(fromCache('try', 'b', folder)).toBeNull()
  })

  it('takes no file that does not read or is not what its name says', () => {
    writeFileSync(join(folder, 'c.json'), '{"key":"c","fig')
    writeFileSync(join(folder, 'd.json'), JSON.stringify(of('e')))
    expect(fromCache('try', 'c', folder)).toBeNull()
    expect(fromCache('try', 'd', folder)).toBeNull()
  })

  it('lets the oldest go, and does without a folder it cannot write', () => {
    for (let i = 0; i < 45; i++) intoCache('try', of(`k${i}`), folder)
    expect(readdirSync(folder).length).toBe(40)
    expect(fromCache('try', 'k44', folder)).not.toBeNull()
    const file = join(folder, 'k44.json')
    intoCache('try', of('z'), join(file, 'below'))
    expect(fromCache('try', 'z', join(file, 'below'))).toBeNull()
  })
})
