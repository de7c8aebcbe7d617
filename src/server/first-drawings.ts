/**
 * Drawings of the coaches that were opened last, made beside everything else once a page has opened them: the next page that opens
 * one shows it at once, while its own worker still reads the text.
 */
import { createHash } from 'node:crypto'
import type { FirstDrawing } from '../desk/drawn-ahead.js'
import type { OpenedFiles } from './coach-files.js'

/** Null for a coach that does not read. */
export type DrawsFirst = (coach: OpenedFiles) => Promise<FirstDrawing | null>

export interface FirstDrawings {
  /** of exactly these texts; null until it is made, which asking for it begins */
  readonly of: (coach: OpenedFiles) => FirstDrawing | null
  /** makes one before anybody asks */
  readonly ahead: (coach: OpenedFiles) => void
}

/** ms: the page that asks is busy opening the coach itself, and is not to be held up */
const LATER = 3000

export function firstDrawings(draw: DrawsFirst, later = LATER): FirstDrawings {
  const kept = new Map<string, { readonly key: string; readonly drawing: FirstDrawing | null }>()
  const wanted = new Map<string, OpenedFiles>()
  let isAtWork = false
  const work = async (): Promise<void> => {
    if (isAtWork) return
    isAtWork = true
    for (const [path, coach] of wanted) {
      wanted.delete(path)
      // what goes wrong here is said by the page, which opens the coach itself
      kept.set(path, { key: keyOf(coach), drawing: await draw(coach).catch(() => null) })
    }
    isAtWork = false
  }
  const want = (coach: OpenedFiles, wait: number): void => {
    wanted.set(coach.path, coach)
    setTimeout(() => void work(), wait).unref()
  }
  return {
    of: (coach) => {
      const found = kept.get(coach.path)
      if (found?.key === keyOf(coach)) return found.drawing
      want(coach, later)
      return null
    },
    ahead: (coach) => want(coach, 0),
  }
}

const keyOf = ({ files }: OpenedFiles): string => createHash('sha256').update(JSON.stringify(files)).digest('hex')
