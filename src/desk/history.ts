/** Texts of the edited file from the first to the last, and where in them we stand. Never changed, only made anew. */

interface Entry {
  readonly text: string
  /** a drag is one entry as long as its stroke lasts */
  readonly stroke: string | null
}

export interface History {
  readonly entries: readonly Entry[]
  readonly at: number
}

export const startHistory = (text: string): History => ({ entries: [{ text, stroke: null }], at: 0 })

export const textOf = ({ entries, at }: History): string => entries[at].text

/** What was undone is given up. An edit that changes nothing is none. */
export function withText(history: History, text: string, stroke: string | null): History {
  const { entries, at } = history
  if (text === entries[at].text) return history
  const isSameStroke = stroke !== null && entries[at].stroke === stroke
  const kept = entries.slice(0, isSameStroke ? at : at + 1)
  return { entries: [...kept, { text, stroke }], at: kept.length }
}

/** One back or one on, and the same where there is none. A stroke that was left is not taken up again. */
export function stepped({ entries, at }: History, by: -1 | 1): History {
  const next = Math.min(entries.length - 1, Math.max(0, at + by))
  return { entries: entries.map((each, i) => (i === next && each.stroke !== null ? { ...each, stroke: null } : each)), at: next }
}
