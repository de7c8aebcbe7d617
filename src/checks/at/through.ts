/** What goes through the skin at a place, or stands against its back: fasteners, openings, and the flanges they hold. */
import type { FastenerRow } from '../../derive/nouns.js'
import { signedDistance } from '../../derive/shell/opening-shape.js'
import { developed } from '../../maths/development.js'
import { at } from '../../maths/tangent-chain.js'
import { inward } from '../ends/ground.js'
import type { Here, Thing } from './at.js'
import { distanceToMetal } from './metal-distance.js'
import { endFasteners } from './on-end.js'
import { away, byDistance, fastenerThing } from './things.js'

/** A drill or a screw nearer than this to a fastener meets its head or its edge distance, m. Our choice. */
const DRILL = 0.05

const FLANGES: ReadonlySet<string> = new Set(['frame', 'joint-frame', 'stringer', 'rim', 'header', 'post', 'edge-channel'])

/** Lining rows do not go through the skin; they are inside. */
export function throughAt(here: Here): readonly Thing[] {
  return [
    ...here.derived.shell.rows.filter((r) => r.kind !== 'lining').flatMap((row) => fastenersOf(here, row, DRILL)),
    ...fastenersOfEnds(here),
    ...cuts(here),
    ...flanges(here),
  ].sort(byDistance)
}

/** Beside a joint the first fasteners of nose or tail may be within a hand as well. */
function fastenersOfEnds({ derived, station, girth }: Here): readonly Thing[] {
  const joint = derived.definition.frames.find((f) => f.joint && Math.abs(f.station - station) < 2 * DRILL)
  if (!joint?.joint) return []
  const standing = { end: joint.joint, joint: joint.station, frame: joint.id }
  const p = at(derived.shell.section.withFlange, Math.abs(girth))
  return endFasteners(derived, standing, inward(standing, station, girth < 0 ? -p.y : p.y, p.z))
}

export function fastenersOf(here: Here, row: FastenerRow, within: number): readonly Thing[] {
  const { station, v, derived } = here
  const { skin } = derived.shell.laid
  const out: Thing[] = []
  for (let i = 0; i < row.station.length; i++) {
    const dx = row.station[i] - station
    if (Math.abs(dx) > within) continue
    const distance = Math.hypot(dx, developed(skin, row.girth[i]) - v)
    if (distance > within) continue
    out.push(fastenerThing(derived, row, i, distance))
  }
  return out
}

function cuts(here: Here): readonly Thing[] {
  return here.derived.shell.laid.shapes.flatMap((shape): Thing[] => {
    const signed = signedDistance(shape, here.station, here.v)
    if (signed > DRILL) return []
    const where = signed <= 0 ? 'The skin is cut away here' : `The skin is cut away ${away(signed)}`
    return [{ kind: 'opening', id: shape.id, sentence: `${where} for ${shape.id}, ${shape.says}.`, distance: Math.max(0, signed) }]
  })
}

/** Only the faces that lie against the skin: a frame's outer flange, not its inner one. */
function flanges(here: Here): readonly Thing[] {
  const { plates, laid } = here.derived.shell
  return plates.flatMap((plate): Thing[] => {
    if (!FLANGES.has(plate.kind) || plate.face === 'inner flange' || plate.face === 'barrel-side lip') return []
    const distance = distanceToMetal(plate, laid.skin, { x: here.station, v: here.v })
    if (distance > 0) return []
    return [{ kind: plate.kind, id: plate.part, sentence: `Against the skin: the ${plate.face} of ${plate.says}.`, distance }]
  })
}
