/**
 * What is sheared: the sheet laid flat with its laps. Each edge is moved straight out by what stands past it (half a lap, the
 * joint's tab, the toe's flange), and neighbours are run on straight until they meet. Chords keep to a hundredth of a millimetre.
 */
import type { Flat } from '../../maths/strip/on-strip.js'
import type { FlatStrip } from '../../maths/strip/unroll.js'
import { at } from '../../maths/tangent-chain.js'
import type { MarkLine } from '../nouns.js'
import type { Ground } from './ground.js'
import { sheetAtHeight } from './wrapped-cut.js'
import { besideEdge, type FlatEdge, type FlatPlaces, type Hand } from './wrapped-flat.js'
import type { GoreSheet } from './wrapped-strip.js'

/** Farthest a chord stands off its curve, m. */
const CHORD = 1.2e-5

/** Lengths along an edge close enough together that chords keep to their curve, its own bend and its offset's. */
function stopsOf({ along, heading }: FlatEdge): number[] {
  const stops = [0]
  for (let k = 1; k < along.length; k++) {
    const run = along[k] - along[k - 1]
    const parts = Math.max(1, Math.ceil(Math.sqrt((run * Math.abs(heading[k] - heading[k - 1])) / 8 / CHORD)))
    for (let i = 1; i <= parts; i++) stops.push(along[k - 1] + (run * i) / parts)
  }
  return apart(stops)
}

/** Rulings crowd where the sheet's curvature jumps: stops nearer than a chord's error tell nothing, save the two ends. */
function apart(stops: readonly number[]): number[] {
  const [first, end] = [stops[0], stops[stops.length - 1]]
  const kept = [first]
  for (const s of stops) if (s - kept[kept.length - 1] > CHORD && end - s > CHORD) kept.push(s)
  return [...kept, end]
}

interface Line {
  readonly at: Flat
  readonly heading: number
}

/** How far a sheet goes on past each of its four edges, straight on, m. */
export type Past = Readonly<Record<'p' | 'q' | 'top' | 'foot', number>>

/** Anticlockwise, from the top corner on the right-hand edge. */
export function sheetOutline(flat: FlatStrip, edges: Readonly<Record<Hand, FlatEdge>>, past: Past): Flat[] {
  const last = flat.s.length - 1
  // seen along a ruling from the right-hand edge the sheet lies to the right at the top and to the left at the foot
  const top: Line = lineBeside([flat.px[0], flat.py[0]], flat.heading[0], past.top)
  const foot: Line = lineBeside([flat.px[last], flat.py[last]], flat.heading[last], -past.foot)
  const side = (hand: Hand): Flat[] => {
    const edge = edges[hand]
    const moved = stopsOf(edge).map((s) => besideEdge(edge, hand, s, past[hand]))
    const within = moved.filter((m) => left(top, m.at) < -1e-9 && left(foot, m.at) > 1e-9)
    const points = within.map((m) => m.at)
    return [meet(top, within[0]), ...points, meet(foot, within[within.length - 1])]
  }
  return [...side('p'), ...side('q').reverse()]
}

/** The line `off` m to the left of a ruling. */
const lineBeside = ([x, y]: Flat, heading: number, off: number): Line => ({
  at: [x - off * Math.sin(heading), y + off * Math.cos(heading)],
  heading,
})

/** How far a place stands to the left of a line, m. */
const left = ({ at, heading }: Line, [x, y]: Flat): number => (y - at[1]) * Math.cos(heading) - (x - at[0]) * Math.sin(heading)

/** Where an edge run on straight meets a line. */
function meet(line: Line, edge: Line): Flat {
  const rate = Math.sin(edge.heading) * Math.cos(line.heading) - Math.cos(edge.heading) * Math.sin(line.heading)
  const on = -left(line, edge.at) / rate
  return [edge.at[0] + on * Math.cos(edge.heading), edge.at[1] + on * Math.sin(edge.heading)]
}

type Drawn = readonly [says: string, kind: MarkLine['kind'], points: readonly Flat[]]

/** Seams or joint line, mid line, cap's row, toe and base line. A bent line is a chain of straight ones, named at its middle. */
export function sheetMarks(ground: Ground, sheet: GoreSheet, places: FlatPlaces): MarkLine[] {
  const { flat, p, q } = sheet
  const last = flat.s.length - 1
  const along = (hand: Hand): Drawn => {
    const edge = places[hand]
    const says = sheet[hand].joint ? 'joint' : 'seam'
    return [says, sheet[hand].joint ? 'bend' : 'lap', stopsOf(edge).map((s) => besideEdge(edge, hand, s, 0).at)]
  }
  const middle = places.cutAt((p.phi + q.phi) / 2)
  const parts = 2 * Math.ceil(middle.length / 0.05)
  const downs = Array.from({ length: parts + 1 }, (_, i) => (middle.length * i) / parts)
  const { base, floor } = ground
  const level = (sigma: number): Flat[] => {
    const { z } = at(ground.loft.section, sigma)
    const count = 8
    return Array.from({ length: count + 1 }, (_, i) => {
      const phi = p.phi + ((q.phi - p.phi) * i) / count
      if (i > 0 && i < count) return sheetAtHeight(sheet, phi, z).flat
      const hand = i === 0 ? 'p' : 'q'
      return besideEdge(places[hand], hand, sheet[hand].curve.lengthAt(sigma) - sheet[hand].from, 0).at
    })
  }
  const drawn: Drawn[] = [
    along('p'),
    along('q'),
    ['mid rib', 'centre', downs.map((a) => middle.atAlong(a).flat)],
    [
      'cap row',
      'lap',
      [
        [flat.px[0], flat.py[0]],
        [flat.qx[0], flat.qy[0]],
      ],
    ],
    [
      'toe',
      'bend',
      [
        [flat.px[last], flat.py[last]],
        [flat.qx[last], flat.qy[last]],
      ],
    ],
    base === null ? ['WL 0', 'centre', level(floor)] : ['base row', 'centre', level(base)],
  ]
  return drawn.flatMap(([says, kind, points]) => chain(says, kind, points))
}

function chain(says: string, kind: MarkLine['kind'], points: readonly Flat[]): MarkLine[] {
  const named = Math.floor((points.length - 1) / 2)
  return points.slice(1).map((to, i) => ({ says: i === named ? says : '', kind, from: points[i], to }))
}
