/** Weight and balance as the JSON of a design has them, and its schema. Null with a reason where nothing was weighed. SI. */
import { z } from 'zod'
import type { Design } from '../../derive/design.js'
import type { CaseWeighed, Room, WeightDerived } from '../../derive/weight-nouns.js'

const text = z.string()
const n = (says: string) => z.number().describe(says)
const place = z.object({ x: z.number(), y: z.number(), z: z.number() })
const room = z.object({
  mass: z.number().nullable().describe('what may still be added there, kg; null where nothing stops it'),
  limit: z.enum(['hitch-least', 'hitch-most', 'gross', 'axle', 'tyre']).nullable(),
  case: z.string().nullable(),
})

const weight = z.object({
  unloaded: n('cylinders full and tanks empty, kg'),
  built: n('everything built in, kg'),
  gross: n('gross rating, kg'),
  capacity: n('cargo it may carry, kg'),
  hitchBand: z.tuple([z.number(), z.number()]).describe('least and greatest load of the hitch as shares'),
  listOnly: z.boolean().describe('whether the stated list alone was weighed'),
  groups: z.array(z.object({ group: text, mass: n('kg'), listed: n('as the list has it, kg'), at: place })),
  lines: z.array(
    z.object({
      id: text,
      says: text,
      group: text,
      by: z.enum(['derived', 'bought', 'weighed', 'stated']),
      mass: n('kg'),
      rest: n('of which stated beside what is derived, kg'),
      listed: z.number().nullable().describe('what the list states of it, kg'),
      at: place,
    }),
  ),
  cases: z.array(
    z.object({
      id: text,
      says: text,
      design: z.boolean().describe('whether the coach is designed for it; the others are limits of stowage'),
      mass: n('kg'),
      at: place,
      hitch: n('kg'),
      share: n('load of the hitch over the whole weight'),
      onAxles: n('kg'),
      axles: z.array(z.object({ station: n('m'), rating: n('kg'), load: n('kg'), left: n('kg'), right: n('kg') })),
      stability: n('sideways acceleration that tips it, g'),
      heightError: z
        .object({ below: z.number().nullable(), above: z.number().nullable() })
        .nullable()
        .describe('error of the ball below and above level at which an axle passes its rating, m'),
    }),
  ),
  places: z.array(z.object({ id: text, says: text, at: place, room })),
  nearest: z
    .array(z.object({ limit: text, case: text, left: n('kg'), margin: n('over what it is a limit of') }))
    .describe('for each limit the case nearest to it, the nearest limit first'),
  waiting: z.array(text).describe('stated items whose twins are not derived'),
  twice: z.array(text).describe('what is counted twice'),
})

export const weightSchema = { weight: z.union([z.object({ notComputed: z.string().describe('why it was not computed') }), weight]) }
const whole = z.object(weightSchema)
type WeightJson = z.infer<typeof whole>

const spot = ([x, y, z]: readonly [number, number, number]) => ({ x, y, z })
const roomTree = ({ mass, limit, case: id }: Room) => ({ mass, limit, case: id })

export function weightJson({ weight: it }: Pick<Design, 'weight'>): WeightJson {
  if ('notComputed' in it) return { weight: { notComputed: it.notComputed } }
  return { weight: weightTree(it) }
}

function weightTree(it: WeightDerived): z.infer<typeof weight> {
  return {
    ...{ unloaded: it.unloaded.value, built: it.built.value, gross: it.gross, capacity: it.capacity.value },
    ...{ hitchBand: [it.hitchBand[0], it.hitchBand[1]], listOnly: it.listOnly },
    groups: it.groups.map(({ group, mass, stated, centre }) => ({ group, mass: mass.value, listed: stated, at: spot(centre) })),
    lines: it.lines.map(({ id, says, group, by, mass, rest, stated, centre }) => ({
      ...{ id, says, group, by, mass: mass.value, rest, listed: stated, at: spot(centre) },
    })),
    cases: it.cases.map(caseTree),
    places: it.places.map(({ id, says, at, room: of }) => ({ id, says, at: spot(at), room: roomTree(of) })),
    nearest: it.nearest.map((each) => ({ ...each })),
    waiting: it.twinned.filter((each) => each.derived === null).map((each) => each.item),
    twice: it.twice.map((each) => each.says),
  }
}

function caseTree({ id, says, design, mass, centre, hitch, share, onAxles, axles, stability, heightError }: CaseWeighed) {
  return {
    ...{ id, says, design, mass: mass.value, at: spot([centre[0].value, centre[1].value, centre[2].value]) },
    ...{ hitch: hitch.value, share: share.value, onAxles: onAxles.value, stability: stability.value },
    axles: axles.map((axle) => ({ ...axle, load: axle.load.value, left: axle.left.value, right: axle.right.value })),
    heightError: heightError && { below: heightError.below?.value ?? null, above: heightError.above?.value ?? null },
  }
}
