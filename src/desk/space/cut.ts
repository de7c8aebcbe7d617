/** A flat cut through the coach: what stands between it and the eye is taken away. m. */
import type { Vec3 } from '../../maths/vec.js'

/** Along the coach at a buttock line, across it at a station, level at a waterline. */
export type CutWay = 'along' | 'across' | 'level'

const AXIS: Readonly<Record<CutWay, 0 | 1 | 2>> = { across: 0, along: 1, level: 2 }

export interface CutPlane {
  /** toward what is taken away */
  readonly normal: Vec3
  readonly at: number
}

/** `ahead` is the way the eye looks. */
export function cutPlane(way: CutWay, at: number, ahead: Vec3): CutPlane {
  const axis = AXIS[way]
  const sign = ahead[axis] > 0 ? -1 : 1
  const normal: [number, number, number] = [0, 0, 0]
  normal[axis] = sign
  return { normal, at: sign * at }
}

/** From where to where a cut may stand: as far as the things reach. */
export function cutRange(way: CutWay, boxes: Iterable<Float32Array>): readonly [number, number] {
  const axis = AXIS[way]
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const places of boxes)
    for (let i = axis; i < places.length; i += 3) {
      low = Math.min(low, places[i])
      high = Math.max(high, places[i])
    }
  return low <= high ? [low, high] : [0, 1]
}
