/** Where axles, cross-members and tanks of a new coach go: in that order, each clear of what was placed before it. */
import type { Definition } from '../../definition/types.js'
import type { BayDefinition } from '../../definition/under-types.js'
import type { Derived } from '../../derive/index.js'
import { type Change, mm, whole } from './change.js'
import type { Tree } from './tree.js'

/** Kept from what bars a place, so that a rounding does not stand on it, m. */
const SPARE = 0.01

export const meanOf = (stations: readonly number[]): number => stations.reduce((sum, each) => sum + each, 0) / stations.length

/** The pattern's axles as they stand to each other, round another mean station. */
export function spindlesAt({ gear }: Definition, mean: number): readonly number[] {
  const spindles = gear?.spindles ?? []
  return spindles.map((each) => whole(mean + each - meanOf(spindles)))
}

/** Mean axle station at which worst and best of the cases that count lie evenly about the middle of the hitch's band; null where nothing is weighed. */
export function balanced({ weight, definition }: Derived): number | null {
  const written = definition.weight
  if (!('cases' in weight) || !written) return null
  const cases = weight.cases.filter((each) => each.design).map((each) => each.centre[0].value)
  if (cases.length === 0) return null
  const middle = (written.hitch[0] + written.hitch[1]) / 2
  const shareAt = (x: number): number => {
    const shares = cases.map((centre) => (x - centre) / (x - written.ball))
    return (Math.min(...shares) + Math.max(...shares)) / 2
  }
  let [low, high] = [Math.max(...cases, written.ball + SPARE), 2 * Math.max(...cases)]
  // sixty halvings of a coach's length are finer than any figure
  for (let i = 0; i < 60; i++) {
    const x = (low + high) / 2
    if (shareAt(x) < middle) low = x
    else high = x
  }
  return whole((low + high) / 2)
}

/** The clear mean station nearest to the one that is wanted, from `least` on. */
export function clearNear({ under }: Derived, wanted: number, least: number): number {
  const places = (under.gear?.window ?? [])
    .map(({ from, to }) => ({ from: Math.max(from, least), to }))
    .filter(({ from, to }) => to - from > 2 * SPARE)
    .map(({ from, to }) => Math.min(to - SPARE, Math.max(from + SPARE, wanted)))
  return whole(places.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0] ?? wanted)
}

/** Without axles none between the first frame and the last. One at every frame and the pattern's own ahead of the barrel and behind it; aside from an axle tube where one would stand at it. */
export function crossMembers(
  { chassis, frames, rules, gear }: Definition,
  change: Change,
  spindles: readonly number[] | null,
): readonly number[] {
  const stations = frames.map(({ station }) => station)
  const [first, last] = [Math.min(...stations), Math.max(...stations)]
  const outside = (chassis?.crossMembers ?? []).filter((each) => each < first || each > last).map((each) => whole(change.stationOf(each)))
  if (!spindles) return outside
  const room = rules.tubeToCrossMember + SPARE
  const tubes = spindles.map((each) => each - (gear?.arm ?? 0))
  const isClear = (x: number): boolean => tubes.every((tube) => Math.abs(tube - x) >= room - 1e-9)
  const aside = (x: number): number | null => {
    const places = tubes.flatMap((tube) => [tube - room, tube + room]).filter(isClear)
    return isClear(x) ? x : (places.sort((a, b) => Math.abs(a - x) - Math.abs(b - x))[0] ?? null)
  }
  const own = change.frames.flatMap((each) => aside(each) ?? [])
  const all = [...outside, ...own].map(whole).sort((a, b) => a - b)
  // two that were moved to the same side of a tube are one
  return all.filter((each, i) => i === 0 || each - all[i - 1] > 2 * (chassis?.crossMemberFlange ?? 0))
}

export interface TankBay {
  readonly was: BayDefinition
  readonly fore: number
  readonly aft: number
}

/** Each tank hangs between two cross-members, nearest to where it hung, in a room no axle tube crosses and no other tank has. */
export function tankBays(
  { chassis, gear }: Definition,
  change: Change,
  members: readonly number[],
  spindles: readonly number[],
): TankBay[] {
  const half = (chassis?.crossMemberFlange ?? 0) / 2
  const tube = (gear?.tube?.size ?? 0) / 2 + SPARE
  const tubes = spindles.map((each) => each - (gear?.arm ?? 0))
  const taken = new Set<number>()
  return (chassis?.bays ?? []).flatMap((was) => {
    const length = was.aft - was.fore
    const rooms = members.slice(1).flatMap((end, i) => {
      const [fore, aft] = roomIn(members[i] + half, end - half, tubes, tube)
      // a room less than half as long takes no tank worth its fittings
      return taken.has(i) || aft - fore < length / 2 ? [] : [{ i, fore, aft }]
    })
    const middle = change.stationOf((was.fore + was.aft) / 2)
    const off = ({ fore, aft }: { readonly fore: number; readonly aft: number }): number => Math.abs((fore + aft) / 2 - middle)
    const [best] = rooms.sort((a, b) => off(a) - off(b))
    if (!best) return []
    taken.add(best.i)
    const start = Math.min(Math.max(best.fore, middle - length / 2), Math.max(best.fore, best.aft - length))
    return [{ was, fore: up(start), aft: down(Math.min(best.aft, start + length)) }]
  })
}

const up = (m: number): number => Math.ceil(m * 1000 - 1e-6) / 1000
const down = (m: number): number => Math.floor(m * 1000 + 1e-6) / 1000

/** What an axle tube leaves of the room between two members: the longer of its sides. */
function roomIn(fore: number, aft: number, tubes: readonly number[], half: number): readonly [number, number] {
  const inside = tubes.filter((tube) => tube + half > fore && tube - half < aft)
  if (inside.length === 0) return [fore, aft]
  const sides = [[fore, Math.min(...inside) - half] as const, [Math.max(...inside) + half, aft] as const]
  return sides.sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0]
}

/** What a tank can hold of its room: skins, bearers and fittings take the rest. */
const FILLED = 0.85
const LITRES = 1000

/** Litres of a tank in the room it has now. */
export const litresIn = ({ was, fore, aft }: TankBay, litres: number): number =>
  Math.floor(Math.min(litres, (aft - fore) * 2 * was.half * was.depth * FILLED * LITRES))

export const bayTree = ({ was, fore, aft }: TankBay, written: Tree): Tree =>
  typeof written === 'object' && !Array.isArray(written) ? { ...written, id: was.id, from: mm(fore), to: mm(aft) } : written
