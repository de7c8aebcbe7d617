/** Rows of fasteners: grip, length bought, fitted pitch, edge distance. Strengths are in explain-strength.ts. */
import type { FastenerRow, Span, Stack } from '../../derive/nouns.js'
import { grip } from '../../derive/shell/formulas/lengths.formulas.js'
import { blindRivet, solidRivet } from '../../derive/shell/formulas/rivet-stock.js'
import { edgeRatio, fittedPitch } from '../../derive/shell/formulas/spacing.formulas.js'
import { developed } from '../../maths/development.js'
import { distanceToOutline } from '../../maths/outline.js'
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Subject } from './entry.js'
import { strengthEntries } from './explain-strength.js'
import { typeOf, usualStack } from './row-facts.js'

export function rowEntries(subject: Subject): readonly Entry[] {
  const inSheets = new Set(subject.design.parts.flatMap((part) => part.patterns.flatMap((p) => p.holes.rows)))
  return subject.design.rows.flatMap((row) => [
    ...stackEntries(subject, row),
    ...row.spans.map(
      (span, k): Entry => ({
        id: `row.${row.id}.pitch.${span.from}-${span.to}`,
        says: `pitch of ${row.says} fitted from ${span.from} to ${span.to}`,
        work: () => pitchOf(subject, row, span, k),
      }),
    ),
    ...(inSheets.has(row.id)
      ? [{ id: `row.${row.id}.edge`, says: `least edge distance of ${row.says} in fastener diameters`, work: () => edgeOf(subject, row) }]
      : []),
    ...strengthEntries(subject, row),
  ])
}

/** Without a number: the most usual stack; with one: that of the row's lengths in the JSON, from 0. */
function stackEntries(subject: Subject, row: FastenerRow): readonly Entry[] {
  const usual = usualStack(row)
  const of = (n: number | null): Entry[] => {
    const stack = row.stacks[n ?? usual]
    const tail = n === null ? '' : `.${n}`
    const which =
      n === null ? `most fasteners of ${row.says}` : `stack ${n} of ${row.says}, ${stack.count} fasteners through ${stack.parts.join(', ')}`
    return [
      { id: `row.${row.id}.grip${tail}`, says: `grip of ${which}`, work: () => gripOf(stack) },
      { id: `row.${row.id}.length${tail}`, says: `length bought for ${which}`, work: () => lengthOf(subject, row, stack) },
    ]
  }
  return [...of(null), ...(row.stacks.length > 1 ? row.stacks.flatMap((_, n) => of(n)) : [])]
}

function gripOf(stack: Stack): Worked<'m'> {
  const terms: Record<string, number> = {}
  stack.parts.forEach((part, i) => {
    terms[part in terms ? `${part} (layer ${i + 1})` : part] = stack.thickness[i]
  })
  return grip(terms)
}

function lengthOf(subject: Subject, row: FastenerRow, stack: Stack): Worked<'m'> {
  const type = typeOf(subject, row)
  const bought =
    type.kind === 'blind'
      ? blindRivet(type.diameter.value, gripOf(stack))
      : solidRivet(type.diameter.value, gripOf(stack), subject.design.definition.rules.rivetLength)
  return bought.length
}

/** How far a chord round a corner may be from a whole space, in spaces. */
const ROUND_CORNER = 0.1

/** The length between the control points is the fitted pitch times its whole spaces. */
function pitchOf(subject: Subject, row: FastenerRow, span: Span, k: number): Worked<'m'> {
  return fittedPitch({ L: spacesOf(subject, row, span, k) * span.pitch, p_n: row.pitch })
}

/**
 * Whole spaces of a span, counted from its fasteners: the number of the last one, and what is left from there to the first
 * of the next span where the two share a control point. Fasteners left out for an opening keep their numbers, so they are
 * counted too. Of the counts that could be, the one the fitting rule itself gives is taken.
 */
function spacesOf(subject: Subject, row: FastenerRow, span: Span, k: number): number {
  const last = span.first + span.count - 1
  const number = span.count === 0 ? 1 : Math.max(1, row.number[last])
  const fits = (n: number): boolean => fittedPitch.eval({ L: n * span.pitch, p_n: row.pitch }) === (n * span.pitch) / n
  const followed = span.count === 0 ? null : spacesToNext(subject, row, span, k)
  const counts = [...(followed === null ? [] : [number + followed]), number, number + 1]
  return counts.find(fits) ?? number
}

/** Spaces from the last fastener of a span to the first of the next; null where that one stands on a member of its own. */
function spacesToNext(subject: Subject, row: FastenerRow, span: Span, k: number): number | null {
  const next = row.spans[(k + 1) % row.spans.length]
  if (row.kind === 'seam' || next === span || next.from !== span.to || next.count === 0 || row.number[next.first] !== 0) return null
  const { skin } = subject.derived.shell.laid
  const [a, b] = [span.first + span.count - 1, next.first]
  const away = Math.hypot(row.station[b] - row.station[a], developed(skin, row.girth[b]) - developed(skin, row.girth[a])) / span.pitch
  if (Math.abs(away - Math.round(away)) < ROUND_CORNER) return Math.round(away)
  // the staggered row of a joint stands half a space back from its numbers
  return row.kind === 'joint' && Math.abs(away - Math.floor(away) - 0.5) < ROUND_CORNER ? Math.floor(away) : null
}

/** The least of every hole of the row in every flat pattern, to its outline and its cuts. */
function edgeOf({ design }: Subject, row: FastenerRow): Worked<'1'> {
  let least = Number.POSITIVE_INFINITY
  for (const part of design.parts) {
    for (const { holes, outline, cuts } of part.patterns) {
      const k = holes.rows.indexOf(row.id)
      if (k < 0) continue
      for (let i = 0; i < holes.x.length; i++) {
        if (holes.row[i] !== k) continue
        for (const edge of [outline, ...cuts.map((c) => c.outline)])
          least = Math.min(least, distanceToOutline(edge, holes.x[i], holes.y[i]))
      }
    }
  }
  return edgeRatio({ e: least, D: row.diameter })
}
