/** The whole derivation, in the order it happens: the only file that knows which trade needs what. */
import type { Definition } from '../definition/types.js'
import { at } from '../maths/tangent-chain.js'
import type { Design } from './design.js'
import type { BarrelRow, Handed } from './ends/ground.js'
import { deriveEnds, type Ends } from './ends/index.js'
import { FORGETFUL, type Memo } from './memo.js'
import type { Totals } from './nouns.js'
import { deriveRide } from './ride/index.js'
import { deriveRoad } from './road/index.js'
import { isNotComputed, rideInput, roadInput, towingInput } from './road-input.js'
import { deriveShell, type Shell, type ShellInput } from './shell/index.js'
import { rimReach } from './shell/members.js'
import { totalsOf } from './shell/totals.js'
import { deriveTowing } from './towing/index.js'
import { deriveWeight } from './weight/index.js'
import { twinsOf, type Weighable, weightInput } from './weight-input.js'

/** Everything derived but the checks, and the trades' geometry for them to look at. */
export interface Derived extends Omit<Design, 'checks' | 'revision'> {
  readonly shell: Shell
  readonly endSections: Ends
}

/** With the memo of the last derivation, only what hangs on a changed piece of the definition is made anew. */
export function derive(definition: Definition, memo: Memo = FORGETFUL): Derived {
  memo.turn()
  const { frames } = definition
  const input: ShellInput = definition
  const shell = deriveShell(input, memo)
  const { section } = shell
  const handed = memo.keep('handed to the ends', [section, shell.laid.token], () => handedToEnds(shell))
  const ends = deriveEnds(definition, handed, memo, definition.ends.make === 'wrapped' ? rowsIntoEnds(shell, memo) : [])
  const totals = totalsOf(definition, shell, ends)
  return Object.freeze({
    definition,
    section: { points: shell.points, halfGirth: section.toe, floorGirth: section.floor, width: section.width, residual: section.residual },
    ends: ends.facts,
    parts: [...shell.parts, ...ends.parts],
    rows: [...shell.rows, ...ends.rows],
    joints: [...shell.joints, ...ends.joints],
    openings: [...shell.openings, ...ends.openings],
    totals,
    ...onTheRoad(definition, totals, weighable(shell, ends), frames[frames.length - 1].station + ends.facts.reach, memo),
    notCovered: NOT_COVERED,
    shell,
    endSections: ends,
  })
}

function weighable(shell: Shell, ends: Ends): Weighable {
  const { chain } = shell.section
  return {
    parts: [...shell.parts, ...ends.parts],
    openings: [...shell.openings, ...ends.openings],
    rows: [...shell.rows, ...ends.rows],
    yAt: (girth) => at(chain, girth).y,
  }
}

/** Weight, towing, ride and the rules of the road; none of them knows the shell. */
function onTheRoad(
  definition: Definition,
  totals: Totals,
  made: Weighable,
  tail: number,
  memo: Memo,
): Pick<Design, 'weight' | 'towing' | 'ride' | 'road'> {
  const { towing, gear, masses, suspension, coach, papers, weight, frames } = definition
  const { overallWidth, overallLength } = totals
  const ride = memo.keep('ride', [suspension, gear, weight], () => {
    const input = rideInput(definition)
    return isNotComputed(input) ? input : deriveRide(input)
  })
  const twins = twinsOf(definition, made, memo)
  const weighed = memo.keep('weight', [weight, masses, gear, frames, suspension, towing?.extents, ride, tail, ...twins], () => {
    const input = weightInput(definition, twins, { tail, wheelRate: isNotComputed(ride) ? null : ride.rate.value })
    return isNotComputed(input) ? input : deriveWeight(input)
  })
  return {
    weight: weighed,
    towing: memo.keep('towing', [towing, gear, masses, tail, weighed], () => {
      const input = towingInput(definition, tail, weighed)
      return isNotComputed(input) ? input : deriveTowing(input)
    }),
    ride,
    road: memo.keep('road', [coach, towing, suspension, gear, papers, weight, overallWidth, overallLength], () => {
      const input = roadInput(definition, totals)
      return isNotComputed(input) ? input : deriveRoad(input)
    }),
  }
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
  'Weight of what is neither derived nor in the list of masses.',
  'Structure: strength of the body, chassis and hold-downs. A qualified engineer must approve.',
  'Wiring, water, gas, heat and interior fittings.',
  'Legal requirements other than coupling, tyres, the schedule of lamps and the words of labels: glazing marks, gas, mains, fire.',
])
