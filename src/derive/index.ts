/** The whole derivation, in the order it happens: the only file that knows which trade needs what. */
import type { Definition } from '../definition/types.js'
import { loftAt } from '../maths/loft.js'
import { outAt } from '../maths/tangent-chain.js'
import { identical } from '../quantity/same.js'
import { chassisInputOf, deriveChassis, layOutMembers } from './chassis/index.js'
import type { Design } from './design.js'
import type { BarrelRow, EndInput, Handed } from './ends/ground.js'
import { deriveEnds, type Ends } from './ends/index.js'
import { deriveFloor } from './floor/index.js'
import { deriveGear } from './gear/index.js'
import { FORGETFUL, type Memo } from './memo.js'
import type { FastenerRow, Part, Totals } from './nouns.js'
import { deriveRide } from './ride/index.js'
import { deriveRoad } from './road/index.js'
import { isNotComputed, rideInput, roadInput, towingInput, wheelLoaded } from './road-input.js'
import type { RideDerived } from './road-nouns.js'
import { deriveShell, type Shell, type ShellInput } from './shell/index.js'
import { rimReach } from './shell/members.js'
import { totalsOf } from './shell/totals.js'
import { deriveTowing } from './towing/index.js'
import type { UnderDerived } from './under-nouns.js'
import { deriveWeight } from './weight/index.js'
import { twinsOf, type Weighable, weightInput } from './weight-input.js'

/** Everything derived but the checks, and the trades' geometry for them to look at. */
export interface Derived extends Omit<Design, 'checks' | 'revision'> {
  readonly shell: Shell
  readonly endSections: Ends
}

/** What a drag has no time for; nothing else hangs on it. Without the weight there is nothing to tow either. */
export type LeaveOut = 'nothing' | 'towing' | 'weight'

/** With the memo of the last derivation, only what hangs on a changed piece of the definition is made anew. */
export function derive(definition: Definition, memo: Memo = FORGETFUL, leaveOut: LeaveOut = 'nothing'): Derived {
  memo.turn()
  const { frames } = definition
  const input = forBody(definition, memo)
  const shell = memo.keep('shell', values(only(input, SHELL_READS)), () => deriveShell(only(input, SHELL_READS), memo))
  const { section } = shell
  const handed = memo.keep('handed to the ends', [section, shell.laid.token], () => handedToEnds(shell))
  const barrel = definition.ends.make === 'wrapped' ? memo.keep('into the ends', [shell], () => rowsIntoEnds(shell, memo)) : NONE
  const ends = memo.keep('ends', [...values(only(input, ENDS_READ)), handed, barrel], () =>
    deriveEnds(only(input, ENDS_READ), handed, memo, barrel),
  )
  const ride = rideOf(definition, memo)
  const under = underOf(definition, input, ends, handed.rimReach, isNotComputed(ride) ? null : ride, memo)
  const totals = memo.keep('totals', [definition.fasteners, frames, definition.ends, shell, ends, under], () =>
    totalsOf(definition, shell, ends, under.parts),
  )
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
    totals,
    ride,
    ...(leaveOut === 'weight'
      ? LEFT_OUT
      : onTheRoad(
          definition,
          totals,
          {
            twins: memo.keep('twins', [definition.weight, definition.openings, definition.fasteners, shell, ends, under], () =>
              twinsOf(definition, weighable(shell, ends, under), memo),
            ),
            tail: frames[frames.length - 1].station + ends.facts.reach,
            ride,
            withTowing: leaveOut === 'nothing',
          },
          memo,
        )),
    notCovered: NOT_COVERED,
    shell,
    endSections: ends,
  })
}

/** A trade is handed these and no more, so that what it is kept by is all it can have read. */
const SHELL_READS = [
  ...(['section', 'frames', 'shell', 'lining', 'fasteners', 'rows', 'rules', 'openings'] as const),
  ...(['gear', 'floor', 'ends', 'stock'] as const),
] satisfies readonly (keyof ShellInput)[]
const ENDS_READ = [
  ...(['section', 'shell', 'lining', 'ends', 'fasteners', 'rows', 'rules', 'openings', 'frames', 'floor', 'process'] as const),
] satisfies readonly (keyof EndInput)[]

function only<T, K extends keyof T>(all: T, keys: readonly K[]): Pick<T, K> {
  const some = {} as Pick<T, K>
  for (const key of keys) some[key] = all[key]
  return some
}

const values = (of: object): readonly unknown[] => Object.values(of)

const NONE: readonly BarrelRow[] = []

/** Springs come first of all: the arm's angle under load says where axle and ground stand. */
function rideOf(definition: Definition, memo: Memo): Design['ride'] {
  const { suspension, gear, weight } = definition
  return memo.keep('ride', [suspension, gear?.arm, gear?.spindles, weight], () => {
    const input = rideInput(definition)
    return isNotComputed(input) ? input : deriveRide(input)
  })
}

function weighable(shell: Shell, ends: Ends, under: Under): Weighable {
  const { chain } = shell.section
  const { chassis, floor } = under.facts
  return {
    parts: [...shell.parts, ...ends.parts, ...under.parts],
    bought: chassis?.bought ?? [],
    floor,
    openings: [...shell.openings, ...ends.openings],
    rows: [...shell.rows, ...ends.rows],
    yAt: (girth) => outAt(chain, girth),
  }
}

