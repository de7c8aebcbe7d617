/** Where in the text a figure is written, so that whoever asks why can go there; nothing where the text says another figure. */
import type { WrittenAt } from '../checks/explain/given-nouns.js'
import { pathOf, type Step } from '../definition/set-in-text.js'
import { label, nodeAt, type Written } from '../definition/written.js'
import { valueWritten } from '../definition/written-value.js'
import type { FieldShown } from './nouns.js'

/** The last bits of two roads to one number. */
const HAIR = 1e-9

/** The first of them that is written and says the figure; null where none does. */
export function fieldOf(merged: Written, written: readonly WrittenAt[], value: number, unit: string): FieldShown | null {
  for (const { steps, times = 1, unit: own = unit } of written) {
    const shown = fieldAt(merged, steps)
    const path = pathOf(merged, steps)
    const says = path && valueWritten(nodeAt(merged, path), own)
    if (shown && typeof says === 'number' && Math.abs(says * times - value) <= HAIR * Math.max(1, Math.abs(value))) return shown
  }
  return null
}

/** Null where it is not written. */
export function fieldAt(merged: Written, steps: readonly Step[]): FieldShown | null {
  const path = pathOf(merged, steps)
  const node = path && nodeAt(merged, path)
  if (!path || !node) return null
  const { file, line, column } = node.at
  const length = node.kind === 'scalar' ? node.text.length : 0
  return { file, line, column, length, says: label(merged, path), thing: thingAt(steps) }
}

/** The id the elevation knows it by. */
function thingAt(steps: readonly Step[]): string | null {
  const [group, second, third] = steps
  if (group === 'gear' && second === 'spindles' && typeof third === 'number') return `axle-${third + 1}`
  if ((group === 'openings' || group === 'frames') && typeof second === 'object' && 'id' in second) return second.id
  return null
}
