/** Coaches from the server and back to it. Two windows on one coach: the later save is told, and nothing is overwritten unseen. */

export interface OpenedCoach {
  readonly path: string
  /** of the text on the disk, for saving over nothing but what was opened */
  readonly stamp: string
  readonly files: Readonly<Record<string, string>>
}

export interface CoachNamed {
  readonly path: string
  readonly name: string
}

export type Saved = { readonly ok: true; readonly stamp: string } | { readonly ok: false; readonly says: string }

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

export async function saveCoach(path: string, text: string, stamp: string): Promise<Saved> {
  try {
    const answer = await fetch(`/api/coach?path=${encodeURIComponent(path)}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ text, stamp }),
    })
    const told = (await answer.json()) as { readonly stamp?: string; readonly says?: string }
    if (answer.ok && told.stamp) return { ok: true, stamp: told.stamp }
    return { ok: false, says: told.says ?? `${path} could not be saved.` }
  } catch {
    return { ok: false, says: SILENT }
  }
}
