/** Which rows of an end pass through a face of a part, and the holes they make in it. */
import type { HoleSet } from '../nouns.js'
import type { Ground } from './ground.js'
import { type EndRow, faceKey } from './layers.js'

const MET = new WeakMap<readonly EndRow[], ReadonlyMap<string, readonly EndRow[]>>()

/** Rows through each face, gathered once a list of rows: an end has some sixty rows and a hundred faces. */
export function rowsThrough(rows: readonly EndRow[], key: string): readonly EndRow[] {
  const known = MET.get(rows) ?? gatheredByFace(rows)
  MET.set(rows, known)
  return known.get(key) ?? []
}

function gatheredByFace(rows: readonly EndRow[]): ReadonlyMap<string, readonly EndRow[]> {
  const by = new Map<string, EndRow[]>()
  for (const row of rows)
    for (const key of row.through.keys()) {
      const list = by.get(key)
      if (list) list.push(row)
      else by.set(key, [row])
    }
  return by
}

/** Holes of every row that passes through a face, placed by the row's fastener number. */
export function holesOn(
  rows: readonly EndRow[],
  part: string,
  face: string,
  place: (row: EndRow, i: number) => readonly [number, number],
  ground: Ground,
): HoleSet {
  const key = faceKey(part, face)
  const met = rowsThrough(rows, key)
  const total = met.reduce((sum, row) => sum + (row.through.get(key)?.length ?? 0), 0)
  // whole lists at once: an end has some ten thousand holes
  const row = new Array<number>(total)
  const index = new Array<number>(total)
  const x = new Array<number>(total)
  const y = new Array<number>(total)
  const diameter = new Array<number>(total)
  let n = 0
  met.forEach((one, k) => {
    const hole = ground.input.fasteners.find((f) => f.id === one.row.fastener)?.hole
    if (hole === undefined) throw new Error(`row ${one.row.id} has unknown fastener ${one.row.fastener}`)
    for (const i of one.through.get(key) ?? []) {
      const at = place(one, i)
      row[n] = k
      index[n] = i
      x[n] = at[0]
      y[n] = at[1]
      diameter[n] = hole
      n++
    }
  })
  return Object.freeze({ rows: met.map((one) => one.row.id), row, index, x, y, diameter })
}
