/** A frame leg cut twice, and the members that carry a cut frame: both ends on sound metal, clear of everything else. */

import type { Check } from '../../derive/nouns.js'
import { contains, cutsWeb, type OpeningShape, signedDistance } from '../../derive/shell/opening-shape.js'
import { developed } from '../../maths/development.js'
import { distanceCheck, finding, HAIR, mm } from '../check.js'
import { type Ground, placeOn, sideWord } from './ground.js'
import { nearestClean } from './nearest-clean.js'

export function legsCutTwice(ground: Ground): Check[] {
  const { shapes } = ground.derived.shell.laid
  const checks: Check[] = []
  for (const frame of ground.input.frames) {
    for (const side of ['left', 'right'] as const) {
      const cuts = shapes
        .filter((s) => cutsWeb(s, frame.station) && s.side === side)
        .map((s) => ({ id: s.id, from: Math.min(Math.abs(s.v0), Math.abs(s.v1)), to: Math.max(Math.abs(s.v0), Math.abs(s.v1)) }))
        .sort((a, b) => a.from - b.from)
      for (let i = 0; i + 1 < cuts.length; i++) {
        const sign = side === 'right' ? 1 : -1
        const above = placeOn(ground, frame.station, sign * cuts[i].to)
        const below = placeOn(ground, frame.station, sign * cuts[i + 1].from)
        const left = above.waterline - below.waterline
        checks.push(
          finding(
            {
              // a leg cut three times has two such stumps: each is named by the cuts it stands between
              id: `frame.${frame.id}.${side}.cut-twice.${cuts[i].id}.${cuts[i + 1].id}`,
              says: `Frame ${frame.id} is cut twice on the ${sideWord(ground, side)} side, by ${cuts[i].id} above and ${cuts[i + 1].id} below: ${mm(left)} mm of its leg is left between them. An engineer must say what carries it.`,
              source: 'common practice, no source: a short leg between two cuts carries little',
              places: [above, below],
              concerns: [`frame-${frame.id}`, cuts[i].id, cuts[i + 1].id],
            },
            'caution',
          ),
        )
      }
    }
  }
  return checks
}

/** Posts, headers and sills: they need sound frames to end on and room to stand. */
export function framingStands(ground: Ground): Check[] {
  const { laid, rims } = ground.derived.shell
  const checks: Check[] = []
  for (const { shape, framing } of rims) {
    if (framing.cuts.length === 0 || shape.surface === 'wheel') continue
    const fore = [...ground.input.frames].reverse().find((f) => f.station <= shape.x0)
    const aft = ground.input.frames.find((f) => f.station >= shape.x1)
    // where a header or sill meets the frames beside the opening
    const ends = framing.plates.filter((p) => p.kind === 'header').map((p) => developed(laid.skin, (p.g0 + p.g1) / 2))
    const told = { source: 'common practice, no source: a header ends on a sound frame each side', concerns: [shape.id] }
    for (const [word, frame] of [
      ['forward', fore],
      ['aft', aft],
    ] as const) {
      const cutBy = frame
        ? laid.shapes.find(
            (s) => s.id !== shape.id && cutsWeb(s, frame.station) && ends.some((v) => v > s.v0 - ground.reach && v < s.v1 + ground.reach),
          )
        : undefined
      if (frame && !cutBy) continue
      checks.push(
        finding(
          {
            ...told,
            id: `framing.${shape.id}.${word}`,
            places: [placeOn(ground, word === 'aft' ? shape.x1 : shape.x0, (shape.v0 + shape.v1) / 2)],
            says:
              frame && cutBy
                ? `The header of ${shape.id} has no sound frame to end on ${word}: ${frame.id} is cut by ${cutBy.id} at the same height.`
                : `The header of ${shape.id} has no frame to end on ${word} of it.`,
            mend: nearestClean(ground, shape),
          },
          'fail',
        ),
      )
    }
    for (const plate of framing.plates) {
      for (const other of laid.shapes) {
        if (other.id === shape.id) continue
        const [a, b] = [developed(laid.skin, plate.g0), developed(laid.skin, plate.g1)]
        const room = boxToShape(plate.x0, plate.x1, a, b, other)
        if (room >= ground.reach - HAIR) continue
        checks.push(
          distanceCheck(
            {
              ...told,
              id: `framing.${plate.part}.${other.id}`,
              concerns: [plate.part, other.id],
              says: `${plate.part} comes within ${mm(Math.max(0, room))} mm of the cut of ${other.id}, whose rim ring needs ${mm(ground.reach)} mm.`,
              places: [placeOn(ground, (plate.x0 + plate.x1) / 2, (a + b) / 2)],
              mend: nearestClean(ground, shape),
            },
            ground.reach,
            Math.max(0, room),
          ),
        )
      }
    }
  }
  return checks
}

/** Distance from a rectangle to a cut: exact at the rectangle's nearest point to the cut's middle lines. */
function boxToShape(x0: number, x1: number, v0: number, v1: number, s: OpeningShape): number {
  const x = Math.min(x1, Math.max(x0, (s.x0 + s.x1) / 2))
  const v = Math.min(v1, Math.max(v0, (s.v0 + s.v1) / 2))
  return contains(s, x, v) ? 0 : signedDistance(s, x, v)
}
