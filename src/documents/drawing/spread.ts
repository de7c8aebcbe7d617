/** One-dimensional spreading: labels wished at places, kept apart by their widths, moved as little as can be. */

/**
 * Places as close to the wished ones (ascending) as a least gap allows, least squares, order kept, inside [from, to].
 * `gap[i]` is the distance wanted between label i and i + 1. When the room is too short the gaps are kept and the last labels run over `to`.
 * Method: pool adjacent violators.
 */
export function spread(wished: readonly number[], gap: (i: number) => number, from = -Infinity, to = Infinity): readonly number[] {
  const offsets: number[] = []
  for (let i = 0; i < wished.length; i++) offsets.push(i === 0 ? 0 : offsets[i - 1] + gap(i - 1))
  const pools: { sum: number; count: number }[] = []
  wished.forEach((at, i) => {
    pools.push({ sum: at - offsets[i], count: 1 })
    while (pools.length > 1) {
      const [a, b] = [pools[pools.length - 2], pools[pools.length - 1]]
      if (a.sum / a.count <= b.sum / b.count) break
      pools.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count })
    }
  })
  const last = offsets[offsets.length - 1] ?? 0
  const high = Math.max(from, to - last)
  const out: number[] = []
  for (const { sum, count } of pools) {
    const base = Math.min(Math.max(sum / count, from), high)
    for (let n = 0; n < count; n++) out.push(base + offsets[out.length])
  }
  return out
}
