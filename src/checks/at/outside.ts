/** What somebody standing outside sees at a place: the sheet, openings and laps. */

import { foreignPlates } from '../../derive/shell/channels.js'
import { signedDistance } from '../../derive/shell/opening-shape.js'
import { lapsOf } from '../../derive/shell/sheets.js'
import { developed } from '../../maths/development.js'
import type { Here, Thing } from './at.js'
import { lengthText } from './lengths.js'
import { distanceToMetal } from './metal-distance.js'
import { alloyOf, away, byDistance, NEAR, withNearest } from './things.js'

export function outsideAt(here: Here): readonly Thing[] {
  return [...sheets(here), ...openings(here), ...laps(here)].sort(byDistance)
}

/** Every sheet that is there, the outermost first; the nearest when none is. */
function sheets(here: Here): readonly Thing[] {
  const { derived, station, v } = here
  const { nose, tail } = foreignPlates(derived.shell.laid)
  const strakes = derived.shell.plates.filter((p) => p.kind === 'strake')
  // the ends' skins lie behind (or before) the barrel's sheets at the joints
  const all = [...strakes, ...nose, ...tail]
    .sort((a, b) => a.order - b.order)
    .map((plate) => ({ plate, distance: distanceToMetal(plate, derived.shell.laid.skin, { x: station, v }) }))
  const there = all.filter((s) => s.distance === 0)
  const nearest = all.filter((s) => s.plate.kind === 'strake').sort((a, b) => a.distance - b.distance)
  const shown = there.length > 0 ? there : nearest.slice(0, 1)
  return shown.map(({ plate, distance }, i) => ({
    kind: 'sheet',
    id: plate.part,
    sentence: `${i === 0 ? 'Skin' : 'Under it'}: ${plate.says}, ${alloyOf(derived, plate.part)}${distance > 0 ? `, its metal ${away(distance)}` : ''}.`,
    distance,
  }))
}

function openings(here: Here): readonly Thing[] {
  const all = here.derived.shell.laid.shapes.map((shape): Thing => {
    const signed = signedDistance(shape, here.station, here.v)
    const name = `${shape.id}, ${shape.says}`
    const sentence = signed <= 0 ? `In the cut of ${name}; its edge is ${away(-signed)}.` : `The cut of ${name}, is ${away(signed)}.`
    return { kind: 'opening', id: shape.id, sentence, distance: Math.max(0, signed) }
  })
  return withNearest(all, NEAR)
}

/** Laps between strakes, and the laps of the barrel's skin with the end skins. Distance to the lap's edge. */
function laps(here: Here): readonly Thing[] {
  const { derived, station, girth, v } = here
  const { input, skin } = derived.shell.laid
  const seams = lapsOf(input).map((lap): Thing => {
    const [from, to] = [developed(skin, lap.girth - lap.half), developed(skin, lap.girth + lap.half)]
    const distance = Math.max(0, from - v, v - to)
    const id = `${lap.seam}-${lap.side}`
    const off = lengthText(Math.abs(girth - lap.girth))
    const where = distance > 0 ? `Lap of ${id} is ${away(distance)}` : `In the lap of ${id}, ${off} mm from its rivet line`
    return { kind: 'lap', id, sentence: `${where}; it is at G ${lengthText(Math.abs(lap.girth))}.`, distance }
  })
  const half = input.shell.joint.overlap / 2
  const joints = input.frames
    .filter((f) => f.joint)
    .map((f): Thing => {
      const distance = Math.max(0, Math.abs(station - f.station) - half)
      const where =
        distance > 0 ? `Lap of the ${f.joint} skin at ${f.id} is ${away(distance)}` : `In the lap of the ${f.joint} skin at ${f.id}`
      return { kind: 'lap', id: `joint-${f.id}`, sentence: `${where}; it is at STA ${lengthText(f.station)}.`, distance }
    })
  return withNearest([...seams, ...joints], NEAR)
}
