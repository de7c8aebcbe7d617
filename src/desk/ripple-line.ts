/** The ripple in one quiet line, for the foot of the screen: what moved, what it weighs, what the hitch carries, what is wrong now. */
import type { Ripple } from '../ripple/nouns.js'
import { count } from '../ripple/words.js'

/** `until` is null for the coach as it is now. */
export function rippleLine(ripple: Ripple, since: string, until: string | null = null): string {
  const head = until === null ? `Since ${since}` : `From ${since} to ${until}`
  if (ripple.equal) return `${head}: nothing changed.`
  const said = [...holes(ripple), ...parts(ripple), ...weight(ripple), ...findings(ripple), ...paper(ripple)]
  return `${head}: ${said.length > 0 ? said.join(', ') : 'only what is written changed'}.`
}

function holes({ parts: { changed } }: Ripple): readonly string[] {
  const touched = changed.filter((part) => part.faces.some((face) => face.holes.length > 0))
  const sum = (of: 'moved' | 'added' | 'removed'): number =>
    touched.reduce((all, part) => all + part.faces.reduce((n, face) => n + face.holes.reduce((m, each) => m + each[of], 0), 0), 0)
  const said = ([of, word]: readonly ['moved' | 'added' | 'removed', string]): readonly string[] =>
    sum(of) > 0 ? [`${count(sum(of), 'hole')} ${word}`] : []
  const all = [...said(['moved', 'moved']), ...said(['added', 'more']), ...said(['removed', 'fewer'])]
  return all.length > 0 ? [`${all.join(', ')} in ${count(touched.length, 'part')}`] : []
}

const parts = ({ parts: { added, removed } }: Ripple): readonly string[] => [
  ...(added.length > 0 ? [count(added.length, 'new part')] : []),
  ...(removed.length > 0 ? [`${count(removed.length, 'part')} gone`] : []),
]

/** Less than this is not said: a tenth of a kilogram, a twentieth of a point. */
const KILOGRAM = 0.05
const POINT = 0.0005

function weight({ loads }: Ripple): readonly string[] {
  const [now, was] = [loads.unloaded?.after, loads.unloaded?.before]
  const by = typeof now === 'number' && typeof was === 'number' ? now - was : 0
  const worst = loads.cases.find((each) => each.design && each.share.before !== null && each.share.after !== null)
  const { before, after } = worst?.share ?? { before: null, after: null }
  return [
    ...(Math.abs(by) >= KILOGRAM ? [`${by > 0 ? '+' : '-'}${Math.abs(by).toFixed(1)} kg`] : []),
    ...(worst && before !== null && after !== null && Math.abs(after - before) >= POINT
      ? [`hitch ${(before * 100).toFixed(1)} to ${(after * 100).toFixed(1)} % (case ${worst.case})`]
      : []),
  ]
}

function findings({ checks: { appeared, gone } }: Ripple): readonly string[] {
  const fails = appeared.filter((each) => each.verdict === 'fail').length
  const rest = appeared.length - fails
  return [
    ...(fails > 0 ? [`${count(fails, 'check')} now ${fails === 1 ? 'fails' : 'fail'}`] : []),
    ...(rest > 0 ? [count(rest, 'new caution')] : []),
    ...(gone.length > 0 ? [`${count(gone.length, 'finding')} gone`] : []),
  ]
}

function paper({ documents }: Ripple): readonly string[] {
  const n = documents.filter((each) => !each.onlyFigure).length
  return n > 0 ? [`${count(n, 'document')} to issue again`] : []
}
