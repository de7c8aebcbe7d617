import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, describe, expect, it } from 'vitest'
import { rippleSchema } from '../ripple/ripple-json.js'
import { run } from './run.js'

const root = fileURLToPath(new URL('../..', import.meta.url))
const coach = join(root, 'examples/sedge-6.yaml')
const folder = mkdtempSync(join(tmpdir(), 'coachwright-compare-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** A coach that is the Sedge 6 but for what is said. */
function changed(name: string, text: string): string {
  const path = join(folder, name)
  writeFileSync(path, `extends: ${coach}\nschema: 1\n${text}\n`)
  return path
}

async function compared(...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(['compare', ...args], { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('compare', () => {
  const aft = changed('aft.yaml', 'openings:\n  - {id: RW3, station: 5825 mm}')

  it('is 0 where both are one coach, however the second is written', async () => {
    const { code, out } = await compared(coach, changed('same.yaml', '# the same\nopenings:\n  - {id: RW3, station: 5.745 m}'))
    expect([code, out.split('\n').length, out.endsWith('Nothing changes.')]).toEqual([0, 1, true])
  })

  it('is 1 where they differ, and says in words how', async () => {
    const { code, out, err } = await compared(coach, aft)
    expect([code, err]).toEqual([1, ''])
    expect(out).toContain('openings RW3 station: 5745 mm becomes 5825 mm.')
    expect(out).toContain('Hoop frame F6 (frame-F6) is cut by RW3: two pieces are left.')
    expect(out).toMatch(/hoop-F6: 1[1-5] solid rivets fewer/)
    expect(out).toMatch(/Reissue \d+ documents:/)
    expect((await compared(coach, aft, '--inch')).out).toContain('226.1811 in becomes 229.33071 in')
  })

  it('prints the form its schema describes', async () => {
    const { code, out } = await compared(coach, aft, '--json')
    expect(code).toBe(1)
    const read = rippleSchema.safeParse(JSON.parse(out))
    expect(read.error?.issues ?? []).toEqual([])
    expect(read.data?.written).toEqual([{ path: 'openings RW3 station', before: 5.745, after: 5.825 }])
  })

  it('writes the change note as a PDF, and to no other kind of file', async () => {
    const note = join(folder, 'note.pdf')
    expect((await compared(coach, aft, '--note', note)).code).toBe(1)
    const { numPages } = await getDocument({ data: new Uint8Array(readFileSync(note)) }).promise
    expect(numPages).toBeGreaterThan(1)
    expect(await compared(coach, aft, '--note', join(folder, 'note.doc'))).toMatchObject({
      code: 2,
      err: expect.stringContaining('should end in .pdf'),
    })
  })

  it('is 2 with the faults of both, each on a line of its own', async () => {
    const broken = ['pitch-zero', 'seams-out-of-order'].map((name) => join(root, `examples/broken/${name}.yaml`))
    const { code, out, err } = await compared(broken[0], broken[1])
    expect([code, out]).toEqual([2, ''])
    for (const file of broken) expect(err).toContain(file)
    for (const line of err.trim().split('\n')) expect(line).toMatch(/^.+\.yaml:\d+:\d+ .+\.$/)
  })

  it('is 2 where one is not there', async () => {
    const { code, err } = await compared(coach, join(folder, 'none.yaml'))
    expect([code, err]).toEqual([2, expect.stringMatching(/There is no file .*none\.yaml/)])
  })
})
