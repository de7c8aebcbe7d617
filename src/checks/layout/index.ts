/** All layout rules, in the order a person would look at them. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { accessToBuck } from './buck.js'
import { axlesAgainstCrossMembers, floorAgainstBoard, fluesAgainstWindows, lapsAgainstAssembly, overallSizes } from './coach.js'
import { edgeDistances, edgesUnderHeads } from './edge-distance.js'
import { framingStands, legsCutTwice } from './frames-cut.js'
import { groundOf } from './ground.js'
import { notChecked } from './not-checked.js'
import { openingsAgainstFrames } from './openings-frames.js'
import { openingsAgainstLaps } from './openings-laps.js'
import { openingsAgainstEachOther } from './openings-openings.js'
import { fittedPitches, spacing, transversePitch } from './spacing.js'
import { strakesAgainstStock } from './stock.js'

export function layoutChecks(derived: Derived): Check[] {
  const ground = groundOf(derived)
  return [
    openingsAgainstFrames,
    legsCutTwice,
    framingStands,
    openingsAgainstLaps,
    openingsAgainstEachOther,
    fluesAgainstWindows,
    edgeDistances,
    edgesUnderHeads,
    spacing,
    fittedPitches,
    transversePitch,
    accessToBuck,
    strakesAgainstStock,
    floorAgainstBoard,
    lapsAgainstAssembly,
    axlesAgainstCrossMembers,
    overallSizes,
    notChecked,
  ].flatMap((rule) => rule(ground))
}
