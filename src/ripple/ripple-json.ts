/** What `compare --json` prints, described once for other programs. SI: lengths m, masses kg, forces N; rounded to 1e-9. */
import { z } from 'zod'
import { rounded } from '../documents/json/rounded.js'
import type { Ripple } from './nouns.js'

const names = z.array(z.string())
const both = <T extends z.ZodType>(of: T) => z.strictObject({ before: of, after: of })
const maybeBoth = <T extends z.ZodType>(of: T) => both(of).nullable()
const swap = z.strictObject({ added: names, removed: names })
const side = z.enum(['right', 'left', 'centre'])
const verdict = z.enum(['pass', 'fail', 'caution', 'not-checked'])
const place = z
  .object({ side, station: z.number(), girth: z.number(), waterline: z.number() })
  .loose()
  .describe('station, girth from the crown (unsigned) and waterline, m; on an end section also which end')
const tally = z.array(z.strictObject({ name: z.string(), before: z.number(), after: z.number() }))

const part = z.strictObject({
  id: z.string(),
  says: z.string(),
  kind: z.string(),
  side,
  place,
  material: z.string(),
  thickness: z.string().describe('as it is bought'),
  mass: z.number().describe('kg'),
})

const face = z.strictObject({
  face: z.string(),
  outline: z
    .strictObject({
      by: z.number().describe('greatest distance between the two edges, m'),
      width: both(z.number()),
      height: both(z.number()),
    })
    .nullable()
    .describe('the blank; null where it stays'),
  cuts: z.array(
    z.strictObject({
      opening: z.string(),
      status: z.enum(['added', 'removed', 'changed']),
      by: z.number().nullable().describe('greatest distance between the two edges, m'),
    }),
  ),
  holes: z.array(
    z.strictObject({
      row: z.string(),
      added: z.number().int(),
      removed: z.number().int(),
      moved: z.number().int().describe('holes that stand more than 1e-6 m from where they stood in the flat'),
      by: z.number().describe('greatest distance moved, m'),
      resized: z.number().int().describe('holes of another diameter'),
    }),
  ),
  marks: z.boolean().describe('roll, bend, centre and lap lines differ'),
  lies: z.boolean().describe('the origin or the axes of the pattern on the coach differ'),
})

const partChange = z.strictObject({
  id: z.string(),
  says: z.string(),
  kind: z.string(),
  side,
  material: maybeBoth(z.string()),
  thickness: maybeBoth(z.string()).describe('as it is bought'),
  stock: maybeBoth(z.string().nullable()),
  pieces: maybeBoth(z.number().int()),
  mass: maybeBoth(z.number()).describe('kg'),
  centre: z.number().nullable().describe('how far the centre of mass moved, m'),
  place: maybeBoth(place),
  faces: z.array(face),
  notes: swap,
  called: maybeBoth(z.string()),
  most: z.number().describe('greatest distance anything of it moved in the flat, m'),
})

const joint = z.strictObject({ id: z.string(), says: z.string() })
const jointChange = z.strictObject({
  id: z.string(),
  says: z.string(),
  layers: z.array(
    z.strictObject({
      says: z.string(),
      parts: swap,
      material: maybeBoth(z.string().nullable()),
      thickness: maybeBoth(z.number().nullable()),
    }),
  ),
  lap: maybeBoth(z.string().nullable()),
  rows: swap,
  stacks: z
    .array(
      z.strictObject({
        row: z.string(),
        through: names.describe('outside to inside'),
        count: both(z.number().int()),
        length: both(z.string().nullable()).describe('trade name of the length bought'),
        grip: both(z.number().nullable()).describe('m'),
      }),
    )
    .describe('fasteners through the same parts'),
})

const row = z.strictObject({
  id: z.string(),
  says: z.string(),
  kind: z.string(),
  status: z.enum(['added', 'removed', 'changed']),
  fastener: both(z.string().nullable()),
  solid: z.boolean(),
  count: both(z.number().int()),
  spans: swap.extend({ refitted: names, by: z.number().describe('greatest change of a fitted pitch, m') }),
  bearing: maybeBoth(z.number()).describe('bearing strength of the weakest sheet under one fastener of the most usual stack, N'),
  lengths: swap.describe('fastener type and bought length'),
})

