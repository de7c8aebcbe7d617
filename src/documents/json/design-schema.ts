/**
 * What `derive --json` prints, described once: the JSON Schema other programs read is made from it, and the type our own
 * writer must satisfy. SI throughout: lengths m, masses kg, areas m2, angles rad. Numbers are rounded to 1e-9.
 *
 * Axes: x aft (station), y right of travel, z up (waterline). Girth is measured from the crown along the outer mould line.
 */
import { z } from 'zod'
import { endDrawnSchema, endJigSchema, sideJigSchema } from './jig-schema.js'
import { roadSchema } from './road-schema.js'
import { underSchema } from './under-schema.js'
import { weightSchema } from './weight-json.js'

const m = (says: string) => z.number().describe(`${says}, m`)
const id = (says: string) => z.string().describe(says)
const point = z.tuple([z.number(), z.number(), z.number()]).describe('x aft, y right, z up, m')
const side = z.enum(['right', 'left', 'centre']).describe('side of travel')
const outline = z
  .array(z.tuple([z.number(), z.number(), z.number()]))
  .describe('closed [x, y, bulge] list, the last joining the first; bulge = tan(angle / 4) to the next, positive anticlockwise; m')

const place = z.object({
  side,
  station: m('station, aft'),
  girth: m('girth from the crown on the outer mould line, unsigned'),
  waterline: m('waterline there'),
  end: z
    .object({ which: z.enum(['nose', 'tail']), y: m('buttock line, right positive') })
    .optional()
    .describe('on an end section; girth is then from the crown down the vertical plane through crown and place'),
  buttock: m('in the floor or under it: buttock line, right positive; girth is then 0').optional(),
  point: point.optional().describe('the same in space, on the outer mould line: x aft, y right, z up, m'),
})

const hole = z.object({
  id: id('the fastener: row/from-to/number, the same in every layer it goes through'),
  row: id('row it belongs to'),
  x: m("on this pattern's own mid surface"),
  y: m("on this pattern's own mid surface"),
  diameter: m('punched diameter'),
  role: z.enum(['full', 'pilot', 'drill']),
  place,
})

const flat = z.object({
  view: z.enum(['outside', 'inside']).describe('seen from'),
  x: z.string().describe('which way x runs: aft, forward, right, left or down'),
  y: z.string().describe('which way y runs'),
  origin: z.object({
    station: m('station of the 0, 0 of the pattern'),
    girth: m('girth of the 0, 0, signed, right positive'),
    says: z.string(),
  }),
})

const face = z.object({
  face: id('which face of the part'),
  flat,
  thickness: m('thickness'),
  outline,
  cuts: z.array(outline).describe('what is cut out of the blank, clipped to it'),
  cutsFor: z.array(z.string()).describe('what each cut is for, in the order of cuts'),
  marks: z.array(
    z.object({
      says: z.string(),
      kind: z.enum(['roll', 'bend', 'centre', 'lap']),
      from: z.tuple([z.number(), z.number()]),
      to: z.tuple([z.number(), z.number()]),
    }),
  ),
  holes: z.array(hole),
})

const part = z.object({
  id: id('permanent id; its mass is explained as part.ID.mass'),
  says: z.string(),
  trade: z.string(),
  kind: z
    .string()
    .describe(
      'strake, frame, joint-frame, stringer, rim, header, post, edge-channel, lining, trim-ring, gore, crown-cap, end-rib, header-ring, end-base, end-lining, floor-panel, rail, cross-member, outrigger, wheel-box-header, a-frame, chassis-plate, bay-bearer, wheel-box or underbelly',
    ),
  side,
  place,
  material: z.string(),
  thickness: m('thickness'),
  thicknessName: z.string().describe('thickness as it is bought'),
  ...face.omit({ thickness: true, face: true, flat: true }).shape,
  face: z.string().nullable().describe('which face is first; null where no flat pattern is known yet'),
  flat: flat.nullable(),
  notComputed: z.string().nullable().describe('why there is no flat pattern yet: what has to be worked out first'),
  faces: z.array(face).describe('further developed faces of the same part, such as an inner flange'),
  mass: z.number().describe('mass, kg'),
  area: z.number().describe('net area of the first face, m2'),
  centre: point.describe('centre of mass: x aft, y right, z up, m'),
  stock: z.string().nullable().describe('sheet it is cut from, by its bought name; null where it is not a sheet'),
  pieces: z.number().int().describe('separate pieces the cuts leave'),
  notes: z.array(z.string()),
})

