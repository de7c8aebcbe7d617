/** The JSON form of towing, ride and the rules of the road. SI; damping is a share of critical. */
import { z } from 'zod'

const notComputed = z.object({ notComputed: z.string().describe('why it was not computed') })
const text = z.string()
const n = (says: string) => z.number().describe(says)
const orNull = (says: string) => z.number().nullable().describe(says)

const towing = z.object({
  at: n('speed damping is stated at, m/s'),
  cars: z.array(z.object({ id: text, says: text, mass: n('kg') })),
  cases: z.array(
    z.object({
      id: text,
      says: text,
      mass: n('kg'),
      station: n('of the centre of mass, m'),
      hitchShare: n('load on the ball over the weight'),
      yawInertia: n('about the centre of mass, kg m2'),
    }),
  ),
  steadiness: z.array(
    z.object({
      case: text,
      car: text,
      damping: orNull('at that speed; null where nothing swings'),
      frequency: orNull('of that swing, Hz'),
      zeroDamping: orNull('speed from which a swing does not die, m/s; null where there is none up to 200 km/h'),
      divergence: orNull('speed from which it leaves the straight without swinging, m/s'),
    }),
  ),
  moves: z
    .array(
      z.object({
        car: text,
        case: text,
        damping: z.number().nullable(),
        changes: z.array(z.object({ says: text, damping: z.number().nullable() })),
      }),
    )
    .describe('least steady case of each car, and what moves it most first'),
})

const ride = z.object({
  load: n('on the arm at gross weight, N'),
  armAngle: n('below level, rad'),
  travel: n('from no load, m'),
  torque: z.enum(['measured', 'estimated']),
  rate: n('of the wheel, N/m'),
  frequency: n('of the body on it, Hz'),
  speed: n('of the roads, m/s'),
  frequencies: z.array(z.number()).describe('of the transmissibility, Hz'),
  suspensions: z.array(
    z.object({
      id: z.enum(['rubber', 'rubber-damped', 'leaf']),
      says: text,
      spring: n('N/m'),
      damper: n('N s/m'),
      transmissibility: z.array(z.number()).describe('movement of the floor for one of the road'),
      roads: z.array(
        z.object({
          road: z.enum(['A', 'B', 'C', 'D']),
          body: n('rms, m/s2'),
          felt: n('weighted Wk, m/s2'),
          wheel: n('rms at the spindle, m/s2'),
          says: text,
        }),
      ),
    }),
  ),
})

const labelLine = z.object({ id: text, text, edition: text, overridden: z.string().nullable() })
const road = z.object({
  notApplied: z.string().nullable().describe("why the market's rules were not applied"),
  lamps: z.array(
    z.object({
      device: text,
      count: z.number().int(),
      colour: text,
      where: text,
      least: orNull('height of its middle above the ground, m'),
      greatest: orNull('m'),
      because: text,
    }),
  ),
  coupling: z.object({
    class: z.number().int().nullable(),
    rated: n('kg'),
    chain: n('breaking force of each, N'),
    chainAsked: orNull('N'),
  }),
  tyre: z.object({ name: text, pressure: n('Pa'), carriedByAxle: n('kg') }),
  labels: z.object({
    vin: z.string().nullable(),
    draft: z.array(text).describe('why the labels are drafts; empty when they are not'),
    certification: z.array(labelLine),
    cargo: z.array(labelLine),
    relabelAbove: n('kg'),
  }),
})

export const roadSchema = {
  towing: z.union([notComputed, towing]),
  ride: z.union([notComputed, ride]),
  road: z.union([notComputed, road]),
}
const whole = z.object(roadSchema)
export type RoadJson = z.infer<typeof whole>
