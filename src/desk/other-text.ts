/** Another text of the same coach, as another window or the disk has it: how it differs from the one that is drawn here. */
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import type { Design } from '../derive/design.js'
import type { UnitSystem } from '../quantity/format.js'
import { compare } from '../ripple/compare.js'
import { rippleText } from '../ripple/ripple-text.js'
import type { CoachFiles } from './desk-coach-nouns.js'
import { rippleLine } from './ripple-line.js'

export interface Differs {
  readonly line: string
  /** headings without an indent, sentences with one */
  readonly lines: readonly string[]
}

/** From theirs to ours: what would be given up by taking theirs. A text that does not read says so. */
export function differsFrom({ path, files }: CoachFiles, theirs: string, ours: Design, units: UnitSystem): Differs {
  const { definition, faults } = readDefinition(path, theirs, (other) => files[other] ?? null)
  const [fault] = faults
  if (!definition) return { line: `The other text does not read: line ${fault.line}, ${fault.says}`, lines: [] }
  const ripple = compare(design(definition), ours)
  return { line: rippleLine(ripple, 'the other text'), lines: rippleText(ripple, units) }
}
