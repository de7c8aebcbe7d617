/**
 * Where an opening could stand without a finding: stations free of frame flanges, other openings and the barrel's ends,
 * found by taking the forbidden intervals out of the barrel, exactly.
 */

import type { OpeningShape } from '../../derive/shell/opening-shape.js'
import { lapsOf } from '../../derive/shell/sheets.js'
import { developed } from '../../maths/development.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import { HAIR, mm } from '../check.js'
import { type Ground, halfFlange } from './ground.js'

type Interval = readonly [from: number, to: number]

/** Intervals of the centre's station that are clean, ascending. m. */
function cleanStations(ground: Ground, shape: OpeningShape, half: number): Interval[] {
  const { input } = ground
  const room = ground.line + ground.edge
  let free: Interval[] = [[input.frames[0].station + half, input.frames[input.frames.length - 1].station - half]]
  for (const f of input.frames) {
    const w = halfFlange(ground, f)
    free = without(free, f.station - w - room - half, f.station + w + room + half)
  }
  for (const other of ground.derived.shell.laid.shapes) {
    if (other.id === shape.id || other.v0 - 2 * ground.reach >= shape.v1 || other.v1 + 2 * ground.reach <= shape.v0) continue
    free = without(free, other.x0 - 2 * ground.reach - half, other.x1 + 2 * ground.reach + half)
  }
  return free
}

function without(free: readonly Interval[], from: number, to: number): Interval[] {
  return free
    .flatMap(([a, b]): Interval[] => [
      [a, Math.min(b, from)],
      [Math.max(a, to), b],
    ])
    .filter(([a, b]) => b >= a - HAIR)
}

/** The sentence that offers the nearest clean place along the coach and the middle of that space, or the width that would fit. */
export function nearestClean(ground: Ground, shape: OpeningShape): string | null {
  if (shape.surface === 'wheel') return null
  const at = (shape.x0 + shape.x1) / 2
  const width = shape.x1 - shape.x0
  const best = nearestOf(cleanStations(ground, shape, width / 2), at)
  if (!best) return widthThatFits(ground, shape, at, width)
  const station = inward(best, at)
  const middle = (best[0] + best[1]) / 2
  const place = `The nearest clean place is STA ${mm(station)} (${mm(Math.abs(station - at))} mm ${station > at ? 'aft' : 'forward'})`
  return Math.abs(middle - station) < TENTH ? `${place}.` : `${place}; the middle of that clear space is STA ${mm(middle)}.`
}

function nearestOf(free: readonly Interval[], at: number): Interval | undefined {
  const away = ([a, b]: Interval): number => Math.max(a - at, at - b, 0)
  return [...free].sort((p, q) => away(p) - away(q))[0]
}

const TENTH = 1e-4

/** The nearest place in an interval, to a tenth of a millimetre on its inner side: what is printed must be clean when it is typed. */
function inward([a, b]: Interval, at: number): number {
  if (at < a) return Math.min(b, Math.ceil((a - HAIR) / TENTH) * TENTH)
  return at > b ? Math.max(a, Math.floor((b + HAIR) / TENTH) * TENTH) : at
}

function widthThatFits(ground: Ground, shape: OpeningShape, at: number, width: number): string {
  const none = `Nowhere along this coach is ${mm(width)} mm clear between frames and other openings at this height`
  const bay = nearestOf(cleanStations(ground, shape, 0), at)
  // a bay far narrower is no answer to somebody who asked for a window across two
  if (!bay || bay[1] - bay[0] < width / 2) return `${none}; a cut frame with its header and posts is what remains.`
  const fits = Math.floor((bay[1] - bay[0] + HAIR) * 1000) / 1000
  return `${none}. At most ${mm(fits)} mm fit clean nearest here, centred at STA ${mm((bay[0] + bay[1]) / 2)}; else a frame is cut, with header and posts.`
}

/** Waterlines of the centre that keep the rim off every lap, nearest first; for a side opening. */
export function nearestCleanHeight(ground: Ground, shape: OpeningShape): string | null {
  const o = shape.definition
  if (!o || o.waterline === null || shape.surface === 'roof' || shape.surface === 'wheel') return null
  const { skin } = ground.derived.shell.laid
  const chain = ground.derived.shell.section.chain
  const room = ground.line + ground.edge
  const clear = (z: number): boolean => {
    const head = girthAtZ(chain, z + o.height / 2)
    const sill = girthAtZ(chain, z - o.height / 2)
    if (head === null || sill === null) return false
    const [v0, v1] = [developed(skin, head) - room, developed(skin, sill) + room]
    return lapsOf(ground.input).every((lap) => {
      if (lap.side !== 'right') return true
      const [a, b] = [developed(skin, lap.girth - lap.half), developed(skin, lap.girth + lap.half)]
      return v1 <= a + HAIR || v0 >= b - HAIR
    })
  }
  for (let step = 1; step <= 600; step++) {
    for (const sign of [-1, 1]) {
      const z = o.waterline + (sign * step) / 1000
      if (clear(z)) return `The nearest clean height is WL ${mm(Math.round(z * 1000) / 1000)} (${step} mm ${sign > 0 ? 'up' : 'down'}).`
    }
  }
  return null
}
