/** Texts that are not on the disk yet, kept in this browser: one for each coach and window, so that no window writes over another's. */
import type { CoachFiles } from '../desk/desk-coach-nouns.js'
import { me } from './window-talk.js'

interface Draft {
  readonly path: string
  readonly by: string
  readonly text: string
  /** ms since 1970 */
  readonly at: number
  /** of a coach that is no file of the desk yet: everything it was begun from */
  readonly files: CoachFiles['files'] | null
}

const START = 'draft of '
const keyOf = (path: string, by: string): string => `${START}${path} by ${by}`

export function keepDraft(path: string, text: string, files: CoachFiles['files'] | null): void {
  const draft: Draft = { path, by: me, text, at: Date.now(), files }
  localStorage.setItem(keyOf(path, me), JSON.stringify(draft))
}

export const dropDraft = (path: string, by = me): void => localStorage.removeItem(keyOf(path, by))

/** The latest first. What is no draft of this form is left alone. */
function drafts(): readonly Draft[] {
  return Object.keys(localStorage)
    .filter((key) => key.startsWith(START))
    .flatMap((key) => read(localStorage.getItem(key)))
    .sort((a, b) => b.at - a.at)
}

function read(kept: string | null): readonly Draft[] {
  try {
    const draft = JSON.parse(kept ?? '') as Partial<Draft> | null
    return typeof draft?.path === 'string' && typeof draft.text === 'string' && typeof draft.by === 'string' ? [draft as Draft] : []
  } catch {
    return []
  }
}

export const draftsOf = (path: string): readonly Draft[] => drafts().filter((draft) => draft.path === path)

/** Coaches that were never saved, the latest of each. */
export function unsavedCoaches(): readonly Draft[] {
  const all = drafts().filter(({ files }) => files !== null)
  return all.filter(({ path }, i) => all.findIndex((each) => each.path === path) === i)
}

export function letGo(path: string): void {
  for (const { by } of draftsOf(path)) dropDraft(path, by)
}
