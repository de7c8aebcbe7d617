/** Where every rivet lies that is seen from one side: x, y, x, y …, as the elevation is drawn. */
import type { Design } from '../derive/design.js'
import type { FastenerRow } from '../derive/nouns.js'
import { project, seen } from '../documents/drawing/coach-geometry.js'
import type { Look } from './nouns.js'

/** A row stays the same object while something else is dragged, and with it what is seen of it. */
const SEEN = new WeakMap<FastenerRow, Map<Look, Float32Array>>()

export function rivetsSeen(design: Design, look: Look): Float32Array {
  const lists = design.rows.map((row) => rowSeen(design, row, look))
  const all = new Float32Array(lists.reduce((sum, list) => sum + list.length, 0))
  let at = 0
  for (const list of lists) {
    all.set(list, at)
    at += list.length
  }
  return all
}

function rowSeen(design: Design, row: FastenerRow, look: Look): Float32Array {
  const known = SEEN.get(row) ?? new Map<Look, Float32Array>()
  const kept = known.get(look)
  if (kept) return kept
  const out: number[] = []
  const across = look === 'nose' || look === 'tail'
  for (let i = 0; i < row.station.length; i++) {
    const [x, z] = [row.station[i], row.waterline[i]]
    if (row.end) {
      const y = row.end.y[i]
      if (across) {
        if (row.end.which === look) out.push(y, z)
      } else if (look === 'plan' ? seen(design, 'plan', row.girth[i]) : look === 'right' ? y > -1e-9 : y < 1e-9)
        out.push(x, look === 'plan' ? y : z)
    } else if (!across && seen(design, look, row.girth[i])) {
      const [s, level] = look === 'plan' ? project(design, 'plan', x, row.girth[i]) : [x, z]
      out.push(s, level)
    }
  }
  const list = Float32Array.from(out)
  SEEN.set(row, known.set(look, list))
  return list
}
