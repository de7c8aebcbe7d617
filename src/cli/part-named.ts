/** A part of the design by its id, or a sentence with the ids near to it. */
import { nearIds } from '../checks/explain/near-ids.js'
import type { Design } from '../derive/design.js'
import type { Part } from '../derive/nouns.js'
import { refuse } from './refused.js'
import { list } from './say-numbers.js'

/** `option` is where it was asked for. Throws Refused. */
export function partNamed(made: Design, id: string, option: string): Part {
  const part = made.parts.find((each) => each.id === id)
  if (part) return part
  const punched = made.parts.filter((each) => each.patterns.some((p) => p.holes.x.length > 0)).map((each) => each.id)
  const near = nearIds(id, punched)
  const help = near.length ? `Near it: ${list(near)}.` : `Its sheets are ${list(punched.filter((p) => p.startsWith('strake-')))}.`
  throw refuse(option, `${made.definition.coach.name} has no part ${id}. ${help}`, { expected: 'the id of a part with holes', found: id })
}
