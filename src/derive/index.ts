/** The whole derivation, in the order it happens: the only file that knows which trade needs what. */
import type { Definition } from '../definition/types.js'
import { loftAt } from '../maths/loft.js'
import { chassisInputOf, deriveChassis, layOutMembers } from './chassis/index.js'
import type { Design } from './design.js'
import type { BarrelRow, Handed } from './ends/ground.js'
import { deriveEnds, type Ends } from './ends/index.js'
import { deriveFloor } from './floor/index.js'
import { deriveGear } from './gear/index.js'
import { FORGETFUL, type Memo } from './memo.js'
import type { FastenerRow, Part } from './nouns.js'
import { deriveShell, type Shell, type ShellInput } from './shell/index.js'
import { rimReach } from './shell/members.js'
import { totalsOf } from './shell/totals.js'
import type { UnderDerived } from './under-nouns.js'

/** Everything derived but the checks, and the trades' geometry for them to look at. */
export interface Derived extends Omit<Design, 'checks' | 'revision'> {
  readonly shell: Shell
  readonly endSections: Ends
}

/** With the memo of the last derivation, only what hangs on a changed piece of the definition is made anew. */
export function derive(definition: Definition, memo: Memo = FORGETFUL): Derived {
  memo.turn()
  const input: ShellInput = definition
  const shell = deriveShell(input, memo)
  const { section } = shell
  const handed = memo.keep('handed to the ends', [section, shell.laid.token], () => handedToEnds(shell))
  const ends = deriveEnds(definition, handed, memo, definition.ends.make === 'wrapped' ? rowsIntoEnds(shell, memo) : [])
  const under = underOf(definition, ends, handed.rimReach, memo)
  return Object.freeze({
    definition,
    section: { points: shell.points, halfGirth: section.toe, floorGirth: section.floor, width: section.width, residual: section.residual },
    ends: ends.facts,
    under: under.facts,
    parts: [...shell.parts, ...ends.parts, ...under.parts],
    rows: [...shell.rows, ...ends.rows],
    bolts: under.bolts,
    joints: [...shell.joints, ...ends.joints],
    openings: [...shell.openings, ...ends.openings],
    totals: totalsOf(definition, shell, ends, under.parts),
    notCovered: NOT_COVERED,
    shell,
    endSections: ends,
  })
}

interface Under {
  readonly facts: UnderDerived
  readonly parts: readonly Part[]
  readonly bolts: readonly FastenerRow[]
}

/** Axles, then where the chassis' members lie, then the floor that is bolted on them, then the members with those bolts' holes. */
function underOf(definition: Definition, ends: Ends, rimReach: number, memo: Memo): Under {
  const { gear, chassis, floor, frames, shell, rules, stock } = definition
  const { loft } = ends.local.ground
  return memo.keep('under', [gear, chassis, floor, frames, shell, definition.ends, rules, stock, loft, rimReach], () => {
    const foot = loft.section.length
    const toe = { reach: loftAt(loft, 0, foot).r, half: loftAt(loft, Math.PI / 2, foot).r, z: loft.foot, exponent: loft.exponent }
    const axles = deriveGear(definition, { toe, frameRoom: shell.frame.flange / 2 + rimReach })
    const input = chassisInputOf(definition, toe, axles)
    const members = input ? layOutMembers(input) : []
    const panel = deriveFloor(definition, members, axles?.boxes ?? [])
    const bolts = panel.rows.filter((row) => row.kind === 'bolt')
    const frame = input && deriveChassis(input, members, bolts, floor?.bolts?.hole ?? 0)
    return Object.freeze({
      facts: Object.freeze({ gear: axles, chassis: frame?.facts ?? null, floor: panel.facts }),
      parts: [...panel.parts, ...(frame?.parts ?? [])],
      bolts: panel.rows,
    })
  })
}

/** What the barrel settles before its ends are made. */
function handedToEnds({ section, laid }: Shell): Handed {
  return {
    chain: section.chain,
    toeRow: section.toeRow,
    sheetEdge: section.sheetEdge,
    rimReach: rimReach(laid.input),
  }
}

/** Rows of the barrel that run through a gore at the joint; those of openings' rims do not. */
function rowsIntoEnds({ resolved }: Shell, memo: Memo): BarrelRow[] {
  return resolved.flatMap((one) => {
    const met = one.through.filter(({ plate }) => plate.kind === 'gore')
    if (met.length === 0) return []
    return [
      memo.keep(`into the ends ${one.row.id}`, [one], () => ({ row: one.row, through: new Map(met.map((m) => [m.plate.part, m.index])) })),
    ]
  })
}

/** Said on every cover: what this version does not derive or check. */
const NOT_COVERED: readonly string[] = Object.freeze([
  'Headers, sills and posts round openings in the ends, and their inner trim.',
  'Weight and balance of the whole coach: only what is derived here is weighed.',
  'Structure: strength of the body, chassis and hold-downs. A qualified engineer must approve.',
  'Wiring, water, gas, heat and interior fittings.',
  'Legal requirements: lamps, glazing marks, ratings and labels.',
])
