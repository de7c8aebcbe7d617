/**
 * What is written well but cannot be built: the faults that need more than one value to see.
 * A coach that can be built but should not be is not a fault; that is for the checks.
 */
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { barrelFaults } from './meaning-barrel.js'
import { endFaults } from './meaning-ends.js'
import { fastenerFaults } from './meaning-fasteners.js'
import { openingFaults } from './meaning-openings.js'
import { roadFaults } from './meaning-road.js'
import { sectionFaults } from './meaning-section.js'
import { underFaults } from './meaning-under.js'
import { undercarriageFaults } from './meaning-undercarriage.js'
import { weightFaults } from './meaning-weight.js'

export function meaningFaults(draft: Draft, reading: Reading): void {
  const chain = sectionFaults(draft, reading)
  barrelFaults(draft, chain, reading)
  fastenerFaults(draft, reading)
  const profile = endFaults(draft, chain, reading)
  openingFaults(draft, chain, profile, reading)
  undercarriageFaults(draft, chain, reading)
  roadFaults(draft, reading)
  underFaults(draft, reading)
  weightFaults(draft, reading)
}
