/**
 * What puts a joint's holes out, cause by cause, and the chance that all meet when nothing is moved to help them: closed
 * forms, no trials. Errors are as in errors.ts; here each is held to its mean square.
 */
import type { FastenerType, ProcessDefinition } from '../../definition/types.js'
import { JIG_STEEL_CTE } from '../../tables/jig-steel.js'
import { type Carry, carriesOf, type Entry, entriesOf, type PartErrors, partErrors, REFERENCE_C } from './errors.js'
import type { FitModel } from './model.js'
import type { Cause, CauseSize } from './nouns.js'
import { largestShank } from './shank.js'

/** Mean square of the distance between two layers' holes along x and along y, m2. */
type Square = readonly [x: number, y: number]
type Squares = Readonly<Record<Cause, Square>>

/** Once in twenty coaches: how far the worst of K holes is put out by punching, in sigmas of one axis (Rayleigh, K alike and apart). */
const worstOf = (K: number): number => Math.sqrt(-2 * Math.log(1 - 0.95 ** (1 / K)))
/** The same for what moves a whole sheet at once: two standard deviations. */
const WHOLE = 2

/** What every pair is judged with. */
interface Ground {
  readonly errors: readonly PartErrors[]
  readonly carries: readonly Carry[]
  readonly process: ProcessDefinition
}

export interface Expected {
  readonly causes: readonly CauseSize[]
  readonly noFit: number
}

export function expectedOf(model: FitModel, process: ProcessDefinition, fasteners: readonly FastenerType[]): Expected {
  const entries = entriesOf(model)
  const at: Ground = { errors: partErrors(model, process), carries: carriesOf(model, entries), process }
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

/**
 * A displacement as a sum of independent things, each times a factor: "punch 17", "jig 3" … A temperature's factor is in m/K;
 * the mean of all of them together is kept under "mean".
 */
type Form = Map<string, number>

function squaresOf(a: Entry, b: Entry, at: Ground): Squares {
  const axis = (which: 'x' | 'y'): Readonly<Record<Cause, number>> => {
    const form: Form = new Map()
    addEntry(form, a, which, 1, at)
    addEntry(form, b, which, -1, at)
    const out = { punching: 0, warmth: (form.get('mean') ?? 0) ** 2, drift: 0, thickness: 0, jig: 0 }
    for (const [name, factor] of form) {
      const cause = CAUSE_OF[name.split(' ')[0]]
      if (cause) out[cause] += factor * factor * variance(name, at)
    }
    return out
  }
  const [x, y] = [axis('x'), axis('y')]
  const both = (cause: Cause): Square => [x[cause], y[cause]]
  return {
    punching: both('punching'),
    warmth: both('warmth'),
    drift: both('drift'),
    thickness: both('thickness'),
    jig: both('jig'),
  }
}

const CAUSE_OF: Readonly<Record<string, Cause>> = {
  punch: 'punching',
  assembly: 'warmth',
  sheet: 'warmth',
  drift: 'drift',
  thick: 'thickness',
  jig: 'jig',
}

function variance(name: string, { errors, process }: Ground): number {
  const [what, which] = name.split(' ')
  const part = errors[Number(which)]
  // of an even spread
  const even = ([from, to]: readonly [number, number]): number => (to - from) ** 2 / 12
  if (what === 'assembly') return even(process.jigTempC)
  if (what === 'sheet') return even(process.sheetTempC)
  if (what === 'punch') return part.punch ** 2
  if (what === 'drift') return part.drift ** 2
  return what === 'thick' ? part.thickness ** 2 : part.jig ** 2
}

function addEntry(form: Form, e: Entry, axis: 'x' | 'y', sign: number, at: Ground): void {
  // two layers of one part's kind are punched apart, so the sign of a punch does not matter and its name must differ
  add(form, `punch ${e.part} ${sign}`, sign)
  addPlaced(form, e.part, axis, axis === 'x' ? e.X : e.Y, sign, at)
  if (axis === 'x') return
  add(form, `thick ${e.part}`, (-sign * e.turn) / 2)
  for (const p of e.under) add(form, `thick ${p}`, -sign * e.turn)
}

/** Growth, drift and shift of a part at a place of its own, and with it of what it is carried on. */
function addPlaced(form: Form, part: number, axis: 'x' | 'y', place: number, factor: number, at: Ground): void {
  const e = at.errors[part]
  const { jigTempC, sheetTempC } = at.process
  const middle = ([from, to]: readonly [number, number]): number => (from + to) / 2
  if (axis === 'x' ? e.jigX : e.jigY) {
    add(form, 'assembly', factor * JIG_STEEL_CTE.value * place)
    add(form, 'mean', factor * JIG_STEEL_CTE.value * place * (middle(jigTempC) - REFERENCE_C))
  } else {
    add(form, 'assembly', factor * e.cte * place)
    add(form, `sheet ${part}`, -factor * e.cte * place)
    add(form, 'mean', factor * e.cte * place * (middle(jigTempC) - middle(sheetTempC)))
    if (e.along === axis) add(form, `drift ${part}`, factor * place)
  }
  add(form, `jig ${part}`, factor)
  for (const c of at.carries) if (c.part === part) addPlaced(form, c.on, axis, axis === 'x' ? c.X : c.Y, factor * c.share, at)
}

function add(form: Form, name: string, by: number): void {
  form.set(name, (form.get(name) ?? 0) + by)
}

/** Points of the quadrature round a quarter turn; the integrand is smooth and periodic, so few are exact. */
const POINTS = 64

/**
 * Chance that a distance with normal x and y of these mean squares stays within c. Round, it is 1 - exp(-c²/2v) (Rayleigh);
 * else the same integrated round the circle: mean over the angle of (1 - exp(-c² A/2)) / (A sx sy), A = cos²/vx + sin²/vy.
 */
export function chanceWithin(c: number, vx: number, vy: number): number {
  if (c <= 0) return 0
  if (vx === 0 && vy === 0) return 1
  if (vx === vy) return -Math.expm1(-(c * c) / (2 * vx))
  let sum = 0
  for (let i = 0; i < POINTS; i++) {
    const angle = ((i + 0.5) / POINTS) * (Math.PI / 2)
    const A = Math.cos(angle) ** 2 / vx + Math.sin(angle) ** 2 / vy
    sum += -Math.expm1((-c * c * A) / 2) / A
  }
  return sum / (POINTS * Math.sqrt(vx * vy))
}
