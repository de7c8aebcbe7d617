/** The design: everything derived, and every check on it. */

import { revisionOf } from '../definition/revision.js'
import type { Definition } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import { type Derived, derive } from '../derive/index.js'
import { FORGETFUL, type Memo } from '../derive/memo.js'
import type { Check } from '../derive/nouns.js'
import { chassisChecks } from './chassis/index.js'
import { endChecks } from './ends/index.js'
import { floorChecks } from './floor/index.js'
import { layoutChecks } from './layout/index.js'
import { roadChecks } from './road/index.js'
import { weightChecks } from './weight/index.js'

/** With the memo of the last design, only what hangs on a changed piece of the definition is made and checked anew. */
export function design(definition: Definition, memo: Memo = FORGETFUL): Design {
  const derived = derive(definition, memo)
  const { shell: _, endSections: __, ...rest } = derived
  return Object.freeze({
    ...rest,
    revision: revisionOf(definition),
    checks: [...layoutChecks(derived), ...endChecks(derived), ...underChecks(derived), ...weightChecks(derived), ...roadChecks(derived)],
  })
}

function underChecks(derived: Derived): readonly Check[] {
  const { memo } = derived.shell.laid
  const { definition, under, shell } = derived
  return memo.keep(
    'under checks',
    [under, derived.bolts, definition.floor, definition.gear, definition.chassis, definition.frames, shell.section],
    () => [...floorChecks(derived), ...chassisChecks(derived)],
  )
}
