/** Openings of one end against each other, against the crown cap above them and the base channel below. */
import { clearance } from '../../derive/ends/cuts.js'
import { meridianGirth } from '../../derive/ends/meridian.js'
import type { Check } from '../../derive/nouns.js'
import { length, sub, type Vec3 } from '../../maths/vec.js'
import { distanceCheck, finding, HAIR, mm } from '../check.js'
import { type EndOpening, type EndsGround, fastenerAt, inward, placeAt, placeOfCut } from './ground.js'

export function openingsApart(ground: EndsGround, all: readonly EndOpening[]): Check[] {
  const need = 2 * ground.reach
  return all.flatMap((a, i) =>
    all.slice(i + 1).map((b) => {
      const room = roomBetween(a, b)
      const says =
        room < 0
          ? `${a.cut.id} and ${b.cut.id} overlap by ${mm(-room)} mm.`
          : `${a.cut.id} and ${b.cut.id} are ${mm(room)} mm apart on the ${a.at.end}; their rim rings need ${mm(need)} mm.`
      return distanceCheck(
        {
          id: `openings.${a.cut.id}.${b.cut.id}`,
          says,
          source: 'geometry: two rim rings behind one skin cannot overlap',
          places: [placeOfCut(ground, a.at, a.cut), placeOfCut(ground, b.at, b.cut)],
          concerns: [a.cut.id, b.cut.id],
          mend: room < need - 1e-9 ? `Move them ${mm(Math.ceil((need - room) * 1000) / 1000)} mm further apart.` : null,
        },
        need,
        room,
      )
    }),
  )
}

/** Least distance between two cuts' edges in space; minus how deep one lies in the other where they overlap. m. */
function roomBetween(a: EndOpening, b: EndOpening): number {
  const loop = ({ at, opening }: EndOpening): Vec3[] => (opening.end?.loop ?? []).map(([x, y, z]) => inward(at, x, y, z))
  const [la, lb] = [loop(a), loop(b)]
  const deepest = Math.min(...lb.map((p) => clearance(a.cut, p)), ...la.map((p) => clearance(b.cut, p)), 0)
  if (deepest < 0) return deepest
  let best = Number.POSITIVE_INFINITY
  for (const p of la) for (let i = 0; i < lb.length; i++) best = Math.min(best, toSegment(p, lb[i], lb[(i + 1) % lb.length]))
  return best
}

function toSegment(p: Vec3, a: Vec3, b: Vec3): number {
  const [ab, ap] = [sub(b, a), sub(p, a)]
  const whole = ab[0] ** 2 + ab[1] ** 2 + ab[2] ** 2
  const t = whole === 0 ? 0 : Math.min(1, Math.max(0, (ab[0] * ap[0] + ab[1] * ap[1] + ab[2] * ap[2]) / whole))
  return length(sub(ap, [ab[0] * t, ab[1] * t, ab[2] * t]))
}

/** The rim's rivets against the cap's lap with its header ring, and against the base channel. */
export function openingBetweenRings(ground: EndsGround, one: EndOpening): Check[] {
  const { definition, local } = ground
  const { ends, shell } = definition
  const { loft, base } = local.ground
  const { rim } = one
  const girth = rim.girth.map(Math.abs)
  const half = Math.max(ends.lap, shell.frame.flange) / 2
  const cap = ring(
    ground,
    one,
    'cap',
    girth,
    girth.map(() => ends.cap),
    half,
  )
  if (base === null) return [cap]
  const at = girth.map((_, i) => meridianGirth(loft, rim.end?.azimuth[i] ?? 0, base))
  return [cap, ring(ground, one, 'base', girth, at, shell.edgeChannel.height / 2)]
}

const RINGS = {
  cap: { what: "the crown cap's lap and its header ring", part: 'header-ring' },
  base: { what: 'the base channel', part: 'base' },
} as const

/** `centre` is the girth of the ring's row at each rivet's azimuth, `half` what the ring takes up each side of it. */
function ring(
  ground: EndsGround,
  one: EndOpening,
  which: keyof typeof RINGS,
  girth: readonly number[],
  centre: readonly number[],
  half: number,
): Check {
  const { at, cut, rim } = one
  const { what, part } = RINGS[which]
  const told = {
    id: `opening.${cut.id}.${which}`,
    source: 'common practice, no source: a rim rivet keeps its edge distance from a ring; a ring that is cut is carried round',
    concerns: [cut.id, `${at.end}-${part}`],
  }
  const off = girth.map((g, i) => g - centre[i])
  const nearest = off.reduce((best, o, k) => (Math.abs(o) < Math.abs(off[best]) ? k : best), 0)
  const places = [placeAt(ground, at, fastenerAt(at, rim, nearest))]
  if (off.some((o) => o > 0) && off.some((o) => o < 0))
    return finding(
      {
        ...told,
        places,
        says: `${cut.id} cuts ${what} of the ${at.end}${which === 'cap' ? ': bed the rim over the step in sealant, and carry the ring round it; no member for that is derived yet.' : ', which closes the end at the floor: it cannot be cut.'}`,
      },
      which === 'cap' ? 'caution' : 'fail',
    )
  const room = Math.abs(off[nearest]) - half
  const says =
    room < 0
      ? `The rim of ${cut.id} runs ${mm(-room)} mm into ${what} of the ${at.end} without crossing it.`
      : `The rim rivets of ${cut.id} stand ${mm(room)} mm from ${what} of the ${at.end}; they need ${mm(ground.edge)} mm.`
  const short = Math.ceil((ground.edge - room) * 1000) / 1000
  const mend =
    room < ground.edge - HAIR
      ? `Move it ${mm(short)} mm ${off[nearest] > 0 ? 'down' : 'up'} along the skin, or make it that much less high.`
      : null
  return distanceCheck({ ...told, says, places, mend }, ground.edge, room)
}
