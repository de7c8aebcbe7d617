/** The upright box round points written one after the other: x, y, x, y … */
export interface Box {
  readonly x0: number
  readonly x1: number
  readonly y0: number
  readonly y1: number
}

export const middleOf = ({ x0, x1, y0, y1 }: Box): readonly [number, number] => [(x0 + x1) / 2, (y0 + y1) / 2]

export function boxRound(lists: readonly (readonly number[])[]): Box {
  let [x0, x1, y0, y1] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const points of lists)
    for (let i = 0; i < points.length; i += 2) {
      x0 = Math.min(x0, points[i])
      x1 = Math.max(x1, points[i])
      y0 = Math.min(y0, points[i + 1])
      y1 = Math.max(y1, points[i + 1])
    }
  return { x0, x1, y0, y1 }
}
