/**
 * A faultless reading to the normal form: side letters settled by the market, frames and seams in order along the coach,
 * fasteners by id (they are written as keys, whose order means nothing), everything frozen.
 */
import type { SURFACES, WholeDraft } from './definition-form.js'
import { SCHEMA } from './load-files.js'
import { sideOfLetter } from './sides.js'
import type { Definition, Market, Surface } from './types.js'

function surfaceOf(written: (typeof SURFACES)[number], market: Market): Surface {
  if (written === 'C' || written === 'curb') return sideOfLetter('C', market)
  if (written === 'R' || written === 'road') return sideOfLetter('R', market)
  return written
}

export function normalForm(draft: WholeDraft): Definition {
  const definition: Definition = {
    schema: SCHEMA,
    ...draft,
    frames: byStation(draft.frames),
    shell: { ...draft.shell, seams: byGirth(draft.shell.seams) },
    lining: { ...draft.lining, seams: byGirth(draft.lining.seams) },
    fasteners: [...draft.fasteners].sort((a, b) => (a.id < b.id ? -1 : 1)),
    openings: draft.openings.map((o) => ({ ...o, surface: surfaceOf(o.surface, draft.coach.market) })),
  }
  return freeze(definition)
}

/** As frames and seams stand in the normal form, whoever changes one. */
export const byStation = <T extends { readonly station: number }>(frames: readonly T[]): readonly T[] =>
  [...frames].sort((a, b) => a.station - b.station)
export const byGirth = <T extends { readonly girth: number }>(seams: readonly T[]): readonly T[] =>
  [...seams].sort((a, b) => a.girth - b.girth)

export function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const below of Object.values(value)) freeze(below)
  }
  return value
}
