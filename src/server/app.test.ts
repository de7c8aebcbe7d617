import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import type { Hono } from 'hono'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import type { FirstDrawing } from '../desk/drawn-ahead.js'
import { manifestText } from '../documents/packet/manifest.js'
import { deskApp } from './app.js'
import { coachFiles, type OpenedFiles } from './coach-files.js'
import type { DrawsFirst } from './first-drawings.js'
import type { PacketAsk, WritesPacket } from './packets.js'

const WREN = 'schema: 1\ncoach: {name: Wren}\nframes: []\n'
const PAGE = '<!doctype html><main id="desk"></main>'
const SCRIPT = 'console.log(1)\n'.repeat(50)
const PATH = 'examples/wren.yaml'
const OWN = { 'sec-fetch-site': 'same-origin' } as const

let root = ''
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'coachwright-app-'))
  for (const folder of ['web/assets', 'examples', 'packet']) mkdirSync(join(root, folder), { recursive: true })
  const put = (path: string, text: string | Uint8Array) => writeFileSync(join(root, path), text)
  put('web/index.html', PAGE)
  put('web/assets/index-1a2b.js', SCRIPT)
  put('web/assets/index-1a2b.js.gz', gzipSync(SCRIPT))
  put('web/service-worker.js', '0')
  put('examples/wren.yaml', WREN)
})
afterAll(() => rmSync(root, { recursive: true, force: true }))

const never: WritesPacket = () => Promise.reject(new Error('no packet was asked for'))
const app = (writePacket = never, anyHost = false, drawFirst?: DrawsFirst): Hono =>
  deskApp({
    web: join(root, 'web'),
    files: coachFiles({ root, examples: join(root, 'examples') }),
    packets: join(root, 'packet'),
    writePacket,
    ...(drawFirst ? { drawFirst } : {}),
    anyHost,
  })
const says = async (answer: Response): Promise<string> => ((await answer.json()) as { says: string }).says
const sent = (method: string, body: unknown, headers: Record<string, string> = OWN) => ({
  method,
  headers: { 'content-type': 'application/json', ...headers },
  body: typeof body === 'string' ? body : JSON.stringify(body),
})

describe('the screens', () => {
  it('are served with their types, the page asked for anew, hashed files kept for ever', async () => {
    const page = await app().request('/')
    expect([page.status, await page.text()]).toEqual([200, PAGE])
    expect([page.headers.get('content-type'), page.headers.get('cache-control')]).toEqual(['text/html; charset=utf-8', 'no-cache'])
    const script = await app().request('/assets/index-1a2b.js')
    expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
    expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    expect((await app().request('/service-worker.js')).headers.get('cache-control')).toBe('no-cache')
  })

  it('are sent packed to whoever takes that', async () => {
    const packed = await app().request('/assets/index-1a2b.js', { headers: { 'accept-encoding': 'br, gzip' } })
    expect(packed.headers.get('content-encoding')).toBe('gzip')
    const bytes = new Uint8Array(await packed.arrayBuffer())
    expect(bytes.length).toBe(Number(packed.headers.get('content-length')))
    expect(gunzipSync(bytes).toString()).toBe(SCRIPT)
    expect(await (await app().request('/assets/index-1a2b.js')).text()).toBe(SCRIPT)
  })

  it('have nothing outside their folder', async () => {
    for (const path of ['/assets/../../examples/wren.yaml', '/..%2fexamples%2fwren.yaml', '/assets/index-1a2b.js.gz', '/index.php']) {
      const answer = await app().request(path)
      expect([answer.status, await says(answer)]).toEqual([404, expect.stringMatching(/^The desk has nothing at /)])
    }
  })

  it('must have been built', () => {
    expect(() =>
      deskApp({ web: join(root, 'examples'), files: coachFiles({ root, examples: root }), packets: root, writePacket: never }),
    ).toThrow(/^There are no built screens in .*: run node scripts\/build-web\.mjs\.$/)
  })
})

