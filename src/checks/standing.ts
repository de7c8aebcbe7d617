/**
 * The rules of where things stand: openings, frames, axles and tanks against each other. They cost a millisecond where all
 * rules cost twenty, so that a thing that is being dragged is judged by them; every rule judges it where it comes to rest.
 */
import type { Derived } from '../derive/index.js'
import type { Check } from '../derive/nouns.js'
import { axleWindow } from './chassis/axle-window.js'
import { baysClear } from './chassis/bays.js'
import { wheelsInBoxes } from './chassis/wheels.js'
import { axlesAgainstCrossMembers, fluesAgainstWindows } from './layout/coach.js'
import { legsCutTwice } from './layout/frames-cut.js'
import { groundOf } from './layout/ground.js'
import { openingsAgainstFrames } from './layout/openings-frames.js'
import { openingsAgainstLaps } from './layout/openings-laps.js'
import { openingsAgainstEachOther } from './layout/openings-openings.js'

export function standingChecks(derived: Derived): readonly Check[] {
  const ground = groundOf(derived)
  return [
    ...[
      openingsAgainstFrames,
      legsCutTwice,
      openingsAgainstLaps,
      openingsAgainstEachOther,
      fluesAgainstWindows,
      axlesAgainstCrossMembers,
    ].flatMap((rule) => rule(ground)),
    ...wheelsInBoxes(derived),
    ...axleWindow(derived),
    ...baysClear(derived),
  ]
}