const row = z.object({
  id: id('permanent id of the row'),
  says: z.string(),
  kind: z.enum(['seam', 'joint', 'hoop', 'base', 'rim', 'toe', 'lining', 'gore', 'cap', 'rib', 'bolt', 'screw']),
  fastener: id('key of the fastener type in the definition'),
  diameter: m('nominal diameter'),
  pitch: m('pitch asked for'),
  fitted: z.array(
    z.object({
      from: z.string(),
      to: z.string(),
      count: z.number().int(),
      spaces: z.number().int(),
      pitch: m('pitch fitted to whole spaces between the two'),
    }),
  ),
  length: m('the most usual length bought; for a blind rivet the upper end of its grip range'),
  lengths: z.array(
    z.object({
      name: z.string().describe('trade name of the length'),
      length: m('length bought'),
      grip: m('grip of the stack'),
      count: z.number().int(),
      parts: z.array(z.string()).describe('what it goes through, outside to inside'),
    }),
  ),
  count: z.number().int(),
  source: z.string().describe('where the pitch and type come from'),
  places: z.array(
    place.extend({
      id: id('the fastener: row/from-to/number'),
      stack: z.number().int().describe('which of lengths it has, from 0'),
      shared: z.array(z.string()).optional().describe('other rows that run through it'),
    }),
  ),
})

const joint = z.object({
  id: id('permanent id of the joint'),
  says: z.string(),
  stack: z
    .array(
      z.object({
        says: z.string(),
        parts: z.array(z.string()),
        material: z.string(),
        thickness: m('thickness'),
        derived: z.boolean().describe('false where another trade will make these parts: their holes are not among parts yet'),
      }),
    )
    .describe('layers, outside to inside'),
  lap: z.string().nullable().describe('lap direction and what it means for water'),
  rows: z.array(row),
})

const pair = z.tuple([z.number(), z.number()]).describe('station and signed girth, m')

const opening = z.object({
  id: id('permanent id'),
  says: z.string(),
  kind: z.string().describe('door, window, vent, hatch, flue, service or wheel'),
  surface: z.string().describe('right, left, roof, wheel, nose or tail'),
  side,
  place,
  width: m('cut width along the station').nullable(),
  height: m('cut height: by waterline on a side, by girth on the roof').nullable(),
  corner: m('corner radius on the developed skin').nullable(),
  mass: z.number().nullable().describe('stated mass of what is fitted in it, kg'),
  outline: outline.describe('on the outer mould line: x station, y signed girth (right positive), bulge; m'),
  open: z.boolean().describe("whether it runs out through the sheet's lower edge"),
  cutIn: z.array(z.string()).describe('skin sheets it is cut in'),
  rim: z.object({ part: z.string().nullable(), row: z.string().nullable(), count: z.number().int(), pitch: m('largest fitted pitch') }),
  lining: z.array(z.string()).describe('lining panels it is cut in'),
  trimRing: z.string().nullable(),
  framing: z.array(z.string()).describe('posts, headers and sills made for it'),
  cutsFrames: z.array(z.string()).describe('frames whose web it cuts'),
  crossesSeams: z.array(z.string()),
  blanket: z.array(z.object({ bay: z.string(), from: pair, to: pair })).describe('gaps in the insulation blanket, bay by bay'),
  end: z
    .object({
      upright: z.boolean().describe('whether the pane stands (a window) or lies (a vent)'),
      sag: m('most that the skin falls away from a flat pane under the rim ring'),
      loop: z.array(point).describe('the edge of the cut'),
    })
    .optional()
    .describe('an opening in an end section, whose outline is in its own pane'),
})

const check = z.object({
  id: id('explained as check.ID'),
  says: z.string(),
  demand: z.number().nullable(),
  capacity: z.number().nullable(),
  unit: z.string().nullable(),
  margin: z.number().nullable().describe('capacity / demand - 1; for a distance available / required - 1; null where nothing is measured'),
  verdict: z.enum(['pass', 'fail', 'caution', 'not-checked']),
  source: z.string(),
  places: z.array(place),
  concerns: z.array(z.string()).describe('ids of the parts, rows and openings it is about'),
  mend: z.string().nullable().describe('what would mend it'),
})

