/** Rooms for tanks: clear of cross-members, rails, axle tubes and each other, and over the lower edge of the skin. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import type { Bay } from '../../derive/under-nouns.js'
import { distanceCheck, finding, mm } from '../check.js'

const SOURCE = 'geometry: a tank hangs between members, none through it'

export function baysClear({ under, shell }: Derived): Check[] {
  const { chassis, gear } = under
  if (!chassis) return []
  const foot = shell.points[shell.points.length - 1].z
  return chassis.bays.map((bay) => {
    const rooms = [
      ...chassis.members
        .filter((m) => m.kind !== 'outrigger')
        .map((m) => {
          const [xs, ys] = [m.plan.map((p) => p[0]), m.plan.map((p) => p[1])]
          return {
            to: m.part,
            says: `the ${m.says}`,
            room: apart(bay, [Math.min(...xs), Math.max(...xs)], [Math.min(...ys), Math.max(...ys)], [m.bottom, m.top]),
          }
        }),
      ...(gear?.tubeZ
        ? gear.tubes.map((t) => {
            const half = ((gear.tubeZ?.[1] ?? 0) - (gear.tubeZ?.[0] ?? 0)) / 2
            return {
              to: 'axles',
              says: `the tube of axle ${t.axle}`,
              room: apart(bay, [t.station - half, t.station + half], [-2, 2], gear.tubeZ ?? [0, 0]),
            }
          })
        : []),
      ...chassis.bays.filter((b) => b.id !== bay.id).map((b) => ({ to: b.id, says: `the bay ${b.id}`, room: apart(bay, b.x, b.y, b.z) })),
    ].sort((a, b) => a.room - b.room)
    const [nearest] = rooms
    const told = {
      id: `bay.${bay.id}`,
      source: SOURCE,
      concerns: [bay.id, ...(nearest ? [nearest.to] : [])],
      places: [
        { side: 'centre' as const, station: (bay.x[0] + bay.x[1]) / 2, girth: 0, waterline: bay.z[0], buttock: (bay.y[0] + bay.y[1]) / 2 },
      ],
    }
    const holds = `The bay ${bay.id} for ${bay.says} holds ${Math.round(bay.volume * 1000)} l at the most`
    const deep = foot - bay.z[0]
    if (nearest && nearest.room < -1e-9)
      return {
        ...distanceCheck({ ...told, says: `${holds}, but ${nearest.says} stands ${mm(-nearest.room)} mm into it.` }, 0, nearest.room),
        mend: 'Shorten or move the bay.',
      }
    if (deep > 1e-9)
      return finding(
        {
          ...told,
          says: `${holds}; its bottom hangs ${mm(deep)} mm below the lower edge of the skin, where stones reach it.`,
          mend: 'A shallower tank, or a guard.',
        },
        'caution',
      )
    return finding(
      { ...told, says: `${holds}; nothing stands in it${nearest ? `, and ${nearest.says} is nearest, ${mm(nearest.room)} mm off` : ''}.` },
      'pass',
    )
  })
}

type Pair = readonly [number, number]

/** Between two boxes: the largest of the gaps along the axes; where none parts them, the least move that would, as a negative. */
function apart(bay: Bay, x: Pair, y: Pair, z: Pair): number {
  const gap = (a: Pair, b: Pair): number => Math.max(b[0] - a[1], a[0] - b[1])
  return Math.max(gap(bay.x, x), gap(bay.y, y), gap(bay.z, z))
}
