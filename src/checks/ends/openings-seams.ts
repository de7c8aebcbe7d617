/** Openings against gore seams and ribs: what is cut, what leaks, and rim rivets that land on a lap or a flange. */
import { ribPart } from '../../derive/ends/members.js'
import type { RibCurve } from '../../derive/ends/rib-curve.js'
import type { Check } from '../../derive/nouns.js'
import type { Vec3 } from '../../maths/vec.js'
import { lazily } from '../../quantity/lazily.js'
import { distanceCheck, finding, HAIR, mm } from '../check.js'
import { type Crossing, crossings, nearestTo } from './along-curve.js'
import { type EndOpening, type EndsGround, fastenerAt, inward, placeAt, placeOfCut, seamWord } from './ground.js'
import { widthBetweenSeams } from './width-between-seams.js'

const LAP_SOURCE = 'common practice, no source: a rim must not run along a lap, where two thicknesses step under its sealant'
const RIB_SOURCE = 'common practice, no source: a cut rib is carried round by header and sill'
const FLANGE_SOURCE = 'common practice, no source: a rim rivet keeps its edge distance from the flange of a rib'

/** A seam that meets the cut's edge more slanting than this runs along it; our choice, no source. */
const SLANT = Math.PI / 4

/** Above the cap's edge there are neither seams nor ribs. */
const capEdge = ({ definition }: EndsGround): number => definition.ends.cap - definition.ends.lap / 2

export function openingAgainstSeams(ground: EndsGround, one: EndOpening): Check[] {
  const { seamCurves, gores } = ground.local.ground
  const below = capEdge(ground)
  const checks: Check[] = []
  const clear: { k: number; curve: RibCurve }[] = []
  const mend = lazily(() => widthBetweenSeams(ground, one))
  for (let k = 1; k < gores; k++) {
    const curve = seamCurves[k]
    const meets = one.opening.crossesSeams.includes(`${one.at.end}-seam-${k}`)
    const through = meets ? crossings(curve, one.cut, below) : []
    if (through.length > 0) checks.push(cutSeam(ground, one, k, through, mend()))
    else if (meets && nearestTo(curve, loopPoints(one), below).distance < ground.definition.ends.lap / 2)
      checks.push(inLap(ground, one, k, mend()))
    else clear.push({ k, curve })
  }
  const told = (list: readonly Check[]): Check[] => (one.cut.upright ? [...list] : list.map(underPlinth))
  const rim = rimPoints(one)
  const nearest = clear.map(({ k, curve }) => ({ k, ...nearestTo(curve, rim, below) })).sort((a, b) => a.distance - b.distance)[0]
  return told(nearest ? [...checks, besideSeam(ground, one, nearest.k, nearest.distance, rim[nearest.index], mend)] : checks)
}

/** A vent on a roof stands on a plinth anyway: its underside can be shaped to a lap, which the rim of a window cannot. */
function underPlinth(check: Check): Check {
  if (check.verdict !== 'fail') return check
  const mend = 'Shape the underside of its plinth to the lap and bed it in sealant, or move it clear of the seam.'
  return { ...check, verdict: 'caution', mend }
}

function inLap(ground: EndsGround, { at, cut }: EndOpening, k: number, mend: string | null): Check {
  return finding(
    {
      id: `opening.${cut.id}.seam.${at.end}-seam-${k}`,
      says: `The cut of ${cut.id} runs into the lap of ${seamWord(at, k)} without crossing it: its rim stands on the step and will leak.`,
      source: LAP_SOURCE,
      places: [placeOfCut(ground, at, cut)],
      concerns: [cut.id, `${at.end}-seam-${k}`],
      mend,
    },
    'fail',
  )
}

function cutSeam(ground: EndsGround, one: EndOpening, k: number, through: readonly Crossing[], mend: string | null): Check {
  const { at, cut } = one
  const rib = ribPart(at.end, { kind: 'seam', number: k })
  const cutsRib = one.opening.cutsFrames.includes(rib)
  const told = {
    id: `opening.${cut.id}.seam.${at.end}-seam-${k}`,
    source: LAP_SOURCE,
    places: through.map((c) => placeAt(ground, at, c.point)),
    concerns: [cut.id, `${at.end}-seam-${k}`, ...(cutsRib ? [rib] : [])],
    mend,
  }
  const what = `${cut.id} cuts ${seamWord(at, k)}${cutsRib ? ' and the rib behind it' : ''} at ${levels(through)}`
  const slanting = through.filter((c) => c.slant > SLANT)
  if (slanting.length > 0) {
    const where = through.length > 1 ? ` at ${levels(slanting)}` : ''
    const says = `${what}, and meets its edge${where} at a slant of ${degrees(slanting[0].slant)} deg: the rim runs along the step there and will leak.`
    return finding({ ...told, says }, 'fail')
  }
  const carried = cutsRib ? ' Header and sill must carry the rib; none is derived yet.' : ''
  return finding({ ...told, says: `${what}: bed the rim over the step in sealant there.${carried}` }, 'caution')
}

