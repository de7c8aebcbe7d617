/**
 * How deep each plate's mid surface lies, worked out a second way: by counting what is laid outside it, and not by the
 * zones its development was made from. And its length in space by summing chords, which knows nothing of developing.
 *
 * Depths m inside the outer mould line along the normal; girths signed, right positive.
 */
import { at, girthAtOffset, girthFromOffset, headingAt, type TangentChain } from '../../maths/tangent-chain.js'
import type { Shell } from './index.js'
import { capLaps } from './members.js'
import type { Plate } from './plates.js'
import { ORDER } from './sheets.js'

/** A mid surface: its depth at a girth, and the girths where the depth may jump. */
export interface MidSurface {
  /** what the surface lies inside of: only the skin is bent round the toe */
  readonly chain: TangentChain
  readonly depth: (girth: number) => number
  /** ascending: where depth or curvature changes */
  readonly stops: readonly number[]
}

/** Gives the mid surface of any plate of a shell. */
export function midSurfaces(shell: Shell): (plate: Plate) => MidSurface {
  const skins = shell.plates.filter((p) => p.kind === 'strake')
  const laps = liningLaps(shell)
  const known = new Map<string, MidSurface>()
  return (plate) => {
    // plates of one kind, band and thickness lie alike wherever they stand along the coach
    const key = `${plate.kind}|${plate.face}|${plate.order}|${plate.thickness}|${plate.part.startsWith('frame-') ? plate.part : ''}`
    const found = known.get(key)
    if (found) return found
    const chain = plate.kind === 'strake' ? shell.section.withFlange : shell.section.straight
    const corners = chain.elements.flatMap((e) => [e.girth0, -e.girth0, e.girth1, -e.girth1])
    const made = {
      chain,
      depth: depthOf(shell, plate, skins, laps),
      stops: ascending([
        0,
        ...(plate.kind === 'joint-frame' ? capLaps(shell.laid.input).flatMap((z) => [z.from, z.to]) : []),
        ...corners,
        ...(plate.kind === 'lining' ? laps.flat().flatMap((g) => [g, -g]) : skins.flatMap((p) => [p.g0, p.g1])),
      ]),
    }
    known.set(key, made)
    return made
  }
}

function ascending(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b)
}

/** Sheets of a list that cover a girth and lie outside a plate; a sheet is one layer however many pieces it is in. */
function layersOver(list: readonly Plate[], plate: Plate): (girth: number) => number {
  const outer = list.filter((p) => p.order < plate.order)
  return (girth) => new Set(outer.filter((p) => girth > p.g0 && girth < p.g1).map((p) => p.order)).size
}

/** Edges of each lap of the lining, unsigned girths: laps are measured on the lining itself. */
function liningLaps(shell: Shell): [upper: number, lower: number][] {
  const { lining, shell: s } = shell.laid.input
  const chain = shell.section.straight
  const depth = s.skin.thickness.value + s.frame.height + s.tape + lining.thickness.value / 2
  return lining.seams.map(({ girth }) => {
    const middle = girthAtOffset(chain, girth, depth)
    return [girthFromOffset(chain, middle - lining.lap / 2, depth), girthFromOffset(chain, middle + lining.lap / 2, depth)]
  })
}

function depthOf(
  shell: Shell,
  plate: Plate,
  skins: readonly Plate[],
  laps: readonly (readonly [number, number])[],
): (girth: number) => number {
  const { shell: s, lining, ends } = shell.laid.input
  const skin = s.skin.thickness.value
  const half = plate.thickness / 2
  const over = layersOver(skins, plate)
  const room = skin + s.frame.height + s.tape
  switch (plate.kind) {
    case 'strake':
      return (g) => neutralInBend(shell, g) ?? over(g) * skin + half
    case 'frame':
    case 'joint-frame': {
      const end = plate.kind === 'joint-frame' && s.joint.over === 'barrel' ? ends.skin.thickness.value : 0
      const height = plate.kind === 'joint-frame' ? s.jointFrame.height : s.frame.height
      if (plate.face !== 'outer flange') return () => skin + end + height - half
      // where the crown cap laps over its gores there is one end skin more
      const capped = (g: number): boolean => Math.abs(Math.abs(g) - ends.cap) < ends.lap / 2
      return (g) => over(g) * skin + end * (capped(g) ? 2 : 1) + half
    }
    case 'stringer':
      return () => 2 * skin + half
    case 'edge-channel':
      return () => skin + half
    case 'rim':
      return (g) => over(g) * skin + half
    case 'header':
    case 'post':
      return (g) => over(g) * skin + s.rim.thickness.value + half
    case 'lining': {
      // each band laps over the one above it, on the inside; the bands are numbered from the crown, which is over none
      const lap = laps[Math.round((plate.order - ORDER.lining) * (laps.length + 1)) - 1]
      const underLap = (g: number): boolean => lap !== undefined && Math.abs(g) > lap[0] && Math.abs(g) < lap[1]
      return (g) => room + (underLap(g) ? lining.thickness.value : 0) + half
    }
    case 'trim-ring':
      return () => room + lining.thickness.value + half
    default:
      throw new Error(`no depth is known for ${plate.part}, a ${plate.kind}`)
  }
}

/** In the toe's bend the neutral surface stands by the K-factor from the inside; null elsewhere. */
function neutralInBend(shell: Shell, girth: number): number | null {
  const bend = shell.section.withFlange.elements.find((e) => e.name === 'toe bend')
  if (!bend || Math.abs(girth) <= bend.girth0 || Math.abs(girth) >= bend.girth1) return null
  const { turn, kFactor } = shell.laid.input.shell.toe
  const t = shell.laid.input.shell.skin.thickness.value
  return turn > 0 ? t - kFactor * t : kFactor * t
}

/**
 * Length of the mid surface in space from one girth to a greater one, m: chords through points of the surface, halved
 * once and extrapolated. The step from one depth to another is left out, as it has no length in a flat sheet.
 */
export function lengthInSpace(surface: MidSurface, from: number, to: number): number {
  let sum = 0
  let a = from
  for (const stop of [...surface.stops.filter((s) => s > from && s < to), to]) {
    sum += smoothLength(surface.chain, surface.depth((a + stop) / 2), a, stop)
    a = stop
  }
  return sum
}

/** Turn a chord may span before it is split: the error left after extrapolation is under a nanometre a metre. rad */
const TURN = 0.05

function smoothLength(chain: TangentChain, depth: number, a: number, b: number): number {
  const [g0, g1] = a < 0 ? [-b, -a] : [a, b]
  const turn = Math.abs(headingAt(chain, g1) - headingAt(chain, g0))
  const n = 1 + Math.ceil(turn / TURN)
  const coarse = chords(chain, depth, g0, g1, n)
  const fine = chords(chain, depth, g0, g1, 2 * n)
  return fine + (fine - coarse) / 3
}

function chords(chain: TangentChain, depth: number, from: number, to: number, n: number): number {
  let sum = 0
  let before = at(chain, from, depth)
  for (let i = 1; i <= n; i++) {
    const here = at(chain, i === n ? to : from + ((to - from) * i) / n, depth)
    sum += Math.hypot(here.y - before.y, here.z - before.z)
    before = here
  }
  return sum
}
