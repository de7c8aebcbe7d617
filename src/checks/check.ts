/** Making a check: a sentence with its numbers. Distances compare what is there with what is needed. */
import type { Check, Place, Verdict } from '../derive/nouns.js'
import type { Worked } from '../quantity/formula.js'

/** Lengths within a nanometre of a limit are on it: the last bits of two roads to one number. */
export const HAIR = 1e-9

/** Millimetres with one decimal where it matters, for sentences. */
export function mm(metres: number): string {
  // a hair under a half is a half: a distance that meets its limit must read as the limit does
  const v = Math.round((metres + Math.sign(metres) * HAIR) * 1e4) / 10
  return Number.isInteger(v) ? v.toFixed(0) : v.toFixed(1)
}

interface Told {
  readonly id: string
  readonly says: string
  readonly source: string
  readonly places?: readonly Place[]
  readonly concerns?: readonly string[]
  readonly mend?: string | null
  readonly worked?: readonly Worked[]
}

/** A distance that must be at least so much: demand is what is required, capacity what is there. m. */
export function distanceCheck(told: Told, required: number, available: number, failing: Verdict = 'fail'): Check {
  const margin = required > 0 ? available / required - 1 : null
  return finish(told, required, available, 'm', margin, available >= required - HAIR ? 'pass' : failing)
}

/** A quantity that must not exceed a capacity. */
export function capacityCheck(told: Told, demand: number, capacity: number, unit: string, failing: Verdict = 'fail'): Check {
  const margin = demand > 0 ? capacity / demand - 1 : null
  return finish(told, demand, capacity, unit, margin, demand <= capacity + HAIR ? 'pass' : failing)
}

/** Something found or not, with nothing to measure. */
export function finding(told: Told, verdict: Verdict): Check {
  return finish(told, null, null, null, null, verdict)
}

function finish(
  told: Told,
  demand: number | null,
  capacity: number | null,
  unit: string | null,
  margin: number | null,
  verdict: Verdict,
): Check {
  return Object.freeze({
    id: told.id,
    says: told.says,
    demand,
    capacity,
    unit,
    margin,
    verdict,
    source: told.source,
    places: told.places ?? [],
    concerns: told.concerns ?? [],
    mend: told.mend ?? null,
    worked: told.worked ?? [],
  })
}
