/** The jigs and the drawn lines of the ends in `derive --json`: lengths m, angles rad. */
import { z } from 'zod'

const m = (says: string) => z.number().describe(`${says}, m`)
const rad = (says: string) => z.number().describe(`${says}, rad`)
const place = z
  .tuple([z.number(), z.number(), z.number()])
  .readonly()
  .describe('axes of the end jig: x outward from the joint, y right of travel, z up from WL 0, m')
const pair = z.tuple([z.number(), z.number()]).readonly()
const contour = z
  .array(z.tuple([z.number(), z.number(), z.number()]).readonly())
  .readonly()
  .describe('open [r, z, bulge] list from the cap row down; r outward from the axis of the crown; bulge = tan(angle / 4) to the next; m')
const mark = {
  says: z.string(),
  kind: z.enum(['row', 'level', 'rib end', 'waterline']),
  r: m("outward from the axis of the crown, in the rib's plane"),
  z: m('waterline'),
  rise: rad('outward normal of the contour, up from level'),
}
const bevel = z.object({ angle: rad("skin against square to the web's plane; positive opens the flange"), z: m('waterline there') })
const locator = z.object({
  id: z.string(),
  says: z.string(),
  y: m('half width of the face'),
  z: m('waterline'),
  depth: m('of the face inside the outer mould line'),
  rise: rad('outward normal up from level'),
})
const diagonal = z.object({
  id: z.string(),
  from: z.string(),
  to: z.string(),
  right: m('from the right-hand start'),
  left: m('from the left-hand start'),
})
const tolerance = z.object({
  locator: m("of a locator from the jig's datum, either way"),
  diagonal: m('of a diagonal from its figure'),
  between: m('of one hand from the other'),
  source: z.string(),
})

export const endJigSchema = z.object({
  ribs: z
    .array(
      z.object({
        ribs: z
          .array(z.string())
          .readonly()
          .describe('the right-hand rib and its left twin, which mirrors it; one alone on the centre line'),
        kind: z.enum(['seam', 'mid']),
        azimuth: rad('from the centre line'),
        depth: m('of the outer face inside the mould line'),
        beside: m("of the web's plane beside the plane of the rivets, toward the joint"),
        height: m('outer face to inner face'),
        outer: contour,
        inner: contour,
        spacing: m('points stand no farther apart'),
        run: z.array(z.number()).readonly().describe('along the outer contour from the cap row at each point, m'),
        bevel: z.array(z.number()).readonly().describe('at each point, rad'),
        leastBevel: bevel,
        greatestBevel: bevel,
        flangeLength: m('outer flange, developed, ring to base, uncut'),
        marks: z.array(z.object(mark)).readonly(),
        locators: z
          .array(z.object({ ...mark, point: place, station: z.object({ nose: m('station on the nose'), tail: m('station on the tail') }) }))
          .readonly(),
      }),
    )
    .readonly(),
  joint: z.array(locator).readonly().describe('outer face of the joint frame, in the joint plane, right side'),
  jointStation: z.object({ nose: m('station'), tail: m('station') }),
  thickness: z.object({ end: m('skin of the ends'), barrel: m('skin of the barrel') }),
  diagonals: z.array(diagonal).readonly(),
  tolerance,
})

export const sideJigSchema = z.object({
  frames: z
    .array(z.object({ id: z.string(), station: m('station'), fromFirst: m('from the first frame'), kind: z.enum(['hoop', 'joint']) }))
    .readonly(),
  hoop: z.array(locator).readonly().describe('outer face of a hoop frame, right side'),
  joint: z.array(locator).readonly().describe('outer face of a joint frame, right side'),
  diagonals: z.array(diagonal).readonly(),
  tolerance,
})

export const endDrawnSchema = z.object({
  lines: z
    .array(
      z.object({
        id: z.string(),
        says: z.string(),
        kind: z.enum(['joint', 'seam', 'mid', 'cap', 'floor', 'toe']),
        side: z.enum(['right', 'left', 'centre']),
        points: z.array(place).readonly(),
      }),
    )
    .readonly()
    .describe('lines of the outer mould line, for drawings'),
  profile: z.array(pair).readonly().describe('from the side, crown to toe: outward, waterline; m'),
  plan: z.array(pair).readonly().describe('from above, right joint to left: outward, right of travel; m'),
})
