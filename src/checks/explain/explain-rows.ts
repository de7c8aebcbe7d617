/** Rows of fasteners: grip, length bought, fitted pitch, edge distance. Strengths are in explain-strength.ts. */

import { grip } from '../../derive/common/lengths.formulas.js'
import { blindRivet, solidRivet } from '../../derive/common/rivet-stock.js'
import { edgeRatio, fittedPitch } from '../../derive/common/spacing.formulas.js'
import type { FastenerRow, Span, Stack } from '../../derive/nouns.js'
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
      (span, _k): Entry => ({
        id: `row.${row.id}.pitch.${span.from}-${span.to}`,
        says: `pitch of ${row.says} fitted from ${span.from} to ${span.to}`,
        work: () => pitchOf(row, span),
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

/** The length between the control points is the fitted pitch times its whole spaces. */
function pitchOf(row: FastenerRow, span: Span): Worked<'m'> {
  return fittedPitch({ L: span.spaces * span.pitch, p_n: row.pitch })
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
