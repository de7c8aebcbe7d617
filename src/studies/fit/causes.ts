/**
 * What puts a joint's holes out, cause by cause, and the chance that all meet when nothing is moved to help them: closed
 * forms, no trials. Errors are as in errors.ts; here each is held to its mean square.
 */
import type { FastenerType, ProcessDefinition } from '../../definition/types.js'
import { carriesOf, type Entry, entriesOf, partErrors } from './errors.js'
import type { FitModel } from './model.js'
import type { Cause, CauseSize } from './nouns.js'
import { largestShank } from './shank.js'
import { type Ground, type Square, squaresOf } from './squares.js'

/** Once in twenty coaches: how far the worst of K holes is put out by punching, in sigmas of one axis (Rayleigh, K alike and apart). */
const worstOf = (K: number): number => Math.sqrt(-2 * Math.log(1 - 0.95 ** (1 / K)))
/** The same for what moves a whole sheet at once: two standard deviations. */
const WHOLE = 2

export interface Expected {
  readonly causes: readonly CauseSize[]
  readonly noFit: number
}

export function expectedOf(model: FitModel, process: ProcessDefinition, fasteners: readonly FastenerType[]): Expected {
  const entries = entriesOf(model)
  const at: Ground = { errors: partErrors(model, process), carries: carriesOf(model), process }
  const pairs = pairsOf(model, entries)
  const worst: Record<Cause, number> = { punching: 0, warmth: 0, drift: 0, thickness: 0, jig: 0 }
  let noFit = 1
  for (const { body, other } of pairs) {
    const squares = squaresOf(body, other, at)
    let [x, y] = [0, 0]
    for (const [cause, [sx, sy]] of Object.entries(squares) as [Cause, Square][]) {
      worst[cause] = Math.max(worst[cause], sx + sy)
      x += sx
      y += sy
    }
    const type = fasteners[model.holes[body.hole].row]
    noFit *= chanceWithin(type.hole - largestShank(type), x, y)
  }
  const size = (cause: Cause): number =>
    cause === 'punching' ? worstOf(pairs.length) * Math.sqrt(worst.punching / 2) : WHOLE * Math.sqrt(worst[cause])
  const causes = (Object.keys(worst) as Cause[]).map((cause) => ({ cause, size: size(cause) })).filter((c) => c.size > 0)
  return { causes: causes.sort((a, b) => b.size - a.size), noFit }
}

/** Every hole once, the outermost of its bodies against each of its other layers. */
function pairsOf(model: FitModel, entries: readonly Entry[]): readonly { readonly body: Entry; readonly other: Entry }[] {
  const bodies = new Set(model.bodies)
  const out: { body: Entry; other: Entry }[] = []
  for (let from = 0; from < entries.length; ) {
    let to = from
    while (to < entries.length && entries[to].hole === entries[from].hole) to++
    const layers = entries.slice(from, to)
    const body = layers.find((e) => bodies.has(e.part))
    if (body) out.push(...layers.filter((e) => e !== body).map((other) => ({ body, other })))
    from = to
  }
  return out
}

/** Points of the quadrature over a quarter turn; the integrand is smooth and periodic, so few are exact. */
const POINTS = 64

/**
 * Chance that a distance with normal x and y of these mean squares stays within c. Round, it is 1 - exp(-c²/2v) (Rayleigh);
 * else the mean of the same over the angle of an ellipse, with v = vx cos² + vy sin²: polar coordinates stretched by the scatter.
 */
export function chanceWithin(c: number, vx: number, vy: number): number {
  if (c <= 0) return 0
  if (vx === 0 && vy === 0) return 1
  if (vx === vy) return -Math.expm1(-(c * c) / (2 * vx))
  let sum = 0
  for (let i = 0; i < POINTS; i++) {
    const angle = ((i + 0.5) / POINTS) * (Math.PI / 2)
    sum -= Math.expm1(-(c * c) / (2 * (vx * Math.cos(angle) ** 2 + vy * Math.sin(angle) ** 2)))
  }
  return sum / POINTS
}
