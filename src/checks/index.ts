/** The design: everything derived, and every check on it. */
import type { Definition } from '../definition/types.js'
import { revisionOf } from '../definition/revision.js'
import type { Design } from '../derive/design.js'
import { derive } from '../derive/index.js'
import { layoutChecks } from './layout/index.js'

export function design(definition: Definition): Design {
  const derived = derive(definition)
  const { shell: _, ...rest } = derived
  return Object.freeze({ ...rest, revision: revisionOf(definition), checks: layoutChecks(derived) })
}
