/** The clean places a thing may be drawn to: each with the reason in words, and where the guide lies. m. */
import type { Derived } from '../derive/index.js'
import { cleanForBay, cleanForMass } from './clean-below.js'
import { cleanForAxle, cleanForFrame } from './clean-frames.js'
import { cleanForOpening } from './clean-openings.js'
import type { CleanPlace } from './clean-place.js'
import { cleanForEdges } from './clean-sizes.js'
import type { MoveEdit, SizeEdit } from './nouns.js'
import { writtenThing } from './written-things.js'

export function cleanPlaces(derived: Derived, edit: MoveEdit | SizeEdit): readonly CleanPlace[] {
  const { definition } = derived
  if (edit.kind === 'size') return cleanForEdges(derived, edit)
  switch (writtenThing(definition, edit.id)?.layer) {
    case 'openings':
      return cleanForOpening(derived, edit)
    case 'axles':
      return cleanForAxle(derived, edit.id)
    case 'frames':
      return cleanForFrame(derived, edit.id)
    case 'tanks':
      return cleanForBay(derived, edit.id)
    case 'masses':
      return cleanForMass(derived)
    default:
      return []
  }
}
