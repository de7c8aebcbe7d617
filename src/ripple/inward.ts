/**
 * What lies deeper under the outer mould line than before. The mould line stays, so a thicker skin moves everything behind it in:
 * one cause with a hundred small effects, told once.
 */

import type { Definition } from '../definition/types.js'
import { liningDepth } from '../derive/common/lining-depth.js'
import { same } from '../quantity/same.js'
import type { Ripple } from './nouns.js'

/** Depth of each layer's outer face under the mould line, m. */
function depthsOf({ shell, ends }: Definition): Readonly<Record<string, number>> {
  const skin = shell.skin.thickness.value
  return {
    'hoop frames': skin,
    'joint frames': skin + ends.skin.thickness.value,
    lining: liningDepth({ shell }),
  }
}

export function inwardChanges(before: Definition, after: Definition): Ripple['inward'] {
  const [old, now] = [depthsOf(before), depthsOf(after)]
  return Object.entries(now).flatMap(([what, depth]) => (same(old[what], depth) ? [] : [{ what, by: depth - old[what] }]))
}
