/** Every hole of every flat pattern against the edges of its own sheet: outline and cuts, exactly. */
import { developed, undeveloped } from '../../maths/development.js'
import { distanceToOutline } from '../../maths/outline.js'
import type { Check, FastenerRow, Part, Pattern } from '../../derive/nouns.js'
import { fastenerId, placeOf, rowsById } from '../../derive/holes.js'
import { signedDistance } from '../../derive/shell/opening-shape.js'
import type { Plate } from '../../derive/shell/plates.js'
import { distanceCheck, HAIR, mm } from '../check.js'
import type { Ground } from './ground.js'

const SOURCE = 'AC 43.13-1B, paragraph 4-57c(1): edge distance of a single row, diameters by the shop rule'

interface Worst { readonly part: Part; readonly row: FastenerRow; readonly index: number; readonly distance: number; readonly limit: number }

/** Nearest edge of each hole as a share of what it needs; the worst hole of each row in the pattern. */
function worstByRow(ground: Ground, part: Part, pattern: Pattern, plate: Plate): Worst[] {
  const rows = rowsById(ground.derived.rows)
  const factor = ground.input.rules.edgeDistance
  const set = pattern.holes
  const width = Math.max(...pattern.outline.map((p) => p[0]))
  const height = Math.max(...pattern.outline.map((p) => p[1]))
  const out: (Worst | undefined)[] = []
  for (let k = 0; k < set.x.length; k++) {
    const row = rows.get(set.rows[set.row[k]])
    if (!row) continue
    const limit = factor * row.diameter
    const x = set.x[k]
    const y = set.y[k]
    let d = plate.ring ? Infinity : Math.min(x, y, width - x, height - y)
    const i = set.index[k]
    d = Math.min(d, toCuts(ground, plate, pattern, row, i, x, y, limit))
    const best = out[set.row[k]]
    if (!best || d < best.distance) out[set.row[k]] = { part, row, index: i, distance: d, limit }
  }
  return out.filter((w): w is Worst => w !== undefined)
}

/** On the developed skin first; where that is close and the layer is stretched against it, on the layer's own flat. */
function toCuts(ground: Ground, plate: Plate, pattern: Pattern, row: FastenerRow, i: number, x: number, y: number, limit: number): number {
  const shapes = plate.ring ? [plate.ring.inner, plate.ring.outer] : plate.cuts
  if (shapes.length === 0) return Infinity
  const v = developed(ground.derived.shell.laid.skin, row.girth[i])
  let best = Infinity
  for (const s of shapes) best = Math.min(best, Math.abs(signedDistance(s, row.station[i], v)))
  if (plate.kind === 'strake' || best > 3 * limit) return best
  let exact = Infinity
  for (const cut of pattern.cuts) exact = Math.min(exact, distanceToOutline(cut.outline, x, y))
  return plate.ring ? Math.min(exact, distanceToOutline(pattern.outline, x, y)) : exact
}

export function edgeDistances(ground: Ground): Check[] {
  const { parts, shell } = ground.derived
  const best = new Map<string, Worst>()
  const failing: Worst[] = []
  let at = 0
  for (const part of parts) {
    for (const pattern of part.patterns) {
      const plate = shell.plates[at++]
      if (pattern.holes.x.length === 0) continue
      for (const w of worstByRow(ground, part, pattern, plate)) {
        if (w.distance < w.limit - HAIR) failing.push(w)
        const b = best.get(part.kind)
        if (!b || w.distance / w.limit < b.distance / b.limit) best.set(part.kind, w)
      }
    }
  }
  return [
    ...failing.map((w) => say(w, `edge.${w.part.id}.${w.row.id}`, `${fastenerId(w.row, w.index)} stands ${mm(w.distance)} mm from the edge of ${w.part.id}; it needs ${mm(w.limit)} mm.`)),
    ...[...best].map(([kind, w]) => say(w, `edge.${kind}`, `The hole nearest an edge in any ${kind} is ${fastenerId(w.row, w.index)} in ${w.part.id}, ${mm(w.distance)} mm from it; the least is ${mm(w.limit)} mm.`)),
  ]
}

function say(w: Worst, id: string, says: string): Check {
  return distanceCheck({ id, says, source: SOURCE, places: [placeOf(w.row, w.index)], concerns: [w.part.id, w.row.id] }, w.limit, w.distance)
}

/** Fasteners that stand on the edge of a member they do not go through: their heads would rock on its step. */
export function edgesUnderHeads(ground: Ground): Check[] {
  const { rows } = ground.derived
  const boxes = memberBoxes(ground)
  const found = new Map<string, Check>()
  for (const row of rows) {
    const inner = row.kind === 'lining'
    const d = row.diameter
    for (let i = 0; i < row.station.length; i++) {
      const x = row.station[i]
      const g = row.girth[i]
      for (const box of boxes) {
        if (box.inner !== inner || x < box.x0 - d || x > box.x1 + d || g < box.g0 - d || g > box.g1 + d) continue
        const out = Math.hypot(Math.max(box.x0 - x, x - box.x1, 0), Math.max(box.g0 - g, g - box.g1, 0))
        if (out <= 0 || out >= d - HAIR) continue
        const key = `${row.id} ${box.part}`
        if (found.has(key)) continue
        found.set(key, distanceCheck({
          id: `step.${row.id}.${box.part}`,
          says: `${fastenerId(row, i)} stands ${mm(out)} mm outside the edge of ${box.part} without going through it; a head needs ${mm(d)} mm of level metal.`,
          source: 'common practice, no source: a head never sits on a step', places: [placeOf(row, i)], concerns: [row.id, box.part],
        }, d, out))
      }
    }
  }
  return [...found.values()]
}

interface Box { readonly part: string; readonly x0: number; readonly x1: number; readonly g0: number; readonly g1: number; readonly inner: boolean }

/** Members as rectangles of station and girth; a severed frame is as many as it has pieces. Rims have rules of their own. */
function memberBoxes(ground: Ground): Box[] {
  const boxes: Box[] = []
  for (const plate of ground.derived.shell.plates) {
    if (plate.ring) continue
    const inner = plate.face === 'inner flange' || plate.face === 'barrel-side lip' || plate.kind === 'lining'
    if (plate.kind === 'frame' || plate.kind === 'joint-frame') {
      let from = plate.g0
      const skin = ground.derived.shell.laid.skin
      for (const cut of plate.cuts) {
        const to = undeveloped(skin, cut.v0)
        if (to > from) boxes.push({ part: plate.part, x0: plate.x0, x1: plate.x1, g0: from, g1: to, inner })
        from = undeveloped(skin, cut.v1)
      }
      if (plate.g1 > from) boxes.push({ part: plate.part, x0: plate.x0, x1: plate.x1, g0: from, g1: plate.g1, inner })
    } else boxes.push({ part: plate.part, x0: plate.x0, x1: plate.x1, g0: plate.g0, g1: plate.g1, inner })
  }
  return boxes
}
