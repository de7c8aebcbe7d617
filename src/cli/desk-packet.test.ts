import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { deskPacket } from './desk-packet.js'
import { loadText } from './open-text.js'

const path = fileURLToPath(new URL('../../examples/sedge-4.yaml', import.meta.url))
const text = readFileSync(path, 'utf8')
const place = mkdtempSync(join(tmpdir(), 'coachwright-desk-packet-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))

const ask = (written: string, signal: AbortSignal, onProgress: (p: { done: number }) => void = () => undefined) =>
  deskPacket({ path, text: written, load: loadText, folder: join(place, 'p'), signal, onProgress })

describe('a packet asked for at the desk', () => {
  it('says the faults of a text that is no coach, with their lines', async () => {
    const outcome = await ask(text.replace('station: 3610 mm', 'station: 36 kg'), new AbortController().signal)
    expect('faults' in outcome && outcome.faults[0]).toMatchObject({
      path: 'frames F2 station',
      line: 9,
      says: expect.stringContaining('36 kg'),
    })
  })

  it('stops when it is told to, and leaves nothing', async () => {
    const window = new AbortController()
    let seen = 0
    const outcome = await ask(text, window.signal, ({ done }) => {
      seen = done
      window.abort()
    })
    expect(seen).toBeGreaterThan(0)
    expect(outcome).toMatchObject({ faults: [{ says: 'Writing the packet was cancelled; nothing was changed.' }] })
    expect(existsSync(join(place, 'p'))).toBe(false)
  })
})
