/**
 * Writes a packet to disk: every document into a folder beside the wanted one, the manifest last, then one rename.
 *
 * Until the rename the wanted folder is the old packet, whole; after it, the new one, whole. A cancelled or failed writing
 * leaves nothing. The rename of a folder over another cannot be one step everywhere, so the old one is first put aside and
 * put back should the second step fail.
 */
import { createHash } from 'node:crypto'
import { mkdir, mkdtemp, readdir, rename, rm, stat, writeFile } from 'node:fs/promises'
import { basename, dirname, join, resolve } from 'node:path'
import { setImmediate as breathe } from 'node:timers/promises'
import type { Page } from '../documents/drawing/page.js'
import type { ManifestDocument, ManifestHead } from '../documents/packet/manifest.js'
import { manifestText } from '../documents/packet/manifest.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import { checkPaths, readsTheSame } from '../documents/packet/planned.js'

export interface PacketProgress {
  /** documents written, this one included */
  readonly done: number
  readonly of: number
  readonly path: string
  readonly says: string
}

export interface WritePacketOptions {
  readonly renderPdf: (pages: readonly Page[], title: string) => Promise<Uint8Array>
  readonly onProgress?: (progress: PacketProgress) => void
  /** documents there will be, as far as is known before all are planned */
  readonly expected?: number
  /** aborting stops before the next document and leaves the disk as it was */
  readonly signal?: AbortSignal
}

export interface WrittenPacket {
  readonly folder: string
  readonly documents: readonly ManifestDocument[]
  readonly bytes: number
}

/** A reason a person can act on: cancelled, or the folder is not one this program may replace. */
export class PacketRefused extends Error {}

/**
 * What a packet is written from: documents that can be made while other threads still work, and then all of them, in reading order.
 * One made early is made again should it turn out to be read from something else.
 */
export interface PacketSource {
  readonly atOnce: readonly PlannedDocument[]
  readonly whole: () => Promise<readonly PlannedDocument[]>
}

export const wholeAtOnce = (documents: readonly PlannedDocument[]): PacketSource => ({
  atOnce: [],
  whole: () => Promise.resolve(documents),
})

async function contentOf(document: PlannedDocument, options: WritePacketOptions): Promise<string | Uint8Array> {
  const { content } = document
  return content.kind === 'text' ? content.make() : options.renderPdf(content.make(), content.title)
}

/** True when there is a packet to replace; throws when something else is in the way. */
async function isPacket(folder: string): Promise<boolean> {
  const there = await stat(folder).catch(() => null)
  if (!there) return false
  if (!there.isDirectory()) throw new PacketRefused(`${folder} is a file, so no packet can be written there. Name a folder.`)
  const inside = await readdir(folder)
  if (inside.length && !inside.includes('packet.json')) {
    throw new PacketRefused(
      `${folder} holds other things and no packet, and writing a packet there would remove them. Name another folder.`,
    )
  }
  return true
}

function stopIfCancelled(signal: AbortSignal | undefined): void {
  if (signal?.aborted) throw new PacketRefused('Writing the packet was cancelled; nothing was changed.')
}

interface Made {
  readonly document: PlannedDocument
  readonly bytes: number
  readonly sha256: string
}

async function writeAll(
  source: PacketSource,
  head: ManifestHead,
  into: string,
  options: WritePacketOptions,
): Promise<Omit<WrittenPacket, 'folder'>> {
  const made = new Map<string, Made>()
  // other threads pack and write a few documents while the next is drawn
  const writing = new Set<Promise<void>>()
  const folders = new Map<string, Promise<unknown>>()
  const write = async (path: string, content: string | Uint8Array): Promise<void> => {
    const folder = dirname(path)
    const ready = folders.get(folder) ?? mkdir(folder, { recursive: true })
    folders.set(folder, ready)
    await ready
    await writeFile(path, content)
  }
  const finish = async (document: PlannedDocument, of: number): Promise<void> => {
    const { path, says } = document
    const content = await contentOf(document, options)
    await write(join(into, path), content)
    made.set(path, { document, bytes: content.length, sha256: createHash('sha256').update(content).digest('hex') })
    options.onProgress?.({ done: made.size, of, path, says })
  }
  const failures: unknown[] = []
  const settled = async (): Promise<void> => {
    await Promise.all(writing)
    if (failures.length > 0) throw failures[0]
  }
  const make = async (document: PlannedDocument, of: number): Promise<void> => {
    // let a signal or a key press in between two documents
    await breathe()
    stopIfCancelled(options.signal)
    while (writing.size >= IN_FLIGHT) await Promise.race(writing)
    if (failures.length > 0) throw failures[0]
    const one: Promise<void> = finish(document, of)
      .catch((reason) => void failures.push(reason))
      .finally(() => writing.delete(one))
    writing.add(one)
  }
  try {
    for (const document of source.atOnce) await make(document, Math.max(source.atOnce.length, options.expected ?? 0))
    await settled()
    const documents = checkPaths(await source.whole())
    const stays = new Set(documents.map((d) => d.path))
    for (const document of documents) {
      const early = made.get(document.path)
      if (early && readsTheSame(early.document, document)) continue
      await make(document, documents.length)
    }
    await settled()
    for (const path of made.keys()) if (!stays.has(path)) await rm(join(into, path))
    const written = documents.flatMap(({ path, says }) => {
      const one = made.get(path)
      return one ? [{ path, says, bytes: one.bytes, sha256: one.sha256 }] : []
    })
    const listed = written.map(({ bytes: _, ...each }) => each)
    await writeFile(join(into, 'packet.json'), manifestText(head, listed))
    await breathe()
    stopIfCancelled(options.signal)
    return { documents: listed, bytes: written.reduce((sum, each) => sum + each.bytes, 0) }
  } finally {
    // nothing may still be writing when the folder is taken away
    await Promise.all(writing)
  }
}

/** Documents being written to the disk at once. */
const IN_FLIGHT = 16

/** Puts `made` in the place of `folder`. */
async function takePlace(made: string, folder: string, replaces: boolean): Promise<void> {
  if (!replaces) return rename(made, folder)
  const aside = `${made}-before`
  await rename(folder, aside)
  try {
    await rename(made, folder)
  } catch (reason) {
    await rename(aside, folder)
    throw reason
  }
  await rm(aside, { recursive: true, force: true })
}

/** Throws PacketRefused with a sentence, or what the disk said. Either way the folder is as it was. */
export async function writePacket(
  source: PacketSource,
  head: ManifestHead,
  out: string,
  options: WritePacketOptions,
): Promise<WrittenPacket> {
  checkPaths(source.atOnce)
  const folder = resolve(out)
  const replaces = await isPacket(folder)
  stopIfCancelled(options.signal)
  await mkdir(dirname(folder), { recursive: true })
  const made = await mkdtemp(join(dirname(folder), `.${basename(folder)}-writing-`))
  try {
    const written = await writeAll(source, head, made, options)
    await takePlace(made, folder, replaces)
    return { folder, ...written }
  } catch (reason) {
    await rm(made, { recursive: true, force: true })
    throw reason
  }
}
