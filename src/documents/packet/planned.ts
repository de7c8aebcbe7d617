/** A document a packet will hold: where, what, and how to make it. Nothing is made until its content is asked for. */
import type { Page } from '../drawing/page.js'

export type PlannedContent =
  | { readonly kind: 'text'; readonly make: () => string }
  | { readonly kind: 'pdf'; readonly title: string; readonly make: () => readonly Page[] }

/** One thing a document is made from. Two documents whose things show the same are the same but for revision, unit and date. */
export interface MadeFrom {
  /** what a person calls it: a part, a row, an opening, a check, or a word for what has no id */
  readonly name: string
  /** the very objects it is read from: the same objects show the same */
  readonly from: readonly unknown[]
  /** what of them is printed, as finely as it is printed; the objects themselves where absent */
  readonly shows?: () => unknown
}

export interface PlannedDocument {
  /** forward slashes, no leading slash, unique in its packet */
  readonly path: string
  readonly says: string
  readonly content: PlannedContent
  /** everything of the design its content hangs on, but the revision, the unit and the date, which are on every sheet */
  readonly of: () => readonly MadeFrom[]
}

export const textDocument = (path: string, says: string, of: PlannedDocument['of'], make: () => string): PlannedDocument => ({
  path,
  says,
  content: { kind: 'text', make },
  of,
})

export const pdfDocument = (path: string, says: string, of: PlannedDocument['of'], make: () => readonly Page[]): PlannedDocument => ({
  path,
  says,
  content: { kind: 'pdf', title: says, make },
  of,
})

/** Whether a document can be made while `changing` are still being worked out: it is read from none of them, and lists no others. */
export function standsAlone(document: PlannedDocument, changing: ReadonlySet<unknown>): boolean {
  return document.of().every(({ from, shows }) => !from.some((each) => changing.has(each)) && (from.length > 0 || shows === undefined))
}

/** Whether two plans of a document read the very same objects, which then show the same. */
export function readsTheSame(a: PlannedDocument, b: PlannedDocument): boolean {
  const [was, now] = [a.of(), b.of()]
  return (
    a.says === b.says &&
    was.length === now.length &&
    was.every(
      (one, i) =>
        one.name === now[i].name && one.from.length === now[i].from.length && one.from.every((o, k) => Object.is(o, now[i].from[k])),
    )
  )
}

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
