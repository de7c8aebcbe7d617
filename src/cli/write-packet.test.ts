import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Page } from '../documents/drawing/page.js'
import { manifestSchema, readManifest, sha256Of } from '../documents/packet/manifest.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import { pdfDocument, textDocument } from '../documents/packet/planned.js'
import { wholeAtOnce, writePacket } from './write-packet.js'

const head = { program: 'Coachwright 0.1.0', coach: 'Tester 3', revision: '0123456789ab', unit: 'MASTER', date: '2026-03-02' }
const page: Page = { name: 'one', says: 'one page', widthMm: 210, heightMm: 297, marks: [] }
const renderPdf = async (pages: readonly Page[], title: string): Promise<Uint8Array> => new TextEncoder().encode(`${title} ${pages.length}`)
const ofNothing = () => []
const documents: readonly PlannedDocument[] = [
  textDocument('holes/a.csv', 'Hole table of a', ofNothing, () => 'no,x\n1,2\n'),
  pdfDocument('sheets/a.pdf', 'Flat pattern of a', ofNothing, () => [page, page]),
]

let place = ''
beforeEach(async () => {
  place = await mkdtemp(join(tmpdir(), 'packet-'))
})
afterEach(async () => {
  await rm(place, { recursive: true, force: true })
})

const everything = async (folder: string): Promise<Record<string, string>> => {
  const names = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((e) => e.isFile())
    .map((e) => join(e.parentPath, e.name))
    .sort()
  return Object.fromEntries(await Promise.all(names.map(async (n) => [n.slice(folder.length + 1), await readFile(n, 'utf8')] as const)))
}

describe('writing a packet', () => {
  it('writes every document and lists it with its sum', async () => {
    const seen: string[] = []
    const out = join(place, 'deep', 'sedge')
    const written = await writePacket(wholeAtOnce(documents), head, out, {
      renderPdf,
      onProgress: (p) => seen.push(`${p.done}/${p.of} ${p.path}`),
    })
    // documents are packed and written side by side: which is done first is the disk's business
    expect(seen.map((said) => said.split(' ')[0])).toEqual(['1/2', '2/2'])
    expect(seen.map((said) => said.split(' ')[1]).sort()).toEqual(['holes/a.csv', 'sheets/a.pdf'])
    const files = await everything(out)
    expect(Object.keys(files)).toEqual(['holes/a.csv', 'packet.json', 'sheets/a.pdf'])
    const { manifest, faults } = readManifest(files['packet.json'])
    expect(faults).toEqual([])
    expect(manifest).toMatchObject({ ...head, documents: written.documents })
    for (const d of manifest!.documents) expect(sha256Of(files[d.path])).toBe(d.sha256)
  })

  it('gives the same bytes when written again, in place of the packet before', async () => {
    const out = join(place, 'p')
    await writePacket(wholeAtOnce([...documents, textDocument('old.txt', 'gone next time', ofNothing, () => 'x')]), head, out, {
      renderPdf,
    })
    await writePacket(wholeAtOnce(documents), head, out, { renderPdf })
    const first = await everything(out)
    expect(first['old.txt']).toBeUndefined()
    await writePacket(wholeAtOnce(documents), head, out, { renderPdf })
    expect(await everything(out)).toEqual(first)
    expect(await readdir(place)).toEqual(['p'])
  })

  it('leaves the packet before untouched and nothing else when cancelled', async () => {
    const out = join(place, 'p')
    await writePacket(wholeAtOnce(documents), head, out, { renderPdf })
    const before = await everything(place)
    const stop = new AbortController()
    const cancelled = writePacket(wholeAtOnce(documents), { ...head, unit: '0147' }, out, {
      renderPdf,
      signal: stop.signal,
      onProgress: () => stop.abort(),
    })
    await expect(cancelled).rejects.toThrow('Writing the packet was cancelled; nothing was changed.')
    expect(await everything(place)).toEqual(before)
  })

  it('leaves nothing when a document cannot be made', async () => {
    const broken = [
      ...documents,
      textDocument('x.txt', 'x', ofNothing, () => {
        throw new Error('no such row')
      }),
    ]
    await expect(writePacket(wholeAtOnce(broken), head, join(place, 'p'), { renderPdf })).rejects.toThrow('no such row')
    expect(await readdir(place)).toEqual([])
  })

  it('refuses a folder that holds other things', async () => {
    await mkdir(join(place, 'mine'))
    await writeFile(join(place, 'mine', 'letter.txt'), 'dear')
    await expect(writePacket(wholeAtOnce(documents), head, join(place, 'mine'), { renderPdf })).rejects.toThrow(
      'holds other things and no packet',
    )
    await expect(writePacket(wholeAtOnce(documents), head, join(place, 'mine', 'letter.txt'), { renderPdf })).rejects.toThrow('is a file')
    expect(await readFile(join(place, 'mine', 'letter.txt'), 'utf8')).toBe('dear')
  })

  it('refuses paths that leave the packet or meet', async () => {
    const at = (path: string): PlannedDocument => textDocument(path, 'x', ofNothing, () => 'x')
    for (const bad of ['../x', '/x', 'a//b', 'packet.json', 'a b'])
      await expect(writePacket(wholeAtOnce([at(bad)]), head, join(place, 'p'), { renderPdf })).rejects.toThrow()
    await expect(writePacket(wholeAtOnce([at('a/B'), at('a/b')]), head, join(place, 'p'), { renderPdf })).rejects.toThrow('Two documents')
  })

  it('says what is wrong with a manifest, and publishes its form', () => {
    expect(readManifest('{').faults[0]).toContain('not JSON')
    expect(readManifest('{"packet":1}').faults.length).toBeGreaterThan(3)
    expect(JSON.stringify(manifestSchema())).toContain('sha256')
  })

  it('writes what stands alone while the rest is being worked out, and again what turns out to be read from something else', async () => {
    const seen: string[] = []
    const from = (name: string, of: object, text: string): PlannedDocument =>
      textDocument(
        `${name}.txt`,
        name,
        () => [{ name, from: [of] }],
        () => {
          seen.push(text)
          return text
        },
      )
    const [same, old, now] = [{}, {}, {}]
    const out = join(place, 'p')
    const written = await writePacket(
      {
        atOnce: [from('kept', same, 'kept'), from('moved', old, 'moved early'), from('gone', same, 'gone')],
        whole: async () => {
          seen.push('all are planned')
          return [from('last', same, 'last'), from('kept', same, 'kept again'), from('moved', now, 'moved late')]
        },
      },
      head,
      out,
      { renderPdf },
    )
    expect(seen).toEqual(['kept', 'moved early', 'gone', 'all are planned', 'last', 'moved late'])
    expect(written.documents.map((d) => d.path)).toEqual(['last.txt', 'kept.txt', 'moved.txt'])
    const { 'packet.json': manifest, ...rest } = await everything(out)
    expect(rest).toEqual({ 'last.txt': 'last', 'kept.txt': 'kept', 'moved.txt': 'moved late' })
    expect(readManifest(manifest).manifest?.documents.map((d) => d.sha256)).toEqual(written.documents.map((d) => d.sha256))
  })
})
