/** Every hole of every flat pattern against the edges of its own sheet: outline and cuts, exactly. */

import { edgeRatio, minimumEdge } from '../../derive/common/spacing.formulas.js'
import { fastenerId, placeOf, rowsById } from '../../derive/holes.js'
import type { Check, FastenerRow, Part, Pattern } from '../../derive/nouns.js'
import { signedDistance } from '../../derive/shell/opening-shape.js'
import type { Plate } from '../../derive/shell/plates.js'
import { developed, undeveloped } from '../../maths/development.js'
import { boundsOf, distanceToOutline } from '../../maths/outline.js'
import { distanceCheck, HAIR, mm } from '../check.js'
import type { Ground } from './ground.js'
import { reachIn } from './spacing.js'

const SOURCE = 'AC 43.13-1B, paragraph 4-57c(1): edge distance of a single row, diameters by the shop rule'

interface Worst {
  readonly part: Part
  readonly row: FastenerRow
  readonly index: number
  readonly distance: number
  readonly limit: number
}

/**
 * The worst hole of each row in a pattern. Distances are first taken on the developed skin, where every cut is a rounded
 * rectangle; a deeper layer is shorter by at most `shrink`, so only holes that might then be short are measured on their own flat.
 */
function worstByRow(ground: Ground, part: Part, pattern: Pattern, plate: Plate): Worst[] {
  const rows = rowsById(ground.derived.rows)
  const factor = ground.input.rules.edgeDistance
  const set = pattern.holes
  const [, , width, height] = boundsOf(pattern.outline)
  const shrink = plate.kind === 'strake' ? 1 : shrinkOf(ground, plate)
  const best: ({ k: number; least: number } | undefined)[] = []
  const out: Worst[] = []
  const measure = (k: number): Worst | null => {
    const row = rows.get(set.rows[set.row[k]])
    return row
      ? {
          part,
          row,
          index: set.index[k],
          distance: exactly(pattern, plate, set.x[k], set.y[k], width, height),
          limit: factor * row.diameter,
        }
      : null
  }
  for (let k = 0; k < set.x.length; k++) {
    const row = rows.get(set.rows[set.row[k]])
    if (!row) continue
    const least = Math.min(
      plate.ring ? Infinity : Math.min(set.x[k], set.y[k], width - set.x[k], height - set.y[k]),
      shrink * toCuts(ground, plate, row, set.index[k]),
    )
    const b = best[set.row[k]]
    if (!b || least < b.least) best[set.row[k]] = { k, least }
    if (least < factor * row.diameter - HAIR) {
      const w = measure(k)
      if (w && w.distance < w.limit - HAIR) out.push(w)
    }
  }
  const shown = best.flatMap((b) => (b ? [measure(b.k)] : [])).filter((w): w is Worst => w !== null)
  const failing = new Map<string, Worst>()
  for (const w of out) {
    const f = failing.get(w.row.id)
    if (!f || w.distance < f.distance) failing.set(w.row.id, w)
  }
  return shown.map((w) => failing.get(w.row.id) ?? w)
}

/** Least ratio of a length on this plate to the same length on the skin. */
function shrinkOf(ground: Ground, plate: Plate): number {
  const skin = Math.max(...ground.derived.shell.laid.skin.slope)
  return Math.min(1, Math.min(...plate.development.slope) / skin)
}

function toCuts(ground: Ground, plate: Plate, row: FastenerRow, i: number): number {
  const shapes = plate.ring ? [plate.ring.inner, plate.ring.outer] : plate.cuts
  if (shapes.length === 0) return Infinity
  const v = developed(ground.derived.shell.laid.skin, row.girth[i])
  const station = row.station[i]
  let best = Infinity
  for (const s of shapes) {
    // only a hole near the shape's box can be near its outline
    const away = Math.max(s.x0 - station, station - s.x1, s.v0 - v, v - s.v1)
    if (away < best) best = Math.min(best, Math.abs(signedDistance(s, station, v)))
  }
  return best
}

function exactly(pattern: Pattern, plate: Plate, x: number, y: number, width: number, height: number): number {
  let best = plate.ring ? distanceToOutline(pattern.outline, x, y) : Math.min(x, y, width - x, height - y)
  for (const cut of pattern.cuts) best = Math.min(best, distanceToOutline(cut.outline, x, y))
  return best
}

export function edgeDistances(ground: Ground): Check[] {
  const { parts, shell } = ground.derived
  const { memo } = shell.laid
  const best = new Map<string, Worst>()
  const failing: Worst[] = []
  let at = 0
  for (const part of parts) {
    for (const pattern of part.patterns) {
      const plate = shell.plates[at++]
      if (pattern.holes.x.length === 0) continue
      const worst = memo.keep(`edge ${part.id} ${pattern.face}`, [pattern, plate, ground.input.rules], () =>
        worstByRow(ground, part, pattern, plate),
      )
      for (const w of worst) {
        if (w.distance < w.limit - HAIR) failing.push(w)
        const b = best.get(part.kind)
        if (!b || w.distance / w.limit < b.distance / b.limit) best.set(part.kind, w)
      }
    }
  }
  return [
    ...failing.map((w) =>
      say(
        w,
        `edge.${w.part.id}.${w.row.id}`,
        `${fastenerId(w.row, w.index)} stands ${mm(w.distance)} mm from the edge of ${w.part.id}; it needs ${mm(w.limit)} mm.`,
      ),
    ),
    ...[...best].map(([kind, w]) =>
      say(
        w,
        `edge.${kind}`,
        `The hole nearest an edge in any ${kind} is ${fastenerId(w.row, w.index)} in ${w.part.id}, ${mm(w.distance)} mm from it; the least is ${mm(w.limit)} mm.`,
      ),
    ),
  ]
}

