/** How far two layers' holes lie apart in the mean square, cause by cause: the errors of errors.ts added up without drawing any. */
import type { ProcessDefinition } from '../../definition/types.js'
import { JIG_STEEL_CTE } from '../../tables/jig-steel.js'
import { type Carry, type Entry, type PartErrors, REFERENCE_C } from './errors.js'
import type { Cause } from './nouns.js'

/** Mean square of the distance between two layers' holes along x and along y, m2. */
export type Square = readonly [x: number, y: number]
type Squares = Readonly<Record<Cause, Square>>

/** What every pair is judged with. */
export interface Ground {
  readonly errors: readonly PartErrors[]
  readonly carries: readonly Carry[]
  readonly process: ProcessDefinition
}

/**
 * A displacement as a sum of independent things, each times a factor: "punch 17", "jig 3" … A temperature's factor is in m/K;
 * the mean of all of them together is kept under "mean".
 */
type Form = Map<string, number>

/** Of the difference of two layers of one hole. */
export function squaresOf(a: Entry, b: Entry, at: Ground): Squares {
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
