/** The change note between two states of a coach, as it is shown and printed at the desk. */
import type { PrintOptions } from '../documents/drawing/sheet.js'
import { pageToSvg } from '../documents/svg.js'
import { changeNote } from '../ripple/change-note.js'
import type { SideId } from './nouns.js'
import type { Revisions } from './revisions.js'

/** A page each, in millimetres; a sentence where one of the two does not read. */
export function notePages(
  revisions: Revisions,
  from: SideId,
  to: SideId,
  options: PrintOptions & { readonly units: 'metric' | 'inch' },
): readonly string[] | string {
  const ripple = revisions.ripple(from, to, options.units)
  const after = revisions.standing(to)
  if (typeof ripple === 'string') return ripple
  if (typeof after === 'string') return after
  const names = { before: revisions.nameOf(from), after: revisions.nameOf(to) }
  return changeNote(ripple, after.design, names, options).map(pageToSvg)
}
