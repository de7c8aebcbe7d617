/** What a new coach takes over from its pattern: bought things, stated masses and how far they reach, moved along with the frames. */
import { type Change, lengthBy, metres } from './change.js'
import { type Branch, isBranch, type Tree } from './tree.js'

const list = (tree: Tree | undefined): readonly Branch[] => (Array.isArray(tree) ? tree.filter(isBranch) : [])

/** Things with a station and a buttock line. Those of the door go where the door is. */
export const stood = (tree: Tree | undefined, change: Change): Branch[] =>
  list(tree).map((item) => ({
    ...item,
    ...(item.station === undefined ? {} : { station: lengthBy(item.station, change.stationOf) }),
    ...(item.y === undefined ? {} : { y: lengthBy(item.y, (y) => y * change.beam) }),
  }))

const KILOGRAMS = /^([\d.]+) kg$/

function heavier(tree: Tree, by: number): Tree {
  const found = typeof tree === 'string' ? KILOGRAMS.exec(tree) : null
  return found ? `${Number((Number(found[1]) * by).toFixed(1))} kg` : tree
}

/** Items as long as the barrel: how much longer each is now, new over old. */
export function growthOf(extents: Tree | undefined, barrel: number, change: Change): ReadonlyMap<string, number> {
  return new Map(
    list(extents).flatMap(({ item, along }) => {
      const m = metres(along)
      return m === null || m < barrel || typeof item !== 'string' ? [] : [[named(item), (m + change.longer) / m] as const]
    }),
  )
}

/** `"hoop frames (7)"` without its count, which is another now. */
const named = (item: string): string => {
  const plain = item.replace(/ \(\d+\)/, '')
  return plain === item ? item : plain.replace(/^"([A-Za-z ]+)"$/, '$1')
}

export function reaches(extents: Tree | undefined, kept: ReadonlySet<string>, barrel: number, floorHalf: number, change: Change): Branch[] {
  return list(extents)
    .map(({ item, along, across }) => ({
      item: typeof item === 'string' ? named(item) : item,
      along: lengthBy(along, (m) => (m < barrel ? m : m + change.longer)),
      across: lengthBy(across, (m) => (m < 1.7 * floorHalf ? m : m + 2 * change.wider)),
    }))
    .filter(({ item }) => typeof item === 'string' && kept.has(item))
}

/** Every mass but those of openings the new coach has not; long ones grow with it. */
export function masses(tree: Tree | undefined, openings: readonly string[], growth: ReadonlyMap<string, number>, change: Change): Branch[] {
  return stood(tree, change).flatMap((each) => {
    const twins = Array.isArray(each.twins) ? each.twins.map(String) : []
    const opening = twins.find((twin) => twin.startsWith('opening '))
    if ((each.group === 'OP' || opening) && !openings.some((id) => twins.includes(`opening ${id}`))) return []
    const item = typeof each.item === 'string' ? named(each.item) : each.item
    const by = (typeof item === 'string' ? growth.get(item) : undefined) ?? 1
    return [
      {
        ...each,
        item,
        mass: heavier(each.mass, by),
        ...(each.rest === undefined ? {} : { rest: heavier(each.rest, by) }),
        wl: lengthBy(each.wl, (z) => (z > 0 ? z * change.rise : z)),
      },
    ]
  })
}
