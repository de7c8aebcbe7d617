/** A document a packet will hold: where, what, and how to make it. Nothing is made until its content is asked for. */
import type { Page } from '../drawing/page.js'

export type PlannedContent =
  | { readonly kind: 'text'; readonly make: () => string }
  | { readonly kind: 'pdf'; readonly title: string; readonly make: () => readonly Page[] }

export interface PlannedDocument {
  /** forward slashes, no leading slash, unique in its packet */
  readonly path: string
  readonly says: string
  readonly content: PlannedContent
}

export const textDocument = (path: string, says: string, make: () => string): PlannedDocument => ({
  path,
  says,
  content: { kind: 'text', make },
})

export const pdfDocument = (path: string, says: string, make: () => readonly Page[]): PlannedDocument => ({
  path,
  says,
  content: { kind: 'pdf', title: says, make },
})

/** Throws on a path that leaves the packet, is taken twice (letter case apart), or is the manifest's. */
export function checkPaths(documents: readonly PlannedDocument[]): readonly PlannedDocument[] {
  const seen = new Set<string>(['packet.json'])
  for (const { path } of documents) {
    if (!/^[A-Za-z0-9][A-Za-z0-9._-]*(\/[A-Za-z0-9][A-Za-z0-9._-]*)*$/.test(path))
      throw new Error(`A packet cannot hold a document at "${path}"`)
    if (seen.has(path.toLowerCase())) throw new Error(`Two documents of a packet are at "${path}"`)
    seen.add(path.toLowerCase())
  }
  return documents
}