const levels = (through: readonly Crossing[]): string => through.map((c) => `WL ${mm(c.point[2])}`).join(' and ')
const degrees = (rad: number): string => ((rad * 180) / Math.PI).toFixed(0)

function besideSeam(ground: EndsGround, one: EndOpening, k: number, distance: number, point: Vec3, mend: () => string | null): Check {
  const { at, cut } = one
  const room = distance - ground.definition.ends.lap / 2
  const says =
    room < 0
      ? `The rim of ${cut.id} touches the lap of ${seamWord(at, k)} at WL ${mm(point[2])}: a rivet of it stands ${mm(-room)} mm inside the lap. It would leak.`
      : `The rim rivets of ${cut.id} stand ${mm(room)} mm from the lap of ${seamWord(at, k)} (WL ${mm(point[2])}); they need ${mm(ground.edge)} mm.`
  const check = distanceCheck(
    {
      id: `opening.${cut.id}.seam`,
      says,
      source: LAP_SOURCE,
      places: [placeAt(ground, at, point)],
      concerns: [cut.id, `${at.end}-seam-${k}`],
    },
    ground.edge,
    room,
  )
  return check.verdict === 'pass' ? check : { ...check, mend: mend() }
}

/** Mid ribs that are cut, and of all ribs left whole the one nearest to the rim's rivets. */
export function openingAgainstRibs(ground: EndsGround, one: EndOpening): Check[] {
  const { at, cut, opening } = one
  const { ribs } = ground.local
  const checks = ribs
    .filter((rib) => rib.kind === 'mid' && opening.cutsFrames.includes(ribPart(at.end, rib)))
    .map((rib) => {
      const through = crossings(rib.outer, cut, capEdge(ground))
      const where = through.length > 0 ? ` at ${levels(through)}` : ', which stops at its rim ring'
      return finding(
        {
          id: `opening.${cut.id}.rib.${ribPart(at.end, rib)}`,
          says: `${cut.id} cuts the mid rib of gore ${rib.number} of the ${at.end}${where}: it needs header and sill to carry it; none is derived yet.`,
          source: RIB_SOURCE,
          places: through.map((c) => placeAt(ground, at, c.point)),
          concerns: [cut.id, ribPart(at.end, rib)],
        },
        'caution',
      )
    })
  const rim = rimPoints(one)
  const nearest = ribs
    .filter((rib) => !opening.cutsFrames.includes(ribPart(at.end, rib)))
    .map((rib) => ({ rib, ...nearestTo(rib.outer, rim, capEdge(ground)) }))
    .sort((a, b) => a.distance - b.distance)[0]
  if (!nearest) return checks
  const room = nearest.distance - ground.definition.shell.frame.flange / 2
  const part = ribPart(at.end, nearest.rib)
  return [
    ...checks,
    distanceCheck(
      {
        id: `opening.${cut.id}.flange`,
        says:
          room < 0
            ? `A rim rivet of ${cut.id} lands on ${part}, ${mm(-room)} mm inside the edge of its flange, and does not go through it as planned.`
            : `The rim rivets of ${cut.id} stand ${mm(room)} mm from the flange edge of ${part}; they need ${mm(ground.edge)} mm.`,
        source: FLANGE_SOURCE,
        places: [placeAt(ground, at, rim[nearest.index])],
        concerns: [cut.id, part],
        mend: room < ground.edge - HAIR ? widthBetweenSeams(ground, one) : null,
      },
      ground.edge,
      room,
    ),
  ]
}

function loopPoints({ at, opening }: EndOpening): Vec3[] {
  return (opening.end?.loop ?? []).map(([x, y, z]) => inward(at, x, y, z))
}

function rimPoints({ at, rim }: EndOpening): Vec3[] {
  return rim.station.map((_, i) => fastenerAt(at, rim, i))
}
