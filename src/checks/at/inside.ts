/** What is behind the skin at a place, from the frames to the lining and its trim. */

import { flangeHalf, rimReach } from '../../derive/shell/members.js'
import { grown, signedDistance } from '../../derive/shell/opening-shape.js'
import type { Plate } from '../../derive/shell/plates.js'
import type { Here, Thing } from './at.js'
import { lengthText } from './lengths.js'
import { distanceToMetal } from './metal-distance.js'
import { alloyOf, away, byDistance, NEAR } from './things.js'
import { fastenersOf } from './through.js'

const MEMBERS: ReadonlySet<string> = new Set([
  'frame',
  'joint-frame',
  'stringer',
  'post',
  'header',
  'edge-channel',
  'rim',
  'lining',
  'trim-ring',
])
/** A hole drilled from inside meets a lining fastener nearer than this, m. Our choice. */
const DRILL = 0.05

export function insideAt(here: Here): readonly Thing[] {
  const lining = here.derived.shell.rows.filter((r) => r.kind === 'lining').flatMap((row) => fastenersOf(here, row, DRILL))
  return [...members(here), ...blanket(here), ...lining].sort(byDistance)
}

/** The frames either side, and in an opening all that was made for it, are told however far they are. */
function toldAnyway(here: Here): ReadonlySet<string> {
  const { openings, definition } = here.derived
  const fore = [...definition.frames].reverse().find((f) => f.station <= here.station)
  const aft = definition.frames.find((f) => f.station > here.station)
  const cut = here.derived.shell.laid.shapes.filter((s) => signedDistance(s, here.station, here.v) <= 0).map((s) => s.id)
  const made = openings.filter((o) => cut.includes(o.id)).flatMap((o) => [o.rim.part, o.trimRing, ...o.lining, ...o.framing])
  return new Set([fore, aft].flatMap((f) => (f ? [`frame-${f.id}`] : [])).concat(made.filter((id) => id !== null)))
}

/** One entry a part, by its nearest face. */
function members(here: Here): readonly Thing[] {
  const anyway = toldAnyway(here)
  const nearest = new Map<string, { plate: Plate; distance: number }>()
  for (const plate of here.derived.shell.plates) {
    if (!MEMBERS.has(plate.kind)) continue
    const distance = distanceToMetal(plate, here.derived.shell.laid.skin, { x: here.station, v: here.v })
    const known = nearest.get(plate.part)
    if ((distance <= NEAR || anyway.has(plate.part)) && (!known || distance < known.distance)) nearest.set(plate.part, { plate, distance })
  }
  return [...nearest.values()].map(({ plate, distance }) => ({
    kind: plate.kind,
    id: plate.part,
    sentence: `${capital(plate.says)}, ${alloyOf(here.derived, plate.part)}, ${distance > 0 ? away(distance) : 'is here'}${direction(here, plate, distance)}.`,
    distance,
  }))
}

/** For what runs across the coach, which way it lies. */
function direction(here: Here, plate: Plate, distance: number): string {
  if (distance === 0 || (plate.kind !== 'frame' && plate.kind !== 'joint-frame')) return ''
  if (here.station < plate.x0) return ' aft'
  return here.station > plate.x1 ? ' forward' : ''
}

/** The blanket fills a bay from frame flange to frame flange and floor to floor, less the rims of openings. */
function blanket(here: Here): readonly Thing[] {
  const { derived, station, girth, v } = here
  const { input } = derived.shell.laid
  const { frames } = input
  const i = frames.findIndex(
    (f, k) =>
      k + 1 < frames.length &&
      station > f.station + flangeHalf(input, f) &&
      station < frames[k + 1].station - flangeHalf(input, frames[k + 1]),
  )
  if (i < 0 || Math.abs(girth) > derived.shell.section.floor) return []
  const bay = `${frames[i].id}-${frames[i + 1].id}`
  const gap = derived.shell.laid.shapes.find((s) => signedDistance(grown(s, rimReach(input)), station, v) < 0)
  const sentence = gap
    ? `The insulation blanket of bay ${bay} is left out here for ${gap.id}, ${gap.says}.`
    : `Insulation blanket of bay ${bay}, between the skin and the lining, ${lengthText(input.shell.frame.height)} mm deep.`
  return [{ kind: gap ? 'blanket-gap' : 'blanket', id: `blanket-${bay}`, sentence, distance: 0 }]
}

const capital = (says: string): string => says.charAt(0).toUpperCase() + says.slice(1)
