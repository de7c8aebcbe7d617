import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { get } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { coachFiles } from './coach-files.js'
import { PortTaken, serveDesk } from './serve.js'

const root = mkdtempSync(join(tmpdir(), 'coachwright-serve-'))
writeFileSync(join(root, 'index.html'), 'the page')
afterAll(() => rmSync(root, { recursive: true, force: true }))

const options = {
  web: root,
  files: coachFiles({ root, examples: root }),
  packets: root,
  writePacket: () => Promise.resolve({ documents: 0, bytes: 0 }),
}
/** With a host of one's own choosing, which fetch does not allow. */
const statusFor = (url: string, host: string): Promise<number | undefined> =>
  new Promise((resolve, reject) => {
    get(url, { headers: { host } }, (answer) => {
      answer.resume()
      resolve(answer.statusCode)
    }).once('error', reject)
  })

it('stands on a free port of this machine until it is closed', async () => {
  const desk = await serveDesk({ ...options, port: 0 })
  expect(desk.url).toBe(`http://127.0.0.1:${desk.port}/`)
  expect(await (await fetch(desk.url)).text()).toBe('the page')
  expect(await statusFor(desk.url, 'rebound.example')).toBe(403)
  await desk.close()
  await expect(fetch(desk.url)).rejects.toThrow()
})

it('takes the next port where its own is taken, but never another than was asked for', async () => {
  const first = await serveDesk(options)
  const second = await serveDesk(options)
  expect(second.port).not.toBe(first.port)
  await expect(serveDesk({ ...options, port: first.port })).rejects.toThrow(
    new PortTaken(`Port ${first.port} of 127.0.0.1 is taken. Name another with --port, or leave it out and a free one is found.`),
  )
  await Promise.all([first.close(), second.close()])
})

it('says so when the address is none of this machine', async () => {
  await expect(serveDesk({ ...options, port: 0, host: '192.0.2.1' })).rejects.toThrow(/^192\.0\.2\.1 is no address of this machine\./)
})

it('stops what it makes for a window that goes away', async () => {
  mkdirSync(join(root, 'examples'))
  writeFileSync(join(root, 'examples', 'wren.yaml'), 'schema: 1\ncoach: {name: Wren}\nframes: []\n')
  let stopped = (): void => undefined
  const isStopped = new Promise<void>((resolve) => {
    stopped = resolve
  })
  const desk = await serveDesk({
    ...options,
    port: 0,
    files: coachFiles({ root, examples: join(root, 'examples') }),
    writePacket: ({ signal, onProgress }) =>
      new Promise((resolve) => {
        onProgress({ done: 1, of: 2, says: 'Cover' })
        signal.addEventListener('abort', () => {
          stopped()
          resolve({ faults: [] })
        })
      }),
  })
  const window = new AbortController()
  const answer = await fetch(`${desk.url}api/packet?path=examples/wren.yaml`, {
    method: 'POST',
    headers: { origin: desk.url.slice(0, -1), 'content-type': 'application/json' },
    body: '{"text": ""}',
    signal: window.signal,
  })
  const reader = answer.body?.getReader()
  let heard = ''
  // until the writing itself has begun
  while (!heard.includes('Cover')) {
    const { value, done } = (await reader?.read()) ?? { done: true }
    if (done) throw new Error(`ended early: ${heard}`)
    heard += new TextDecoder().decode(value)
  }
  window.abort()
  await isStopped
  await desk.close()
})