describe('who is answered', () => {
  it('every answer carries the policy, a refusal too', async () => {
    for (const path of ['/', '/api/coaches', '/nowhere', '/api/coach?path=x']) {
      const { headers } = await app().request(path)
      expect(headers.get('content-security-policy')).toBe(
        "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'; form-action 'none'",
      )
      expect([headers.get('x-content-type-options'), headers.get('x-frame-options')]).toEqual(['nosniff', 'DENY'])
    }
  })

  it('loopback by whatever name, and no other unless the person let others in', async () => {
    for (const host of ['127.0.0.1:8460', 'localhost:1', '[::1]:8460', 'LOCALHOST'])
      expect((await app().request('/api/coaches', { headers: { host } })).status).toBe(200)
    for (const host of ['rebound.example', 'localhost.rebound.example', '127.0.0.1.rebound.example:8460', '10.0.0.7:8460']) {
      const answer = await app().request('/', { headers: { host } })
      expect([answer.status, await says(answer)]).toEqual([403, expect.stringContaining(`not to ${host}`)])
    }
    expect((await app(never, true).request('/', { headers: { host: '10.0.0.7:8460' } })).status).toBe(200)
  })

  it('only the desk itself may save or make', async () => {
    const host = { host: '127.0.0.1:8460' }
    const from = async (headers: Record<string, string>, body: unknown = {}) =>
      (await app().request(`/api/coach?path=${PATH}`, sent('PUT', body, { ...host, ...headers }))).status
    expect(await from({})).toBe(403)
    expect(await from({ 'sec-fetch-site': 'cross-site' })).toBe(403)
    expect(await from({ 'sec-fetch-site': 'same-site', origin: 'http://127.0.0.1:8460' })).toBe(403)
    expect(await from({ origin: 'http://127.0.0.1:9999' })).toBe(403)
    expect(await from({ origin: 'null' })).toBe(403)
    // let in, and then told what is missing
    expect(await from({ origin: 'http://127.0.0.1:8460' })).toBe(400)
    expect(await from(OWN)).toBe(400)
  })
})

describe('coaches', () => {
  it('are listed, opened, and saved once', async () => {
    const desk = app()
    expect(await (await desk.request('/api/coaches')).json()).toEqual([{ path: PATH, name: 'Wren' }])
    const answer = await desk.request(`/api/coach?path=${PATH}`)
    const opened = (await answer.json()) as { stamp: string }
    expect(answer.headers.get('cache-control')).toBe('no-store')
    expect(opened).toEqual({ path: PATH, stamp: expect.any(String), files: { [PATH]: WREN } })
    const text = `${WREN}# seen\n`
    const save = () => desk.request(`/api/coach?path=${PATH}`, sent('PUT', { text, stamp: opened.stamp }))
    const first = await save()
    expect([first.status, await first.json()]).toEqual([200, { path: PATH, stamp: expect.any(String) }])
    const second = await save()
    expect([second.status, await second.json()]).toEqual([
      409,
      { says: expect.stringContaining('changed elsewhere'), text, stamp: expect.any(String) },
    ])
  })

  it('bring their drawing along where it was made ahead', async () => {
    const desk = app(never, false, ({ path, files }) => Promise.resolve({ state: { text: files[path] } } as FirstDrawing))
    // the coach the desk was started with is drawn before anybody asks
    await new Promise((resolve) => setTimeout(resolve, 20))
    const { files, drawn } = (await (await desk.request(`/api/coach?path=${PATH}`)).json()) as OpenedFiles & { drawn?: FirstDrawing }
    expect(drawn?.state.text).toBe(files[PATH])
  })

  it('are begun under a name that is free, by the desk itself', async () => {
    const desk = app()
    const make = (path: string, body: unknown, headers: Record<string, string> = OWN) =>
      desk.request(`/api/coach?path=${path}`, sent('POST', body, headers))
    const text = WREN.replace('Wren', 'Rail')
    const made = await make('examples/rail.yaml', { text })
    expect([made.status, await made.json()]).toEqual([201, { path: 'examples/rail.yaml', stamp: expect.any(String) }])
    expect(await (await desk.request('/api/coaches')).json()).toContainEqual({ path: 'examples/rail.yaml', name: 'Rail' })
    const again = await make('examples/rail.yaml', { text: 'other' })
    expect([again.status, await says(again)]).toEqual([409, expect.stringContaining('Take another name')])
    expect((await make('../rail.yaml', { text })).status).toBe(403)
    expect((await make('examples/other.yaml', {})).status).toBe(400)
    expect((await make('examples/other.yaml', { text }, { 'sec-fetch-site': 'cross-site' })).status).toBe(403)
    rmSync(join(root, 'examples/rail.yaml'))
  })

  it('are refused in a sentence', async () => {
    const refused = await app().request('/api/coach?path=../../etc/hosts')
    expect([refused.status, await says(refused)]).toEqual([403, expect.stringContaining('The desk may not open ../../etc/hosts')])
    expect((await app().request('/api/coach')).status).toBe(403)
    for (const body of ['{', '[]', { text: 1, stamp: '' }]) {
      const answer = await app().request(`/api/coach?path=${PATH}`, sent('PUT', body))
      expect([answer.status, await says(answer)]).toEqual([400, expect.stringMatching(/^Saving takes /)])
    }
    const large = await app().request(`/api/coach?path=${PATH}`, sent('PUT', { text: 'x'.repeat(5.1 * 1024 * 1024), stamp: '' }))
    expect([large.status, await says(large)]).toEqual([413, expect.stringContaining('more than 5 MB')])
  })
})

