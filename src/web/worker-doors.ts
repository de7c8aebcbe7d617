/** What the worker does besides the coach it holds: begins one, mends one, compares texts, looks at another, proves a hole list. */

import type { Design } from '../derive/design.js'
import { deskCoach } from '../desk/desk-coach.js'
import type { CoachFiles, NotRead } from '../desk/desk-coach-nouns.js'
import { type Family, familiesOf, type Pattern, patternOf } from '../desk/new-coach/families.js'
import { type Choice, type Started, startCoach } from '../desk/new-coach/start-coach.js'
import type { Look } from '../desk/nouns.js'
import type { NotProved, ProofShown } from '../desk/prove-shown.js'
import { proofShown } from '../desk/prove-shown.js'
import { type Side, sideOf } from '../desk/side-by-side.js'

const patterns = new Map<string, Pattern>()

/** Coaches that do not read, or stand on no family, are none to begin from. */
export function families(coaches: readonly CoachFiles[]): readonly Family[] {
  patterns.clear()
  for (const coach of coaches) {
    const pattern = patternOf(coach)
    if (pattern) patterns.set(coach.path, pattern)
  }
  return familiesOf([...patterns.values()])
}

export function start(path: string, choice: Choice): Started | null {
  const pattern = patterns.get(path)
  return pattern ? startCoach(pattern, choice) : null
}

/** Of a coach that is held nowhere. */
export function sideOfFiles(coach: CoachFiles, look: Look): Side | NotRead {
  const opened = deskCoach(coach)
  return 'faults' in opened ? opened : sideOf(opened.design(), coach.path, look)
}

/** The library that reads drawings comes only where a list is read. */
export async function proved(
  design: Design,
  part: string,
  list: { readonly name: string; readonly text: string },
  face: string | null,
): Promise<ProofShown | NotProved> {
  const { readHoleList } = await import('../intake/read-hole-list.js')
  const read = readHoleList(list.text, list.name)
  return read.list ? proofShown(design, part, read.list, face) : { faults: read.faults }
}
