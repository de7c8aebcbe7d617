/**
 * How far a hole lies from where it was drawn, in one layer at assembly, and what causes it:
 *
 *   x: punch + (growth + drift) X + shift          y: punch + (growth + drift) Y + shift - turn × depth
 *
 * X and Y are the hole's place from the middle of its part's holes. A member on a jig is shifted by the jig's error; a sheet
 * goes where the members under it went, on the mean of the holes they share, and a loose member where the sheets went, since
 * that is how a crew lays one on the other. A part grows by cte × (assembly - punching); along a jig, and across what it holds, the jig's steel grows instead, by its own cte
 * from 20 °C where it was set. Drift runs along a part's length. A sheet thicker than drawn puts the middle of all over it
 * farther out, so on a curve they need more girth: the turn since the middle times the depth (theta × (t1 + t2) / 2 for two).
 * Growth, drift, thickness and the jig are drawn once a part and a coach, punching for every hole.
 */
import type { ProcessDefinition } from '../../definition/types.js'
import { JIG_STEEL_CTE } from '../../tables/jig-steel.js'
import type { FitModel, FitPart } from './model.js'
import { once } from './once.js'

/** Where a jig was measured and patterns were developed; the reference temperature of lengths, ISO 1. */
export const REFERENCE_C = 20
/** A stated ± is three sigma. */
const STATED = 3

/** Standard deviations and ranges of a part's errors, SI; a range is drawn evenly. */
export interface PartErrors {
  readonly punch: number
  readonly drift: number
  readonly thickness: number
  readonly jig: number
  readonly cte: number
  /** whether the jig, and not the part itself, sets the scale of x, of y */
  readonly jigX: boolean
  readonly jigY: boolean
  readonly along: 'x' | 'y'
}

export function partErrors(model: FitModel, process: ProcessDefinition): readonly PartErrors[] {
  return model.parts.map((part) => {
    const held = isHeld(part)
    const sigma = part.held === 'end jig' ? process.endJigSigma : process.sideJigSigma
    return {
      punch: process.punchSigma,
      drift: process.drift / STATED,
      // sections are drawn or bent to their outer faces, which is where the sheet lies
      thickness: held ? 0 : process.thickness / STATED,
      jig: held ? sigma : 0,
      cte: part.cte,
      jigX: held && part.along === 'y',
      jigY: held && part.along === 'x',
      along: part.along,
    }
  })
}

const isHeld = ({ held }: FitPart): boolean => held === 'side jig' || held === 'end jig'

/** One layer of one hole. */
export interface Entry {
  readonly hole: number
  readonly part: number
  /** place from the middle of the part's holes, m, and turn from its mean, rad */
  readonly X: number
  readonly Y: number
  readonly turn: number
  /** parts of the stack from this one inward, whose thickness lies under this layer's middle */
  readonly under: readonly number[]
}

/** Entries of all layers of all holes, those of a hole together and outside to inside. */
export const entriesOf = once((model: FitModel): readonly Entry[] => {
  const middle = model.parts.map((_, p) => {
    const mine = model.holes.filter((h) => h.layers.includes(p))
    const mean = (of: (h: (typeof mine)[number]) => number): number => mine.reduce((sum, h) => sum + of(h), 0) / mine.length
    return { x: mean((h) => h.x), y: mean((h) => h.y), turn: mean((h) => h.turn) }
  })
  const whole = {
    x: model.holes.reduce((sum, h) => sum + h.x, 0) / model.holes.length,
    y: model.holes.reduce((sum, h) => sum + h.y, 0) / model.holes.length,
  }
  return model.holes.flatMap((h, hole) =>
    h.layers.map((part, l): Entry => {
      const held = isHeld(model.parts[part])
      const across = model.parts[part].along === 'y'
      return {
        hole,
        part,
        X: h.x - (held && across ? whole.x : middle[part].x),
        Y: h.y - (held && !across ? whole.y : middle[part].y),
        turn: h.turn - middle[part].turn,
        under: h.layers.slice(l + 1),
      }
    }),
  )
})

/** How far out the middle of a layer lies from where it was drawn, its part and those under it thicker by `thicker`. m */
export function depthOf(thicker: ArrayLike<number>, part: number, under: readonly number[]): number {
  let sum = thicker[part] / 2
  for (const p of under) sum += thicker[p]
  return sum
}

/** How much longer each metre becomes: the part's own growth, or the jig's. */
export const growth = (cte: number, assemblyC: number, punchC: number): number => cte * (assemblyC - punchC)
export const jigGrowth = (assemblyC: number): number => JIG_STEEL_CTE.value * (assemblyC - REFERENCE_C)

/** A part goes with another: with this share of where the other is at a place (X, Y) of its own. */
export interface Carry {
  readonly part: number
  readonly on: number
  readonly share: number
  readonly X: number
  readonly Y: number
}

/** Sheets on the members of a jig first, then loose members on the sheets that are placed: in the order to be worked out. */
export const carriesOf = once((model: FitModel): readonly Carry[] => {
  const entries = entriesOf(model)
  const bodies = new Set(model.bodies)
  const isSheet = (p: number): boolean => model.parts[p].held === 'sheet'
  const isLoose = (p: number): boolean => model.parts[p].held === 'loose' && !bodies.has(p)
  const onJig = carried(entries, isSheet, (p) => isHeld(model.parts[p]))
  return [...onJig, ...carried(entries, isLoose, (p) => bodies.has(p) && isSheet(p))]
})

function carried(entries: readonly Entry[], what: (part: number) => boolean, by: (part: number) => boolean): readonly Carry[] {
  const pairs = new Map<string, { part: number; on: number; n: number; X: number; Y: number }>()
  const all = new Map<number, number>()
  for (let from = 0, to = 0; from < entries.length; from = to) {
    while (to < entries.length && entries[to].hole === entries[from].hole) to++
    const layers = entries.slice(from, to)
    for (const a of layers.filter((e) => what(e.part))) {
      for (const b of layers.filter((e) => by(e.part))) {
        const key = `${a.part} ${b.part}`
        const pair = pairs.get(key) ?? { part: a.part, on: b.part, n: 0, X: 0, Y: 0 }
        pairs.set(key, { ...pair, n: pair.n + 1, X: pair.X + b.X, Y: pair.Y + b.Y })
        all.set(a.part, (all.get(a.part) ?? 0) + 1)
      }
    }
  }
  return [...pairs.values()].map(({ part, on, n, X, Y }) => ({ part, on, share: n / (all.get(part) ?? n), X: X / n, Y: Y / n }))
}