function say(w: Worst, id: string, says: string): Check {
  return distanceCheck(
    {
      id,
      says,
      source: SOURCE,
      places: [placeOf(w.row, w.index)],
      concerns: [w.part.id, w.row.id],
      worked: [minimumEdge({ k: w.limit / w.row.diameter, D: w.row.diameter }), edgeRatio({ e: w.distance, D: w.row.diameter })],
    },
    w.limit,
    w.distance,
  )
}

interface Step {
  readonly row: FastenerRow
  readonly index: number
  readonly part: string
  readonly out: number
}

/** Fasteners on or beside the edge of a member they do not go through: their heads would rock on its step. */
export function edgesUnderHeads(ground: Ground): Check[] {
  const { memo } = ground.derived.shell.laid
  const boxes = memberBoxes(ground)
  return ground.derived.rows.flatMap((row) => {
    const reach = reachIn(ground, row)
    const d = row.diameter
    const inner = row.kind === 'lining'
    const near = boxes.filter(
      (b) => b.inner === inner && b.x1 >= reach.x0 - d && b.x0 <= reach.x1 + d && b.g1 >= reach.g0 - d && b.g0 <= reach.g1 + d,
    )
    return memo.keep(`steps ${row.id}`, [row, ...near], () => stepsOf(row, near))
  })
}

function stepsOf(row: FastenerRow, near: readonly Box[]): Check[] {
  const worst = new Map<string, Step>()
  const d = row.diameter
  for (let index = 0; index < row.station.length; index++) {
    const x = row.station[index]
    const g = row.girth[index]
    for (const box of near) {
      if (x < box.x0 - d || x > box.x1 + d || g < box.g0 - d || g > box.g1 + d) continue
      const out = Math.hypot(Math.max(box.x0 - x, x - box.x1, 0), Math.max(box.g0 - g, g - box.g1, 0))
      if (out >= d - HAIR || row.stacks[row.stack[index]].parts.includes(box.part)) continue
      const best = worst.get(box.part)
      if (!best || out < best.out) worst.set(box.part, { row, index, part: box.part, out })
    }
  }
  return [...worst.values()].map(sayStep)
}

function sayStep({ row, index, part, out }: Step): Check {
  const where = out === 0 ? `lands on ${part}` : `stands ${mm(out)} mm outside the edge of ${part}`
  return distanceCheck(
    {
      id: `step.${row.id}.${part}`,
      says: `${fastenerId(row, index)} ${where} without going through it as planned; a head needs ${mm(row.diameter)} mm of level metal.`,
      source: 'common practice, no source: a head never sits on a step',
      places: [placeOf(row, index)],
      concerns: [row.id, part],
    },
    row.diameter,
    out,
  )
}

interface Box {
  readonly part: string
  readonly x0: number
  readonly x1: number
  readonly g0: number
  readonly g1: number
  readonly inner: boolean
}

/** Members as rectangles of station and girth; what is severed is as many as it has pieces. Rims have rules of their own. */
function memberBoxes(ground: Ground): Box[] {
  const { laid, plates } = ground.derived.shell
  return plates
    .filter((p) => !p.ring)
    .flatMap((plate) => laid.memo.settle(`boxes ${plate.part} ${plate.face}`, [plate], () => boxesOf(ground, plate), sameBoxes))
}

function boxesOf(ground: Ground, plate: Plate): Box[] {
  const inner = plate.face === 'inner flange' || plate.face === 'barrel-side lip' || plate.kind === 'lining'
  const box = { part: plate.part, x0: plate.x0, x1: plate.x1, g0: plate.g0, g1: plate.g1, inner }
  if (plate.kind === 'frame' || plate.kind === 'joint-frame') {
    const skin = ground.derived.shell.laid.skin
    const cuts = plate.cuts.map((c): [number, number] => [undeveloped(skin, c.v0), undeveloped(skin, c.v1)])
    return leftOver(plate.g0, plate.g1, cuts).map(([g0, g1]) => ({ ...box, g0, g1 }))
  }
  if (plate.kind !== 'edge-channel') return [box]
  return leftOver(
    plate.x0,
    plate.x1,
    plate.cuts.map((c): [number, number] => [c.x0, c.x1]),
  ).map(([x0, x1]) => ({ ...box, x0, x1 }))
}

function sameBoxes(a: readonly Box[], b: readonly Box[]): boolean {
  return a.length === b.length && a.every((p, i) => p.x0 === b[i].x0 && p.x1 === b[i].x1 && p.g0 === b[i].g0 && p.g1 === b[i].g1)
}

function leftOver(from: number, to: number, cuts: readonly (readonly [number, number])[]): [number, number][] {
  let at = from
  const out: [number, number][] = []
  for (const [a, b] of [...cuts].sort((p, q) => p[0] - q[0])) {
    if (a > at) out.push([at, a])
    at = Math.max(at, b)
  }
  if (to > at) out.push([at, to])
  return out
}
