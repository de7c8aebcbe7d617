/**
 * The ripple of a change: everything that differs between two derived designs, as plain data.
 * Nothing is derived or drawn here; what is the very same object in both is passed over at once.
 */
import type { Design } from '../derive/design.js'
import { countChanges, massChanges, overallChanges } from './counts.js'
import { both } from './differ.js'
import { documentChanges, type RippleOptions } from './documents.js'
import { checkChanges } from './findings.js'
import { inwardChanges } from './inward.js'
import { jointChanges } from './joints.js'
import { loadChanges } from './loads.js'
import type { Ripple } from './nouns.js'
import { openingChanges } from './openings.js'
import { partChanges } from './parts.js'
import { writtenChanges } from './written.js'

/** One object, so that what is worked out for it can be kept. */
const PLAIN: RippleOptions = Object.freeze({})

/** `options` say which packet is in the shop, where it is not the plain one. */
export function compare(before: Design, after: Design, options: RippleOptions = PLAIN): Ripple {
  const head = ({ definition: { coach }, revision }: Design) => ({ name: coach.name, revision, market: coach.market })
  return Object.freeze({
    coach: both(head(before), head(after)),
    equal: before.revision === after.revision,
    written: writtenChanges(before.definition, after.definition),
    checks: checkChanges(before.checks, after.checks),
    openings: openingChanges(before.openings, after.openings),
    parts: partChanges(before, after),
    joints: jointChanges(before, after),
    counts: countChanges(before, after),
    masses: massChanges(before, after),
    loads: loadChanges(before, after),
    overall: overallChanges(before, after),
    inward: inwardChanges(before.definition, after.definition),
    documents: documentChanges(before, after, options),
  })
}
