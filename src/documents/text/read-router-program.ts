/** Reads a router program back: every compensated cut as an outline in metres, with the way it runs. The verifier of what was written. */
import type { Outline } from '../../derive/nouns.js'

export interface ReadCut {
  /** between the arc that enters and the arc that leaves */
  readonly path: Outline
  readonly depth: number
  /** the arcs that enter and leave, their ends */
  readonly enter: readonly [number, number]
  readonly leave: readonly [number, number]
  /** plunged where, with the compensation off */
  readonly plunge: readonly [number, number]
}

export interface ReadRouter {
  readonly cuts: readonly ReadCut[]
  readonly held: readonly (readonly [number, number])[]
  /** whole sentences */
  readonly faults: readonly string[]
}

type Vertex = [number, number, number]

export function readRouterProgram(text: string): ReadRouter {
  const cuts: ReadCut[] = []
  const held: [number, number][] = []
  const faults: string[] = []
  let [x, y, z] = [Number.NaN, Number.NaN, Number.NaN]
  let going: { vertices: Vertex[]; plunge: readonly [number, number]; depth: number } | null = null
  text.split('\n').forEach((line, i) => {
    const hold = /^\(HOLD DOWN AT X(-?[\d.]+) Y(-?[\d.]+)\)$/.exec(line)
    if (hold) held.push([Number(hold[1]) / 1000, Number(hold[2]) / 1000])
    if (!/^N\d/.test(line)) return
    const code = line.replace(/\([^)]*\)/g, '')
    const word = (letter: string): number | null => {
      const found = new RegExp(`\\s${letter}(-?[\\d.]+)`).exec(code)
      return found ? Number(found[1]) : null
    }
    const [nx, ny, nz] = [word('X'), word('Y'), word('Z')]
    const to: [number, number] = [nx === null ? x : nx / 1000, ny === null ? y : ny / 1000]
    if (/\bG41\b/.test(code)) going = { vertices: [[to[0], to[1], 0]], plunge: [x, y], depth: -z }
    else if (/\bG40\b/.test(code) && going) {
      cuts.push(finished(going, faults, i + 1))
      going = null
    } else if (going && nx !== null) {
      const arc = /\bG0([23])\b/.exec(code)
      if (arc) {
        const here = going.vertices[going.vertices.length - 1]
        const [cx, cy] = [here[0] + (word('I') ?? 0) / 1000, here[1] + (word('J') ?? 0) / 1000]
        const [r0, r1] = [Math.hypot(here[0] - cx, here[1] - cy), Math.hypot(to[0] - cx, to[1] - cy)]
        if (Math.abs(r0 - r1) > 3e-6) faults.push(`Line ${i + 1}: the arc begins ${r0} m from its middle and ends ${r1} m from it.`)
        const turn = Math.atan2(to[1] - cy, to[0] - cx) - Math.atan2(here[1] - cy, here[0] - cx)
        const full = 2 * Math.PI
        const sweep = arc[1] === '3' ? ((turn % full) + full) % full : -(((-turn % full) + full) % full)
        here[2] = Math.tan(sweep / 4)
      }
      going.vertices.push([to[0], to[1], 0])
    }
    if (/\bG00\b/.test(code) && going) faults.push(`Line ${i + 1} moves fast while the cutter is in the board.`)
    if (nz !== null) z = nz / 1000
    ;[x, y] = to
  })
  return { cuts, held, faults }
}

/** The first arc enters and the last leaves; what lies between must close. */
function finished(
  going: { vertices: Vertex[]; plunge: readonly [number, number]; depth: number },
  faults: string[],
  line: number,
): ReadCut {
  const { vertices, plunge, depth } = going
  const path = vertices.slice(1, -1)
  const [first, last] = [path[0], path[path.length - 1]]
  if (Math.hypot(first[0] - last[0], first[1] - last[1]) > 2e-6) faults.push(`The cut that ends on line ${line} does not close.`)
  const [enter, leave] = [vertices[0], vertices[vertices.length - 1]]
  return { path: path.slice(0, -1), depth, enter: [enter[0], enter[1]], leave: [leave[0], leave[1]], plunge }
}
