/**
 * The rules of the road: lamps and reflectors, coupling and chains, tyres, labels and the vehicle number, for the market.
 *
 * The tables hold the rules of the United States only; in another market nothing is applied and the reason is said. The law
 * in force governs, and the duty to certify is the manufacturer's.
 */
import type { PapersDefinition } from '../../definition/road-types.js'
import type { Bought, Market } from '../../definition/types.js'
import { BREAKAWAY_ABOVE, couplingClass, dValue, hitchTests } from '../../tables/couplings.js'
import { loadRuleOf } from '../../tables/labels.js'
import { lampSchedule } from '../../tables/lamps.js'
import { axleOf, findTyre, tyreDiameter } from '../../tables/tyres.js'
import type { RoadDerived } from '../road-nouns.js'
import { labelsOf } from './labels.js'

export interface RoadInput {
  readonly market: Market
  readonly maker: string
  /** over all, coupler face to tip, m */
  readonly width: number
  readonly length: number
  /** WL of the ground at curb weight */
  readonly ground: number
  /** kg */
  readonly gross: number
  readonly axleRatings: readonly number[]
  /** hitch load at gross weight that the coach is designed for, kg */
  readonly hitch: number
  readonly coupler: { readonly ball: Bought; readonly rated: number }
  readonly chain: number
  readonly cars: readonly { readonly says: string; readonly mass: number }[]
  readonly tyre: string
  readonly papers: PapersDefinition | null
  /** litres of fresh water it holds; null where no tank is written */
  readonly water: number | null
}

const TYRES_AN_AXLE = 2

export function deriveRoad(input: RoadInput): RoadDerived {
  const { market, width, length, ground, gross, axleRatings, coupler, cars } = input
  const named = findTyre(input.tyre)
  if (!named.ok) throw new Error(named.says)
  const tyre = named.row
  const tyresCarry = axleOf(tyre, TYRES_AN_AXLE)
  const applies = market === 'us'
  const level = (height: number | null): number | null => (height === null ? null : height + ground)
  const notApplied = applies
    ? null
    : `The tables hold the rules of the United States; those of the market ${market} are not in them, and nothing was applied.`
  return Object.freeze({
    notApplied,
    lamps: applies
      ? lampSchedule({ width, length, gross }).map((row) => ({ ...row, waterlines: [level(row.least), level(row.greatest)] as const }))
      : [],
    width,
    length,
    gross,
    axleRatings,
    coupling: {
      class: applies ? couplingClass(gross) : null,
      ball: coupler.ball.name,
      rated: coupler.rated,
      chain: input.chain,
      tests: applies ? hitchTests(gross) : [],
      breakaway: gross > BREAKAWAY_ABOVE,
      dValues: cars.map(({ says, mass }) => ({ car: says, mass, d: dValue(mass, gross) })),
    },
    tyre,
    tyreDiameter: tyreDiameter(tyre),
    tyresCarry,
    loadRule: loadRuleOf(gross),
    labels: labelsOf(input, tyre, tyresCarry, notApplied),
  })
}
