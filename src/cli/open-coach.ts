/** From a file's name to a definition, or every fault in it at once. */
import { readDefinition } from '../definition/read-definition.js'
import type { Definition } from '../definition/types.js'
import type { Written } from '../definition/written.js'
import { loadText, openText } from './open-text.js'
import { Refused } from './refused.js'

export interface OpenedCoach {
  readonly definition: Definition
  readonly merged: Written
}

/** Throws Refused with the faults. */
export function openCoach(file: string): OpenedCoach {
  // the core reads forward slashes only
  const path = file.replaceAll('\\', '/')
  const { definition, faults, merged } = readDefinition(path, openText(file, 'a definition'), loadText)
  if (!definition || !merged) throw new Refused(faults)
  return { definition, merged }
}
