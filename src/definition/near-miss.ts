/** The word somebody meant: nearest by edits, forgiving case, spaces, hyphens and shortening. */
const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, '')

/** Edits (insert, remove, replace, swap neighbours) from a to b: optimal string alignment. */
export function edits(a: string, b: string): number {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) next[j] = Math.min(next[j], before[j - 2] + 1)
    }
    before = row
    row = next
  }
  return row[b.length]
}

/** Null when nothing is near: a third of the letters may differ, and one in a word of three. */
export function nearest(word: string, known: readonly string[]): string | null {
  const w = plain(word)
  if (w.length === 0 || w.length > 60) return null
  const shortened = known.filter((k) => w.length >= 3 && (plain(k).startsWith(w) || (k.length >= 3 && w.startsWith(plain(k)))))
  let best: string | null = null
  // in a word of two letters any other would be one edit away
  let fewest = (w.length < 3 ? 0 : Math.max(1, Math.floor(w.length / 3))) + 1
  for (const k of known) {
    const n = edits(w, plain(k))
    if (n < fewest) {
      best = k
      fewest = n
    }
  }
  return best ?? (shortened.length === 1 ? shortened[0] : null)
}

export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known)
  return near === null ? '' : `Did you mean "${near}"?`
}

/** `a, b or c`. */
export function oneOf(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? 'nothing') : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`
}