export const designSchema = z.object({
  coach: z.object({
    name: z.string(),
    family: z.string(),
    maker: z.string(),
    market: z.enum(['us', 'uk', 'eu', 'au']),
    date: z.string().describe('ISO date printed on every sheet'),
    revision: z.string().describe('first 12 hex digits of SHA-256 over the canonical definition'),
    schema: z.number().int().describe('version of the written form'),
  }),
  shell: z.object({
    section: z.object({
      points: z.array(
        z.object({
          id: z.string(),
          says: z.string(),
          girth: m('girth from the crown on the outer mould line'),
          y: m('half width there'),
          z: m('waterline there'),
          heading: z.number().describe('0 level outboard, pi / 2 straight down, rad'),
          liningGirth: m("girth on the lining's outer face, mapped along the normal"),
        }),
      ),
      halfGirth: m('crown to toe on one side'),
      floorGirth: m('crown to waterline 0'),
      width: m('overall width'),
      residual: z.number().nullable().describe('largest miss of a fitted size, m; null where nothing was fitted'),
    }),
    frames: z.array(z.object({ id: z.string(), station: m('station of its centre line'), joint: z.enum(['nose', 'tail']).nullable() })),
  }),
  ends: z
    .object({
      reach: m('tip beyond the joint frame'),
      make: z.enum(['formed', 'wrapped']),
      edges: z.array(z.number()).describe("azimuths of the gores' edges from the right joint to the left one, from the centre line, rad"),
      area: z.number().describe('of the lofted surface of one end, m2'),
      centroid: z.object({ out: m('beyond the joint frame'), waterline: m('waterline') }),
      floorPerimeter: m('round the outline at WL 0 from joint to joint'),
      jointEdge: m("outside of the end's own edge at the joint, toe to toe"),
      ribs: z.array(
        z.object({
          id: z.string(),
          kind: z.enum(['seam', 'mid']),
          azimuth: z.number().describe('from the centre line, right positive, rad'),
          length: m('outer mould line, crown to toe'),
          capToBase: m("of which from the cap's row to the base row"),
        }),
      ),
      drawn: endDrawnSchema,
      jig: endJigSchema,
      sideJig: sideJigSchema.describe('the jig of the roof and sides of the barrel'),
    })
    .describe('nose and tail, which are alike but for their openings'),
  parts: z.array(part),
  bolts: z.array(row).describe('lines of bolts and screws of floor and chassis'),
  under: underSchema,
  joints: z.array(joint),
  openings: z.array(opening),
  openingsNotDerived: z
    .array(z.object({ id: z.string(), says: z.string(), surface: z.string() }))
    .describe('written openings that stand on surfaces not derived yet'),
  checks: z.array(check),
  totals: z.object({
    mass: z.number().describe('mass of all parts derived here, kg; explained as total.mass'),
    masses: z.record(z.string(), z.number()).describe('by kind of part, kg; explained as total.mass.KIND'),
    explain: z.object({ mass: z.string(), masses: z.record(z.string(), z.string()) }).describe('ids to ask explain for'),
    fasteners: z.object({
      solid: z.number().int(),
      blind: z.number().int(),
      byLength: z.record(z.string(), z.number().int()).describe('count by fastener type and bought length'),
    }),
    holes: z.number().int().describe('holes in all flat patterns'),
    sheets: z
      .array(z.object({ stock: z.string(), parts: z.array(z.string()), used: m('width used'), available: m('width available') }))
      .describe('sheets of stock the strakes are sheared from'),
    overallLength: m('coupler face to tail'),
    bodyLength: m('nose tip to tail tip'),
    overallWidth: m('overall width'),
  }),
  ...weightSchema,
  ...roadSchema,
  notCovered: z.array(z.string()).describe('what this version does not derive or check'),
})

export type DesignJson = z.infer<typeof designSchema>
type JsonSchema = Readonly<Record<string, unknown>>

/** The published JSON Schema (draft 2020-12) of `derive --json`. */
export function designJsonSchema(): JsonSchema {
  return { title: 'Coachwright derived design', ...z.toJSONSchema(designSchema, { reused: 'ref' }) }
}
