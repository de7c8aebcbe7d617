/** What every layout rule looks at: the shell's geometry with the lengths that are asked for again and again. */

import { letterOfSide } from '../../definition/sides.js'
import type { FrameDefinition } from '../../definition/types.js'
import type { Derived } from '../../derive/index.js'
import type { Place } from '../../derive/nouns.js'
import { diameterOf, rimReach } from '../../derive/shell/members.js'
import type { OpeningShape } from '../../derive/shell/opening-shape.js'
import { undeveloped } from '../../maths/development.js'
import { at } from '../../maths/tangent-chain.js'

export interface Ground {
  readonly derived: Derived
  readonly input: Derived['shell']['laid']['input']
  /** least edge distance of a rim rivet, m */
  readonly edge: number
  readonly line: number
  /** cut to the outer edge of the rim ring, m */
  readonly reach: number
  readonly minPitch: number
}

export function groundOf(derived: Derived): Ground {
  const { input } = derived.shell.laid
  const d = diameterOf(input, input.rows.rim.fastener)
  return {
    // these rules look at the barrel; the ends have their own in checks/ends
    derived: {
      ...derived,
      parts: derived.shell.parts,
      rows: derived.shell.rows,
      joints: derived.shell.joints,
      openings: derived.shell.openings,
    },
    input,
    edge: input.rules.edgeDistance * d,
    line: input.shell.rim.line,
    reach: rimReach(input),
    minPitch: input.rules.minPitch * d,
  }
}

/** A place on the outer mould line from a station and a skin length. */
export function placeOn(ground: Ground, station: number, v: number): Place {
  return placeAtGirth(ground, station, undeveloped(ground.derived.shell.laid.skin, v))
}

function placeAtGirth(ground: Ground, station: number, girth: number): Place {
  const p = at(ground.derived.shell.section.withFlange, Math.abs(girth))
  return { side: Math.abs(girth) < 1e-9 ? 'centre' : girth > 0 ? 'right' : 'left', station, girth: Math.abs(girth), waterline: p.z }
}

/** Place of an opening's middle; an open one's middle is taken at its sheet's edge. */
export function middleOf(ground: Ground, s: OpeningShape): Place {
  const edge = ground.derived.shell.section.toe
  const skin = ground.derived.shell.laid.skin
  const g = undeveloped(skin, (s.v0 + s.v1) / 2)
  return placeAtGirth(ground, (s.x0 + s.x1) / 2, Math.min(edge, Math.max(-edge, g)))
}

/** Side word with the market's letter: right (C) where the curb is on the right. */
export function sideWord(ground: Ground, side: 'left' | 'right' | 'centre'): string {
  if (side === 'centre') return 'roof'
  return `${side} (${letterOfSide(side, ground.derived.definition.coach.market)})`
}

export const halfFlange = (ground: Ground, f: FrameDefinition): number =>
  (f.joint ? ground.input.shell.jointFrame.flange : ground.input.shell.frame.flange) / 2
