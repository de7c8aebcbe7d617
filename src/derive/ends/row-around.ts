/** A row round an end at one level, from joint to joint, and the path it is laid on. */
import { length, sub } from '../../maths/vec.js'
import type { Ground } from './ground.js'
import { END_DISTANCE, type LocalRow, lay, type Mark, started } from './laid-row.js'
import { byGirth, type EndSkin, type Level } from './skin.js'

/** Where a row round the end crosses a rib. */
export interface Crossing {
  readonly phi: number
  readonly mark: string
}

/** A row round the end at one level, from joint to joint, with a fastener at every rib; `lined` tells where the lining's crosses them. */
export function aroundRow(
  ground: Ground,
  skin: EndSkin,
  level: 'cap' | 'base' | 'toe',
  lined: readonly Crossing[] | null = null,
): LocalRow {
  const says = { cap: 'crown cap to gores', base: 'gores to the base channel', toe: 'toe flange to underbelly' }[level]
  const draft = lined
    ? started(ground, 'lining-cap', 'lining to the header ring', 'lining', 'lining')
    : started(ground, level, says, level, level === 'cap' ? 'gore' : level)
  // across the ring's web from the skin's rivets
  const at: Level = lined ? byGirth(ground.input.ends.cap - 2 * ground.input.shell.frame.rowOffset) : { at: level }
  const path = around(skin, at)
  // clear of the barrel's overlap, where the joint's own rows stand
  const inset = ground.input.shell.joint.overlap / 2 + END_DISTANCE * draft.diameter
  const ribs = lined ?? [
    ...ground.mids.map((phi, i) => ({ phi, mark: `mid-${i + 1}` })),
    ...ground.edges.slice(1, -1).map((phi, i) => ({ phi, mark: `seam-${i + 1}` })),
  ]
  const marks: Mark[] = [
    { mark: 'joint-right', u: inset },
    ...ribs
      .map(({ phi, mark }) => ({ mark, u: path.lengthAt(phi), shared: level === 'toe' || lined ? [] : [mark] }))
      .filter(({ u }) => u > inset + draft.pitch && u < path.length - inset - draft.pitch)
      .sort((a, b) => a.u - b.u),
    { mark: 'joint-left', u: path.length - inset },
  ]
  return lay(draft, marks, (u) => skin.locate(path.phiAt(u), at))
}

interface Path {
  readonly length: number
  readonly lengthAt: (phi: number) => number
  readonly phiAt: (length: number) => number
}

/** Steps a quarter of a turn is walked in. Chords shorten the path by a few parts in a hundred thousand, which only the even spacing feels. */
const STEPS = 40

/** The path round an end at one level, from the right joint (+90 deg) to the left one, which is alike on both hands. */
function around(skin: EndSkin, level: Level): Path {
  const phis = Array.from({ length: 2 * STEPS + 1 }, (_, i) => (Math.PI / 2) * (1 - i / STEPS))
  const lengths = [0]
  let before = skin.point(phis[0], level)
  for (let i = 1; i <= STEPS; i++) {
    const here = skin.point(phis[i], level)
    lengths.push(lengths[i - 1] + length(sub(here, before)))
    before = here
  }
  const half = lengths[STEPS]
  for (let i = STEPS - 1; i >= 0; i--) lengths.push(2 * half - lengths[i])
  const between = (xs: readonly number[], ys: readonly number[], x: number): number => {
    const down = xs[0] > xs[xs.length - 1]
    let i = 0
    while (i + 2 < xs.length && (down ? xs[i + 1] > x : xs[i + 1] < x)) i++
    return ys[i] + ((x - xs[i]) / (xs[i + 1] - xs[i])) * (ys[i + 1] - ys[i])
  }
  return { length: 2 * half, lengthAt: (phi) => between(phis, lengths, phi), phiAt: (u) => between(lengths, phis, u) }
}
