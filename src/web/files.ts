/** Coaches from the server and back to it. Two windows on one coach: the later save is told, and nothing is overwritten unseen. */

import type { FirstDrawing } from '../desk/drawn-ahead.js'

export interface OpenedCoach {
  readonly path: string
  /** of the text on the disk, for saving over nothing but what was opened */
  readonly stamp: string
  readonly files: Readonly<Record<string, string>>
  /** of exactly these texts, where the server had it ready */
  readonly drawn?: FirstDrawing
}

export interface CoachNamed {
  readonly path: string
  readonly name: string
}

export type Saved =
  | { readonly ok: true; readonly stamp: string }
  /** `theirs` is the text that was saved elsewhere since, where that is why */
  | { readonly ok: false; readonly says: string; readonly theirs: { readonly text: string; readonly stamp: string } | null }

const SILENT = 'The desk does not answer. Start it again with npm start, then try again; what you wrote is kept here.'

export async function coaches(): Promise<readonly CoachNamed[]> {
  const answer = await fetch('/api/coaches')
  return answer.ok ? ((await answer.json()) as readonly CoachNamed[]) : []
}

export async function openCoach(path: string): Promise<OpenedCoach | string> {
  try {
    const answer = await fetch(`/api/coach?path=${encodeURIComponent(path)}`)
    const told = (await answer.json()) as OpenedCoach & { readonly says?: string }
    return answer.ok ? told : (told.says ?? `${path} could not be opened.`)
  } catch {
    return SILENT
  }
}

export const saveCoach = (path: string, text: string, stamp: string): Promise<Saved> => put('PUT', path, { text, stamp })

/** A new file; never over one that is there. */
export const createCoach = (path: string, text: string): Promise<Saved> => put('POST', path, { text })

async function put(method: 'PUT' | 'POST', path: string, body: object): Promise<Saved> {
  try {
    const answer = await fetch(`/api/coach?path=${encodeURIComponent(path)}`, {
      method,
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    const told = (await answer.json()) as { readonly stamp?: string; readonly says?: string; readonly text?: string }
    if (answer.ok && told.stamp) return { ok: true, stamp: told.stamp }
    const theirs = answer.status === 409 && told.text !== undefined && told.stamp ? { text: told.text, stamp: told.stamp } : null
    return { ok: false, says: told.says ?? `${path} could not be saved.`, theirs }
  } catch {
    return { ok: false, says: SILENT, theirs: null }
  }
}

/** How far a packet is; `url` of the folder once it is written. */
export interface PacketTold {
  readonly kind: 'progress' | 'done' | 'refused'
  readonly done: number
  readonly of: number | null
  readonly says: string
  readonly url?: string
}

/** Asks for the packet of this text and tells how far it is, to the end or until it is stopped. */
export async function writePacket(path: string, text: string, signal: AbortSignal, tell: (told: PacketTold) => void): Promise<void> {
  const end = (says: string): void => tell({ kind: 'refused', done: 0, of: null, says })
  try {
    const answer = await fetch(`/api/packet?path=${encodeURIComponent(path)}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text }),
      signal,
    })
    if (!answer.ok || !answer.body) {
      const told = (await answer.json()) as { readonly says?: string }
      end(told.says ?? 'The packet could not be written.')
      return
    }
    const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader()
    let rest = ''
    for (let part = await reader.read(); !part.done; part = await reader.read()) {
      const events = `${rest}${part.value}`.split('\n\n')
      rest = events.pop() ?? ''
      for (const event of events) tellEvent(event, tell)
    }
  } catch {
    end(signal.aborted ? 'Stopped. Nothing was changed.' : SILENT)
  }
}

function tellEvent(event: string, tell: (told: PacketTold) => void): void {
  const line = (name: string): string =>
    event
      .split('\n')
      .find((each) => each.startsWith(`${name}: `))
      ?.slice(name.length + 2) ?? ''
  const kind = line('event')
  if (kind !== 'progress' && kind !== 'done' && kind !== 'refused') return
  const told = JSON.parse(line('data')) as Partial<PacketTold> & { readonly folder?: string; readonly documents?: number }
  const says = told.says ?? (kind === 'done' ? `${told.documents} documents are in ${told.folder}.` : 'The packet could not be written.')
  tell({ kind, done: told.done ?? 0, of: told.of ?? null, says, ...(told.url ? { url: told.url } : {}) })
}
