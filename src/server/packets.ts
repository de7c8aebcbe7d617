/** Packets made from the desk: progress while one is written, then its documents. The writing itself is handed in. */
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { Context } from 'hono'
import { streamSSE } from 'hono/streaming'
import type { Load } from '../definition/load-files.js'
import { readManifest } from '../documents/packet/manifest.js'
import { no } from './answers.js'
import type { CoachFiles } from './coach-files.js'
import { DOCUMENT_POLICY } from './guards.js'
import { typeOf } from './web-files.js'

export interface PacketAsk {
  readonly path: string
  /** as it stands in the window, saved or not */
  readonly text: string
  readonly load: Load
  /** folder to write; a packet already there is replaced whole */
  readonly folder: string
  readonly signal: AbortSignal
  readonly onProgress: (progress: { readonly done: number; readonly of: number; readonly says: string }) => void
}

export interface SaidFault {
  readonly path: string
  readonly file: string
  readonly line: number | null
  readonly column: number | null
  readonly says: string
}

/** What came of it; `faults` when the text is no coach, or the disk or the person said no. Anything else it throws is a bug. */
export type PacketOutcome = { readonly documents: number; readonly bytes: number } | { readonly faults: readonly SaidFault[] }
export type WritesPacket = (ask: PacketAsk) => Promise<PacketOutcome>

export interface PacketPlace {
  readonly files: CoachFiles
  /** folder the packets stand in, one folder a coach */
  readonly packets: string
  readonly write: WritesPacket
}

export interface PacketRoutes {
  /** events `progress` {done, of, says}, `of` null while it is not known, then `done` {folder, url, documents, bytes} or `refused` {says, faults} */
  readonly make: (c: Context, path: string, text: string) => Response
  readonly document: (c: Context, packet: string, path: string) => Response
}

export function packetRoutes({ files, packets, write }: PacketPlace): PacketRoutes {
  const beingMade = new Set<string>()

  function make(c: Context, path: string, text: string): Response {
    const name = packetName(path, files)
    if (name === null) return no(c, 403, `The desk may not open ${path}, so it makes no packet of it.`)
    if (beingMade.has(name))
      return no(c, 409, `The packet of ${path} is being written already. Wait for it, or cancel it where it was asked for.`)
    const folder = join(packets, name)
    beingMade.add(name)
    return streamSSE(c, async (stream) => {
      const stop = new AbortController()
      stream.onAbort(() => stop.abort())
      const send = (event: string, data: object) => stream.writeSSE({ event, data: JSON.stringify(data) })
      try {
        // the coach is derived in one go: the window hears that it began before this thread is busy
        await send('progress', { done: 0, of: null, says: 'Deriving and checking the coach' })
        await stream.sleep(10)
        if (stop.signal.aborted) return
        const outcome = await write({
          path,
          text,
          load: files.load,
          folder,
          signal: stop.signal,
          onProgress: (p) => void send('progress', p),
        })
        if ('faults' in outcome)
          await send('refused', { says: outcome.faults[0]?.says ?? 'The packet was not written.', faults: outcome.faults })
        else await send('done', { folder, url: `/api/packet/${encodeURIComponent(name)}/`, ...outcome })
      } catch (reason) {
        console.error(reason)
        await send('refused', { says: BUG, faults: [] })
      } finally {
        beingMade.delete(name)
      }
    })
  }

  function document(c: Context, packet: string, path: string): Response {
    const isOurs = files.list().some((coach) => packetName(coach.path, files) === packet)
    const manifest = isOurs ? manifestIn(join(packets, packet)) : null
    if (!manifest) return no(c, 404, `There is no packet ${packet} yet. Make it first.`)
    const known = path === 'packet.json' || manifest.documents.some((one) => one.path === path)
    const bytes = known ? bytesOf(join(packets, packet, path)) : null
    if (!bytes) return no(c, 404, `The packet ${packet} has no document ${path}.`)
    c.header('content-type', typeOf(path))
    c.header('cache-control', 'no-cache')
    c.header('content-security-policy', DOCUMENT_POLICY)
    c.header('x-frame-options', 'SAMEORIGIN')
    return c.body(bytes)
  }

  return { make, document }
}

const BUG =
  'Coachwright met something it was not made for while it wrote the packet; nothing was changed. This is a fault of the program, not of your definition.'

/** The file's name without its ending; two coaches of one name get two packets. Null for a coach that is not on the desk. */
function packetName(path: string, files: CoachFiles): string | null {
  const slug = (one: string) => basename(one).replace(/\.ya?ml$/i, '')
  const paths = files.list().map((coach) => coach.path)
  if (!paths.includes(path)) return null
  const isOnly = paths.filter((one) => slug(one) === slug(path)).length === 1
  return isOnly ? slug(path) : `${slug(path)}-${createHash('sha256').update(path).digest('hex').slice(0, 8)}`
}

function manifestIn(folder: string): ReturnType<typeof readManifest>['manifest'] {
  const text = bytesOf(join(folder, 'packet.json'))
  return text ? readManifest(new TextDecoder().decode(text)).manifest : null
}

function bytesOf(file: string): Uint8Array<ArrayBuffer> | null {
  try {
    return new Uint8Array(readFileSync(file))
  } catch {
    return null
  }
}
