/**
 * Where each fastener of a row stands on the sheet laid flat, and how far the surface has turned there. On the barrel x is
 * the station and y the signed girth. On an end a row is laid out along itself, x its length, but an opening's rim, whose
 * x is the buttock line and y the girth.
 */
import type { Design } from '../../derive/design.js'
import type { FastenerRow } from '../../derive/nouns.js'
import { sectionOf } from '../../derive/shell/section.js'
import { headingAt } from '../../maths/tangent-chain.js'
import { cross, dot, length, sub, type Vec3 } from '../../maths/vec.js'

export interface HolePlace {
  readonly x: number
  readonly y: number
  /** heading of the surface along the row, rad */
  readonly turn: number
}

/** To a nanometre, so that another engine's last bit of a sine changes no trial. */
const nano = (v: number): number => Math.round(v * 1e9) / 1e9

export function placesIn(design: Pick<Design, 'definition'>): (row: FastenerRow) => readonly HolePlace[] {
  const { withFlange } = sectionOf(design.definition)
  return (row) => {
    if (row.end && row.kind !== 'rim') return along(row, row.end.y)
    const y = row.end ? row.end.y : row.girth
    return row.station.map((station, i) => {
      const girth = row.girth[i]
      const heading = row.end ? 0 : Math.sign(girth) * headingAt(withFlange, Math.min(Math.abs(girth), withFlange.length))
      return row.end ? { x: nano(y[i]), y: nano(girth), turn: 0 } : { x: nano(station), y: nano(girth), turn: nano(heading) }
    })
  }
}

function along(row: FastenerRow, y: readonly number[]): readonly HolePlace[] {
  const points = row.station.map((x, i): Vec3 => [x, y[i], row.waterline[i]])
  let [run, turn] = [0, 0]
  return points.map((p, i) => {
    if (i > 0) run += length(sub(p, points[i - 1]))
    if (i > 1) {
      const [a, b] = [sub(points[i - 1], points[i - 2]), sub(p, points[i - 1])]
      turn += Math.atan2(length(cross(a, b)), dot(a, b))
    }
    return { x: nano(run), y: 0, turn: nano(turn) }
  })
}
