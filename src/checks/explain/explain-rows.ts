/** Rows of fasteners: grip, length bought, fitted pitch, edge distance. Strengths are in explain-strength.ts. */
import type { FastenerRow, Span, Stack } from '../../derive/nouns.js'
import { rowsById } from '../../derive/holes.js'
import { grip } from '../../derive/shell/formulas/lengths.formulas.js'
import { blindRivet, solidRivet } from '../../derive/shell/formulas/rivet-stock.js'
import { edgeRatio, fittedPitch } from '../../derive/shell/formulas/spacing.formulas.js'
import { developed } from '../../maths/development.js'
import { distanceToOutline } from '../../maths/outline.js'
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Missing, Subject } from './entry.js'
import { strengthEntries } from './explain-strength.js'

export function rowEntries(subject: Subject): readonly Entry[] {
  return subject.design.rows.flatMap((row) => [
    ...stackEntries(subject, row),
    ...row.spans.map((span, k): Entry => ({
      id: `row.${row.id}.pitch.${span.from}-${span.to}`,
      says: `pitch of ${row.says} fitted from ${span.from} to ${span.to}`,
      work: () => pitchOf(subject, row, span, k),
    })),
    { id: `row.${row.id}.edge`, says: `least edge distance of ${row.says} in fastener diameters`, work: () => edgeOf(subject, row) },
    ...strengthEntries(subject, row),
  ])
}

/** The stack most fasteners of a row have. */
export function usualStack(row: FastenerRow): number {
  return row.stacks.reduce((best, s, i) => (s.count > row.stacks[best].count ? i : best), 0)
}

/** Without a number: the most usual stack; with one: that of the row's lengths in the JSON, from 0. */
function stackEntries(subject: Subject, row: FastenerRow): readonly Entry[] {
  const usual = usualStack(row)
  const of = (n: number | null): Entry[] => {
    const stack = row.stacks[n ?? usual]
    const tail = n === null ? '' : `.${n}`
    const which = n === null ? `most fasteners of ${row.says}` : `stack ${n} of ${row.says}, ${stack.count} fasteners through ${stack.parts.join(', ')}`
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
  const bought = type.kind === 'blind' ? blindRivet(type.diameter.value, gripOf(stack)) : solidRivet(type.diameter.value, gripOf(stack), subject.design.definition.rules.rivetLength)
  return bought.length
}

export function typeOf(subject: Subject, row: FastenerRow): Subject['design']['definition']['fasteners'][number] {
  const type = subject.design.definition.fasteners.find((f) => f.id === row.fastener)
  if (!type) throw new Error(`row ${row.id} has the unknown fastener ${row.fastener}`)
  return type
}

/** The length between the control points is the fitted pitch times its whole spaces. */
function pitchOf(subject: Subject, row: FastenerRow, span: Span, k: number): Worked<'m'> {
  return fittedPitch({ L: spacesOf(subject, row, span, k) * span.pitch, p_n: row.pitch })
}

/**
 * Whole spaces of a span, counted from its fasteners: the number of the last one, and what is left from there to the first
 * of the next span where the two follow on. Fasteners left out for an opening keep their numbers, so they are counted too.
 */
function spacesOf(subject: Subject, row: FastenerRow, span: Span, k: number): number {
  if (span.count === 0) return 1
  const last = span.first + span.count - 1
  const next = row.spans[(k + 1) % row.spans.length]
  const number = row.number[last]
  if (next.from !== span.to || next.count === 0 || next === span || row.number[next.first] !== 0) return Math.max(1, number)
  const { skin } = subject.derived.shell.laid
  const to = next.first
  const away = Math.hypot(row.station[to] - row.station[last], developed(skin, row.girth[to]) - developed(skin, row.girth[last]))
  // the staggered row of a joint stands half a pitch back from its number
  return number + Math.max(1, Math.floor(away / span.pitch + 0.25))
}

/** The least of every hole of the row in every flat pattern, to its outline and its cuts. */
function edgeOf({ design, derived }: Subject, row: FastenerRow): Worked<'1'> | Missing {
  let least = Number.POSITIVE_INFINITY
  for (const part of design.parts) {
    for (const { holes, outline, cuts } of part.patterns) {
      const k = holes.rows.indexOf(row.id)
      if (k < 0) continue
      for (let i = 0; i < holes.x.length; i++) {
        if (holes.row[i] !== k) continue
        for (const edge of [outline, ...cuts.map((c) => c.outline)]) least = Math.min(least, distanceToOutline(edge, holes.x[i], holes.y[i]))
      }
    }
  }
  if (!Number.isFinite(least)) return { missing: `Row ${row.id} goes through no sheet derived here, so its edge distance cannot be measured.` }
  return edgeRatio({ e: least, D: rowsById(derived.rows).get(row.id)?.diameter ?? row.diameter })
}
