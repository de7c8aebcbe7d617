/**
 * Strength of one fastener of a row in the stack most of them have, how many the sheet would want, and when the skin buckles
 * between them. Allowables must be confirmed from the current handbook; each source says how far it is verified.
 */

import type { SheetMaterial } from '../../definition/types.js'
import { rivetsPerLength } from '../../derive/common/spacing.formulas.js'
import type { FastenerRow, Stack } from '../../derive/nouns.js'
import {
  bearing,
  governing,
  interRivetBuckling,
  rivetShear,
  sheetRatio,
  thinSheetFactor,
} from '../../derive/shell/formulas/strength.formulas.js'
import type { Worked } from '../../quantity/formula.js'
import { findAlloy } from '../../tables/alloys.js'
import { findBlindRivet, findRivetAlloy, findRivetSize, PER_INCH } from '../../tables/rivets.js'
import { type Entry, isMissing, type Missing } from './entry.js'
import { blindShear } from './explain.formulas.js'
import { type OfDesign, typeOf, usualStack } from './row-facts.js'

/** Universal and sealed dome heads: end fixity 3, Flabel. */
const FIXITY = 3

export function strengthEntries(subject: OfDesign, row: FastenerRow): readonly Entry[] {
  const inSkin = row.kind !== 'lining'
  const solid = typeOf(subject, row).kind === 'solid'
  const entries: readonly Entry[] = [
    { id: `row.${row.id}.strength`, says: `strength of one fastener of ${row.says}`, work: () => both(subject, row) },
    { id: `row.${row.id}.strength.shear`, says: `shear strength of one fastener of ${row.says}`, work: () => shearOf(subject, row) },
    {
      id: `row.${row.id}.strength.bearing`,
      says: `bearing strength of the weakest sheet of ${row.says}`,
      work: () => bearingOf(subject, row),
    },
    ...(inSkin && solid
      ? [
          {
            id: `row.${row.id}.per-inch`,
            says: `fasteners a length of ${row.says} that carry the skin's full strength`,
            work: () => perInch(subject, row),
          },
        ]
      : []),
    ...(inSkin
      ? [
          {
            id: `row.${row.id}.buckling`,
            says: `stress at which the skin buckles between fasteners of ${row.says}`,
            work: () => buckling(subject, row),
          },
        ]
      : []),
  ]
  return entries.map((entry) => ({ ...entry, isDoubtful: true }))
}

function both(subject: OfDesign, row: FastenerRow): Worked<'N'> | Missing {
  const shear = shearOf(subject, row)
  if (isMissing(shear)) return shear
  const sheet = bearingOf(subject, row)
  return isMissing(sheet) ? sheet : governing({ P_s: shear, P_b: sheet })
}

function shearOf(subject: OfDesign, row: FastenerRow): Worked<'N'> | Missing {
  const type = typeOf(subject, row)
  const D = type.diameter.value
  if (type.kind === 'blind') {
    const found = findBlindRivet(D)
    return found.ok ? blindShear({ D }) : { missing: found.says }
  }
  const alloy = findRivetAlloy(type.alloy)
  if (!alloy.ok) return { missing: alloy.says }
  const hole = strengthHole(subject, row)
  if (typeof hole !== 'number') return hole
  const t = Math.min(...stackOf(row).thickness)
  return rivetShear({ phi: thinSheetFactor({ x: sheetRatio({ t, D }) }), F_su: alloy.row.Fsu.value, D_h: hole })
}

/** The hole strengths are reckoned on; a blind rivet fills no more than its own diameter. m. */
function strengthHole(subject: OfDesign, row: FastenerRow): number | Missing {
  const type = typeOf(subject, row)
  if (type.kind === 'blind') return type.diameter.value
  const size = findRivetSize(type.diameter.value)
  return size.ok ? size.row.strengthHole.value : { missing: size.says }
}

const stackOf = (row: FastenerRow): Stack => row.stacks[usualStack(row)]

function bearingOf(subject: OfDesign, row: FastenerRow): Worked<'N'> | Missing {
  const hole = strengthHole(subject, row)
  if (typeof hole !== 'number') return hole
  const { edgeDistance } = subject.design.definition.rules
  if (edgeDistance < 1.5)
    return { missing: `No bearing strength is published for an edge distance under 1.5 D; rules edge distance is ${edgeDistance}.` }
  const stack = stackOf(row)
  let weakest: Worked<'N'> | null = null
  const unknown: string[] = []
  for (const [i, part] of stack.parts.entries()) {
    const material = materialOf(subject, row, part)
    const found = material === null ? null : findAlloy(material, stack.thickness[i])
    const strength = found?.ok ? (edgeDistance >= 2 ? found.row.Fbru20 : found.row.Fbru15) : null
    if (strength === null) {
      unknown.push(`${part}${material ? ` (${material})` : ''}`)
      continue
    }
    const here = bearing({ F_bru: strength.value, D_h: hole, t: stack.thickness[i] })
    if (weakest === null || here.value < weakest.value) weakest = here
  }
  if (weakest === null || unknown.length > 0)
    return { missing: `No bearing strength is published for ${unknown.join(' and ')}, so the weakest sheet of row ${row.id} is not known.` }
  return weakest
}

function materialOf({ design }: OfDesign, row: FastenerRow, part: string): string | null {
  const made = design.parts.find((p) => p.id === part)
  if (made) return made.material
  // the underbelly is a layer of its joint though its part is not derived yet
  const layer = design.joints.find((j) => j.id === row.joint)?.layers.find((l) => l.parts.includes(part))
  return layer?.material ?? null
}

/** The published tables are for three groups of alloys; another alloy has none. */
const GROUPS: readonly (readonly [RegExp, keyof typeof PER_INCH])[] = [
  [/^5052/, 'table 4-11'],
  [/^(2014-T6|2024-T3|7075-T6)/, 'table 4-9'],
  [/^(2017|clad 2024-T3|2024-T3 clad)/i, 'table 4-10'],
]

/** The sheet a row holds: an end has its own. */
function skinOf({ design }: OfDesign, row: FastenerRow): SheetMaterial {
  return row.end ? design.definition.ends.skin : design.definition.shell.skin
}

function perInch(subject: OfDesign, row: FastenerRow): Worked<'1/m'> | Missing {
  const skin = skinOf(subject, row)
  const hole = strengthHole(subject, row)
  if (typeof hole !== 'number') return hole
  const table = GROUPS.find(([pattern]) => pattern.test(skin.alloy))?.[1]
  if (!table) return { missing: `No table of fasteners a length is published for ${skin.alloy}.` }
  const { bearing: r_b, shear: r_s } = PER_INCH[table]
  return rivetsPerLength({ t: skin.thickness.value, D_h: hole, r_b, r_s })
}

function buckling(subject: OfDesign, row: FastenerRow): Worked<'Pa'> | Missing {
  const skin = skinOf(subject, row)
  const found = findAlloy(skin.alloy, skin.thickness.value)
  if (!found.ok) return { missing: found.says }
  const { Ec, Fcy } = found.row
  if (Fcy === null) return { missing: `No compressive yield is published for ${skin.alloy}.` }
  const s = Math.max(...row.spans.map((span) => span.pitch))
  return interRivetBuckling({ c: FIXITY, eta: 1, E_c: Ec.value, t: skin.thickness.value, s, F_cy: Fcy.value })
}
