/**
 * The door of the written form: text in, a frozen Definition or every fault at once out.
 *
 * Covers reading, merging and what can be told to be impossible from the definition alone. Does not cover
 * whether a possible coach is a good one: that is for the checks.
 */
import { definitionForm, type WholeDraft } from './definition-form.js'
import { sortFaults, startReading } from './faults.js'
import { type Load, loadFiles, type Parse, type Source } from './load-files.js'
import { meaningFaults } from './meaning.js'
import { normalForm } from './normal-form.js'
import type { Definition, Fault } from './types.js'
import type { Written } from './written.js'
import { fillFromElsewhere } from './written-once.js'

export interface ReadDefinition {
  /** null exactly when there are faults */
  readonly definition: Definition | null
  readonly faults: readonly Fault[]
  /** every file read, the entry first */
  readonly sources: readonly Source[]
  /** the merged form with the place of each value, for printing it and for finding where a value is written; null when a file does not read */
  readonly merged: Written | null
}

/** Paths are as the caller spells them; `load` gets the path of an extended file and gives its text or null. */
export function readDefinition(path: string, text: string, load: Load, parse?: Parse): ReadDefinition {
  const { root, faults, sources } = loadFiles(path, text, load, parse)
  const files = sources.map((s) => s.path)
  if (!root) return { definition: null, faults: sortFaults(faults, files), sources, merged: null }
  const reading = startReading(root)
  const written = definitionForm.read(root, reading, [])
  const draft = written && fillFromElsewhere(written, reading)
  if (draft) meaningFaults(draft, reading)
  const all = sortFaults([...faults, ...reading.faults], files)
  const definition = all.length === 0 && draft ? normalForm(draft as WholeDraft) : null
  return { definition, faults: all, sources, merged: root }
}
