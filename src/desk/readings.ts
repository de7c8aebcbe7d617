/** Texts of one coach and what each said when it was read: undo and redo come back to those that were read before. */
import { type ReadDefinition, readDefinition } from '../definition/read-definition.js'
import { shareUnchanged } from '../definition/share-unchanged.js'
import type { Definition } from '../definition/types.js'
import type { CoachFiles } from './desk-coach-nouns.js'
import { keptParse } from './kept-parse.js'

/** What a text said when it was read. */
export type Reading = Pick<ReadDefinition, 'definition' | 'faults' | 'merged'>

/** So many steps back are taken without reading. */
const READINGS = 64

/** `read` shares with `before`, the last definition that was read, whatever the text has not changed. */
export interface Readings {
  readonly read: (text: string, before: Definition | null) => Reading
}

export function createReadings({ path, files }: CoachFiles): Readings {
  const parse = keptParse()
  const kept = new Map<string, Reading>()
  const keep = (text: string, reading: Reading): Reading => {
    kept.set(text, reading)
    const [oldest] = kept.keys()
    if (kept.size > READINGS && oldest !== undefined) kept.delete(oldest)
    return reading
  }
  return {
    read: (text, before) => {
      const known = kept.get(text)
      if (known) return known
      const { definition, faults, merged } = readDefinition(path, text, (other) => files[other] ?? null, parse)
      // what does not read is not kept: somebody is in the middle of a word
      if (!definition) return { definition, faults, merged }
      return keep(text, { definition: before ? shareUnchanged(before, definition) : definition, faults, merged })
    },
  }
}
