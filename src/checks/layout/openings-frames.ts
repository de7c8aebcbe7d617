/** Openings against frames: cut webs (with the members that carry them), nicked flanges, rim rivets on flange edges. */

import type { FrameDefinition } from '../../definition/types.js'
import type { Check } from '../../derive/nouns.js'
import { cutsWeb, type OpeningShape, widestChord } from '../../derive/shell/opening-shape.js'
import { developed } from '../../maths/development.js'
import { distanceCheck, finding, mm } from '../check.js'
import { type Ground, halfFlange, middleOf, placeOn } from './ground.js'
import { nearestClean } from './nearest-clean.js'

const SOURCE = 'common practice, no source: a rim rivet keeps its edge distance from a frame flange'

/** Distance from a rim's rivet line to a frame's flange edge; negative where it lies on the flange. Null where they never meet. */
export function rimToFlange(ground: Ground, shape: OpeningShape, frame: FrameDefinition): number | null {
  return frameStandsBeside(ground, shape, frame) ? roomAlong(ground, shape, frame) : null
}

/** The same along the coach, whether or not they meet. */
function roomAlong(ground: Ground, shape: OpeningShape, frame: FrameDefinition): number {
  const half = halfFlange(ground, frame)
  return Math.max(shape.x0 - ground.line - (frame.station + half), frame.station - half - (shape.x1 + ground.line))
}

/** Whether any of the frame that is left stands in the opening's range of girth. */
function frameStandsBeside(ground: Ground, shape: OpeningShape, frame: FrameDefinition): boolean {
  const { skin, shapes } = ground.derived.shell.laid
  const floor = developed(skin, ground.derived.shell.section.floor)
  const half = halfFlange(ground, frame)
  let free = [[Math.max(shape.v0 - ground.line, -floor), Math.min(shape.v1 + ground.line, floor)]]
  for (const other of shapes) {
    if (other.id === shape.id || other.x0 >= frame.station || other.x1 <= frame.station) continue
    const chord = widestChord(other, frame.station - half, frame.station + half)
    if (!chord) continue
    const [a, b] = [chord[0] - ground.reach, chord[1] + ground.reach]
    free = free
      .flatMap(([f, t]) => [
        [f, Math.min(t, a)],
        [Math.max(f, b), t],
      ])
      .filter(([f, t]) => t > f)
  }
  return free.some(([f, t]) => t > f)
}

export function openingsAgainstFrames(ground: Ground): Check[] {
  const { laid, rims } = ground.derived.shell
  const checks: Check[] = []
  for (const shape of laid.shapes) {
    let nearest: { frame: FrameDefinition; room: number } | null = null
    for (const frame of ground.input.frames) {
      if (cutsWeb(shape, frame.station)) {
        checks.push(cutFrame(ground, shape, frame, rims.find((r) => r.shape === shape)?.framing.plates.map((p) => p.part) ?? []))
        continue
      }
      const room = roomAlong(ground, shape, frame)
      // whether they meet takes longer to tell than that it is not the nearest
      if ((!nearest || room < nearest.room) && frameStandsBeside(ground, shape, frame)) nearest = { frame, room }
    }
    if (nearest) checks.push(besideFrame(ground, shape, nearest.frame, nearest.room))
  }
  return checks
}

function cutFrame(ground: Ground, shape: OpeningShape, frame: FrameDefinition, framing: readonly string[]): Check {
  const what = shape.surface === 'wheel' ? `The ${shape.says}` : `${shape.id} (${shape.says})`
  const clean = nearestClean(ground, shape)
  const told = {
    id: `opening.${shape.id}.frame.${frame.id}`,
    source: 'common practice, no source: a cut frame is carried round by header, sill and posts',
    places: [placeOn(ground, frame.station, (shape.v0 + shape.v1) / 2 > 0 ? Math.max(shape.v0, 0) : Math.min(shape.v1, 0))],
    concerns: [shape.id, `frame-${frame.id}`, ...framing],
  }
  if (frame.joint) {
    return finding(
      { ...told, says: `${what} cuts the joint frame ${frame.id}, which closes the ${frame.joint}: it cannot be cut.`, mend: clean },
      'fail',
    )
  }
  if (shape.surface === 'wheel') {
    return finding({ ...told, says: `${what} cuts the lower leg of frame ${frame.id}; the wheel box and its header carry it.` }, 'caution')
  }
  return finding({ ...told, says: `${what} cuts frame ${frame.id}; ${listOf(framing)} carry it.`, mend: clean }, 'caution')
}

function listOf(parts: readonly string[]): string {
  if (parts.length === 0) return 'nothing is there to'
  return parts.length === 1 ? parts[0] : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]}`
}

function besideFrame(ground: Ground, shape: OpeningShape, frame: FrameDefinition, room: number): Check {
  const half = halfFlange(ground, frame)
  const told = {
    id: `opening.${shape.id}.flange`,
    source: SOURCE,
    places: [middleOf(ground, shape)],
    concerns: [shape.id, `frame-${frame.id}`],
  }
  const what = shape.surface === 'wheel' ? `the ${shape.says}` : shape.id
  const nicks = Math.max(shape.x0 - (frame.station + half), frame.station - half - shape.x1) < 0
  const says = nicks
    ? `The cut of ${what} runs ${mm(Math.min(frame.station + half - shape.x0, shape.x1 - frame.station + half))} mm into the flange of frame ${frame.id} without cutting its web.`
    : `The rim rivets of ${what} stand ${mm(room)} mm from the flange edge of frame ${frame.id}; they need ${mm(ground.edge)} mm.`
  const check = distanceCheck({ ...told, says, mend: null }, ground.edge, room)
  return check.verdict === 'pass' ? check : { ...check, mend: nearestClean(ground, shape) }
}