interface OnTheRoad {
  readonly twins: ReturnType<typeof twinsOf>
  readonly tail: number
  readonly ride: Design['ride']
  readonly withTowing: boolean
}

const WAITS = Object.freeze({ notComputed: 'This was left out while a thing was moved.' })
const LEFT_OUT: Pick<Design, 'weight' | 'towing' | 'road'> = Object.freeze({ weight: WAITS, towing: WAITS, road: WAITS })

/** Weight, towing and the rules of the road; none of them knows the shell. */
function onTheRoad(
  definition: Definition,
  totals: Totals,
  { twins, tail, ride, withTowing }: OnTheRoad,
  memo: Memo,
): Pick<Design, 'weight' | 'towing' | 'road'> {
  const { towing, gear, masses, suspension, coach, papers, weight, frames } = definition
  const { overallWidth, overallLength } = totals
  const weighed = memo.keep('weight', [weight, masses, gear, frames, suspension, towing?.extents, ride, tail, twins], () => {
    const input = weightInput(definition, twins, { tail, wheelRate: isNotComputed(ride) ? null : ride.rate.value })
    return isNotComputed(input) ? input : deriveWeight(input, memo)
  })
  return {
    weight: weighed,
    towing: withTowing
      ? memo.keep('towing', [towing, gear, masses, tail, weighed], () => {
          const input = towingInput(definition, tail, weighed)
          return isNotComputed(input) ? input : deriveTowing(input)
        })
      : WAITS,
    road: memo.keep('road', [coach, towing, suspension, gear, papers, weight, overallWidth, overallLength], () => {
      const input = roadInput(definition, totals)
      return isNotComputed(input) ? input : deriveRoad(input)
    }),
  }
}

/**
 * What barrel and ends read of floor and axles, and the same objects while that is unchanged: a drain moved in the floor, or
 * another tyre, makes no sheet of the body anew.
 */
function forBody(definition: Definition, memo: Memo): Definition & ShellInput {
  const { floor, gear } = definition
  return {
    ...definition,
    floor: memo.settle(
      'floor of the body',
      [floor],
      () => floor && { ...floor, panel: null, covering: null, bolts: null, screws: null, openings: [], cutter: null },
      identical,
    ),
    gear: memo.settle(
      'wheels of the body',
      [gear],
      () => gear && { ...gear, ground: null, tube: null, wheel: null, wheelBox: null },
      identical,
    ),
  }
}

interface Under {
  readonly facts: UnderDerived
  readonly parts: readonly Part[]
  readonly bolts: readonly FastenerRow[]
}

/** Axles, then where the chassis' members lie, then the floor that is bolted on them, then the members with those bolts' holes. */
function underOf(
  definition: Definition,
  body: Pick<Definition, 'floor'>,
  ends: Ends,
  rimReach: number,
  ride: RideDerived | null,
  memo: Memo,
): Under {
  const { gear, chassis, floor, frames, shell, rules, stock } = definition
  const { loft } = ends.local.ground
  const foot = loft.section.length
  const toe = memo.keep('toe', [loft], () => ({
    reach: loftAt(loft, 0, foot).r,
    half: loftAt(loft, Math.PI / 2, foot).r,
    z: loft.foot,
    exponent: loft.exponent,
  }))
  const axles = memo.keep('axles', [gear, chassis, body.floor, frames, rules, toe, shell.frame.flange, rimReach, ride], () =>
    deriveGear(definition, { toe, frameRoom: shell.frame.flange / 2 + rimReach, loaded: ride && wheelLoaded(ride) }),
  )
  const input = memo.keep('chassis input', [chassis, frames, body.floor, gear, shell, stock, toe, axles], () =>
    chassisInputOf(definition, toe, axles),
  )
  const members = memo.settle('members', [input], () => (input ? layOutMembers(input) : []), identical)
  const panel = memo.keep('floor', [floor, frames, definition.ends, stock, gear, chassis, members, axles], () =>
    deriveFloor(definition, members, axles?.boxes ?? [], memo),
  )
  // most of what is changed in a floor moves no bolt, and then no member is made anew
  const bolts = memo.settle('bolts', [panel], () => panel.rows.filter((row) => row.kind === 'bolt'), identical)
  const hole = floor?.bolts?.hole ?? 0
  const frame = memo.keep('chassis', [input, members, bolts, hole], () => input && deriveChassis(input, members, bolts, hole, memo))
  return memo.keep('under', [axles, panel, frame], () =>
    Object.freeze({
      facts: Object.freeze({ gear: axles, chassis: frame?.facts ?? null, floor: panel.facts }),
      parts: [...panel.parts, ...(frame?.parts ?? [])],
      bolts: panel.rows,
    }),
  )
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
  'How headers, sills and posts are joined to the frames and ribs they run to.',
  'Weight of what is neither derived nor in the list of masses.',
  'Structure: strength of the body, chassis and hold-downs. A qualified engineer must approve.',
  'Wiring, water, gas, heat and interior fittings.',
  'Legal requirements other than coupling, tyres, the schedule of lamps and the words of labels: glazing marks, gas, mains, fire.',
])
