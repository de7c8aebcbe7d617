/** Floor, chassis and axle group as `derive --json` prints them: lengths m, masses kg, areas m2, angles rad. */
import { z } from 'zod'

const m = (says: string) => z.number().describe(`${says}, m`)
const outline = z
  .array(z.tuple([z.number(), z.number(), z.number()]))
  .describe('closed [x, y, bulge] list: station, buttock line right positive, m')
const point = z.array(z.number()).length(3).describe('x aft, y right, z up, m')
const pair = z.array(z.number()).length(2)
const side = z.enum(['right', 'left', 'centre'])
const clearance = z.object({ to: z.string(), kind: z.string(), room: m('free distance, negative where it cuts') })

const floor = z.object({
  outline,
  area: z.number().describe('inside the outline, nothing cut out, m2'),
  length: m('over all'),
  width: m('over all'),
  perimeter: m('round the outline'),
  stray: m('farthest that the arcs of the ends lie from the true curve'),
  panels: z.array(z.object({ part: z.string(), from: m('station'), to: m('station') })),
  joints: z.array(z.object({ station: m('station'), member: z.string().nullable() })),
  openings: z.array(
    z.object({
      id: z.string(),
      says: z.string(),
      outline,
      station: m('station of the centre'),
      y: m('buttock line of the centre'),
      clear: z.array(clearance).describe('nearest first'),
      toFlange: clearance.nullable().describe("to the nearest cross-member's flange, along the coach"),
    }),
  ),
  bolts: z.number().int().describe('hold-down bolts'),
  screws: z.number().int(),
  covering: z.object({ says: z.string(), area: z.number(), mass: z.number(), centre: point }).nullable(),
})

const section = z.object({
  of: z.string(),
  says: z.string(),
  blank: m('width of the blank'),
  allowance: m('flat length of one bend'),
  deduction: m('taken off the outside sizes for one bend'),
  area: z.number().describe('m2, sharp corners'),
  centre: m('centre of area from the outer face of the web'),
  Ix: z.number().describe('m4'),
  Iy: z.number().describe('m4'),
  J: z.number().describe('m4'),
  shearCentre: m("outside the web's middle line"),
  net: z.object({ area: z.number(), Ix: z.number() }).nullable().describe('with a lightening hole in the web'),
  linearMass: z.number().describe('kg/m'),
})

const chassis = z.object({
  strength: z.literal('not checked').describe('an engineer must approve'),
  members: z.array(
    z.object({ part: z.string(), kind: z.string(), says: z.string(), side, plan: outline, top: m('waterline'), bottom: m('waterline') }),
  ),
  sections: z.array(section),
  holes: z.array(z.object({ rail: z.string(), id: z.string(), station: m('station'), leftOut: z.string().nullable() })),
  zones: z.array(z.object({ part: z.string(), kind: z.string(), says: z.string(), from: m('station'), to: m('station') })),
  welds: z.array(
    z.object({
      no: z.number().int(),
      step: z.number().int(),
      says: z.string(),
      parts: z.array(z.string()).length(2),
      station: m('station'),
      y: m('buttock line'),
      length: m('run of weld'),
    }),
  ),
  distortion: z.array(
    z.object({ after: z.number().int(), says: z.string(), nominal: z.number().nullable(), within: m('allowed either way') }),
  ),
  bought: z.array(z.object({ id: z.string(), says: z.string(), mass: z.number(), centre: point })),
  bays: z.array(z.object({ id: z.string(), says: z.string(), x: pair, y: pair, z: pair, volume: z.number().describe('m3') })),
  aFrame: z
    .object({
      apex: m('station'),
      meets: m('station where the legs meet the rails'),
      legLength: m('along the outer face'),
      crossing: z.object({ part: z.string(), y: m('where it ends inside the legs') }).nullable(),
    })
    .nullable(),
  mass: z.number().describe('of what is made, without what is bought; kg'),
})

const gear = z.object({
  tubes: z.array(
    z.object({
      axle: z.number().int(),
      spindle: m('station'),
      station: m('station of the tube'),
      spindleZ: z.number().nullable().describe('waterline of the spindle at gross weight, m'),
      nearest: z.object({ station: m('of the cross-member'), room: m('middle to middle') }).nullable(),
    }),
  ),
  mean: m('mean axle station'),
  spread: m('first to last spindle'),
  boxes: z.array(z.object({ id: z.string(), part: z.string(), side, x: pair, y: pair, z: pair })),
  window: z
    .array(z.object({ from: m('mean axle station'), to: m('mean axle station'), before: z.string(), after: z.string() }))
    .describe('where tubes and wheel openings are clear, and what ends each stretch; loads are not looked at'),
  neighbours: z
    .array(
      z.object({
        what: z.string(),
        from: m('mean axle station without it'),
        to: m('mean axle station without it'),
        gains: m('longer the stretch would be'),
        by: z.number().nullable().describe('how far it would have to move where it bars the axles as written, m'),
      }),
    )
    .describe('what each thing beside the axles costs, the dearest first'),
  loadedAngle: z.number().nullable().describe('of the arm below level at gross weight, rad'),
  bumpTravel: z.number().nullable().describe('of the spindle from there, m'),
  tubeZ: pair.nullable(),
  ground: z.number().nullable(),
  sits: z
    .object({ gross: m('at gross weight'), free: m('with nothing on the wheels') })
    .nullable()
    .describe('waterlines of the ground by axle, arm and tyre'),
  clearance: z.object({ height: m('above the ground'), of: z.string(), station: m('station') }).nullable(),
  departure: z.number().nullable().describe('departure angle, rad'),
})

export const underSchema = z
  .object({ floor: floor.nullable(), chassis: chassis.nullable(), gear: gear.nullable() })
  .describe('what stands under the shell; null where the definition does not say enough')

export type UnderJson = z.infer<typeof underSchema>