describe('packets', () => {
  const ask = (desk: Hono, text: string) => desk.request(`/api/packet?path=${PATH}`, sent('POST', { text }))
  const events = async (answer: Response): Promise<readonly (readonly [string, unknown])[]> =>
    [...(await answer.text()).matchAll(/event: (\w+)\ndata: (.*)\n/g)].map(([, event, data]) => [event ?? '', JSON.parse(data ?? '')])

  it('tell how far they are, where they went, and give their documents', async () => {
    const asked: PacketAsk[] = []
    const desk = app(async (one) => {
      asked.push(one)
      one.onProgress({ done: 1, of: 1, says: 'Cover' })
      mkdirSync(one.folder, { recursive: true })
      writeFileSync(join(one.folder, 'cover.svg'), '<svg/>')
      writeFileSync(join(one.folder, 'private.txt'), 'not of the packet')
      const head = { program: 'Coachwright 0.1.0', coach: 'Wren', revision: '0123456789ab', unit: 'MASTER', date: '2026-03-02' }
      writeFileSync(join(one.folder, 'packet.json'), manifestText(head, [{ path: 'cover.svg', says: 'Cover', sha256: 'a'.repeat(64) }]))
      return { documents: 1, bytes: 6 }
    })
    expect((await desk.request('/api/packet/wren/packet.json')).status).toBe(404)
    const folder = join(root, 'packet', 'wren')
    expect(await events(await ask(desk, 'as in the window'))).toEqual([
      ['progress', { done: 0, of: null, says: 'Deriving and checking the coach' }],
      ['progress', { done: 1, of: 1, says: 'Cover' }],
      ['done', { folder, url: '/api/packet/wren/', documents: 1, bytes: 6 }],
    ])
    expect(asked[0]).toMatchObject({ path: PATH, text: 'as in the window', folder })
    const cover = await desk.request('/api/packet/wren/cover.svg')
    expect([await cover.text(), cover.headers.get('content-type')]).toEqual(['<svg/>', 'image/svg+xml'])
    expect(cover.headers.get('content-security-policy')).toMatch(/^default-src 'none';.*frame-ancestors 'self'$/)
    expect(await (await desk.request('/api/packet/wren/packet.json')).json()).toMatchObject({ coach: 'Wren' })
    for (const path of ['wren/private.txt', 'wren/..%2f..%2fexamples%2fwren.yaml', 'other/packet.json', '..%2fexamples/wren.yaml'])
      expect((await desk.request(`/api/packet/${path}`)).status).toBe(404)
  })

  it('say why not', async () => {
    const fault = { path: 'frames', file: PATH, line: 3, column: 1, says: 'frames: expected at least two.' }
    expect(
      await events(
        await ask(
          app(() => Promise.resolve({ faults: [fault] })),
          WREN,
        ),
      ),
    ).toEqual([
      ['progress', { done: 0, of: null, says: 'Deriving and checking the coach' }],
      ['refused', { says: fault.says, faults: [fault] }],
    ])
    const elsewhere = await app().request('/api/packet?path=package.json', sent('POST', { text: '' }))
    expect([elsewhere.status, await says(elsewhere)]).toEqual([403, expect.stringContaining('makes no packet of it')])
    expect((await app().request(`/api/packet?path=${PATH}`, sent('POST', {}))).status).toBe(400)
  })

  it('stop when the window goes, and one is written at a time', async () => {
    const seen: AbortSignal[] = []
    const desk = app(({ signal }) => {
      seen.push(signal)
      return new Promise((resolve) => signal.addEventListener('abort', () => resolve({ faults: [] })))
    })
    const first = await ask(desk, WREN)
    const second = await ask(desk, WREN)
    expect([second.status, await says(second)]).toEqual([409, expect.stringContaining('is being written already')])
    await vi.waitFor(() => expect(seen).toHaveLength(1), 5000)
    await first.body?.cancel()
    await vi.waitFor(() => expect(seen[0]?.aborted).toBe(true), 5000)
    const third = await vi.waitFor(async () => {
      const again = await ask(desk, WREN)
      expect(again.status).toBe(200)
      return again
    }, 5000)
    // gone before the writing began: it never does
    await third.body?.cancel()
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(seen).toHaveLength(1)
  })
})