const finding = z.strictObject({
  id: z.string(),
  says: z.string(),
  verdict,
  other: verdict.nullable().describe('what it is in the other design; null where that has no such check'),
  margin: z.number().nullable(),
  places: z.array(place),
  concerns: names,
  mend: z.string().nullable(),
})

const links = { cutsFrames: swap, crossesSeams: swap, framing: swap, cutIn: swap, lining: swap }

export const rippleSchema = z.strictObject({
  coach: both(z.strictObject({ name: z.string(), revision: z.string(), market: z.string() })),
  equal: z.boolean().describe('the same revision'),
  written: z
    .array(both(z.union([z.string(), z.number(), z.boolean(), z.null()])).extend({ path: z.string() }))
    .describe('values of the definition, SI; a bought size by its name; null where it is not written'),
  checks: z.strictObject({
    appeared: z.array(finding).describe('findings that are new or worse, as they are after'),
    gone: z.array(finding).describe('findings that went or are less, as they were before'),
    margins: z.array(
      z.strictObject({
        id: z.string(),
        says: z.string(),
        verdict: both(verdict),
        margin: both(z.number().nullable()),
        mend: z.string().nullable(),
      }),
    ),
    asked: swap.describe('ids of checks that pass and are asked in one design only'),
  }),
  openings: z.array(
    z.strictObject({
      id: z.string(),
      says: z.string(),
      status: z.enum(['added', 'removed', 'changed']),
      place: both(place.nullable()),
      moved: z
        .strictObject({ station: z.number(), girth: z.number(), waterline: z.number() })
        .nullable()
        .describe('m; girth right positive'),
      size: maybeBoth(z.tuple([z.number(), z.number()]).nullable()).describe('width and height of its outline on the developed skin, m'),
      ...links,
    }),
  ),
  parts: z.strictObject({ added: z.array(part), removed: z.array(part), changed: z.array(partChange) }),
  joints: z.strictObject({ added: z.array(joint), removed: z.array(joint), changed: z.array(jointChange) }),
  counts: z.strictObject({
    solid: both(z.number().int()),
    blind: both(z.number().int()),
    holes: both(z.number().int()).describe('in all flat patterns'),
    parts: both(z.number().int()),
    lengths: tally.describe('by fastener type and bought length'),
    rows: z.array(row),
    kinds: tally.describe('fasteners by kind of row'),
    made: tally.describe('parts by kind'),
    sheets: tally.describe('sheets of stock by name'),
  }),
  masses: z.strictObject({ total: both(z.number()), kinds: tally }).describe('kg'),
  loads: z
    .strictObject({
      unloaded: maybeBoth(z.number().nullable()),
      capacity: maybeBoth(z.number().nullable()),
      cases: z.array(
        z.strictObject({
          case: z.string(),
          says: z.string(),
          design: z.boolean().describe('a case the coach is designed for'),
          mass: both(z.number().nullable()),
          hitch: both(z.number().nullable()),
          share: both(z.number().nullable()).describe('of the weight, on the hitch'),
          axle: both(z.number().nullable()).describe('the heaviest'),
        }),
      ),
    })
    .describe('weight and balance, kg; null where a design does not have it'),
  overall: tally.describe('lengths, widths and girths of the coach, m'),
  inward: z
    .array(z.strictObject({ what: z.string(), by: z.number() }))
    .describe('what lies deeper under the outer mould line, which stays; m, negative is outward'),
  documents: z.array(
    z.strictObject({
      path: z.string().describe('in the packet'),
      says: z.string(),
      status: z.enum(['reissue', 'new', 'withdraw']),
      because: names.describe('parts, rows, openings and checks that show differently on it'),
      onlyFigure: z.boolean().describe('nothing on it changed but the small figure of where it sits'),
    }),
  ),
})

/** The published JSON Schema (draft 2020-12) of `compare --json`. */
export const rippleJsonSchema = (): object => ({ title: 'Coachwright ripple', ...z.toJSONSchema(rippleSchema, { reused: 'ref' }) })

/** A ripple as it is printed. */
export const rippleJson = (ripple: Ripple): Ripple => rounded(ripple)
