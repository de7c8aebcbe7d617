/** Windows of one desk tell each other what they have open, what they change and what they save; nothing leaves this browser. */

/** Of this page, from its loading to its closing. */
const ME = Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, '0')).join('')
export const me = ME

interface Said {
  readonly from: string
  readonly path: string
  /** asks who has this coach open; answers with its text; was changed; was saved, with the stamp of the text on the disk */
  readonly kind: 'who' | 'here' | 'edited' | 'saved'
  readonly text: string
  readonly stamp: string | null
}

const channel = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('coachwright desk')
const hearers = new Set<(said: Said) => void>()
channel?.addEventListener('message', ({ data }: MessageEvent<Said>) => {
  for (const hear of hearers) hear(data)
})

export const tell = (said: Omit<Said, 'from'>): void => channel?.postMessage({ ...said, from: ME })

export function hear(hearer: (said: Said) => void): void {
  hearers.add(hearer)
}

/** ms: windows on one machine answer in a few */
const ANSWERED = 150

/** Other windows that have this coach open now. */
export function windowsOn(path: string): Promise<ReadonlySet<string>> {
  const found = new Set<string>()
  const note = (said: Said): void => {
    if (said.kind === 'here' && said.path === path) found.add(said.from)
  }
  hearers.add(note)
  tell({ kind: 'who', path, text: '', stamp: null })
  return new Promise((resolve) =>
    setTimeout(() => {
      hearers.delete(note)
      resolve(found)
    }, ANSWERED),
  )
}
