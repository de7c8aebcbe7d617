/** What the worker sent as buffers of the picture: all sheets in one, all lines in one, all rivets in one. */
import { BufferAttribute, BufferGeometry } from 'three'
import type { RivetsInSpace, SpaceLayer } from '../../studies/space/nouns.js'
import type { Held } from './held.js'

export type Layers = ReadonlySet<SpaceLayer | 'rivets'>

export function sheetsOf({ parts, gaps, deepest }: Held, layers: Layers): BufferGeometry {
  const shown = parts.flatMap((part, number) => (layers.has(part.layer) ? [{ part, number }] : []))
  const corners = shown.reduce((sum, { part }) => sum + part.mesh.positions.length / 3, 0)
  const all = {
    position: new Float32Array(3 * corners),
    normal: new Float32Array(3 * corners),
    aApart: new Float32Array(3 * corners),
    aPart: new Float32Array(corners),
    aGap: new Float32Array(corners).fill(-1),
    aUnder: new Float32Array(corners),
  }
  const index = new Uint32Array(shown.reduce((sum, { part }) => sum + part.mesh.index.length, 0))
  let [at, on] = [0, 0]
  for (const { part, number } of shown) {
    const { positions, normals, index: own, under } = part.mesh
    const n = positions.length / 3
    all.position.set(positions, 3 * at)
    all.normal.set(normals, 3 * at)
    for (let i = 0; i < n; i++) {
      all.aApart.set(part.apart, 3 * (at + i))
      all.aUnder[at + i] = part.under + under[i]
    }
    all.aPart.fill(number, at, at + n)
    const gap = gaps?.get(part.id)
    if (gap && deepest > 0) for (let i = 0; i < n; i++) all.aGap[at + i] = gap[i] / deepest
    for (let i = 0; i < own.length; i++) index[on + i] = own[i] + at
    at += n
    on += own.length
  }
  const geometry = geometryOf(all, corners)
  geometry.setIndex(new BufferAttribute(index, 1))
  return geometry
}

/** The skin, its panes and the floor are drawn in full ink, what is behind them more lightly. */
const FULL: ReadonlySet<SpaceLayer> = new Set(['skin', 'panes', 'wheels', 'floor'])

export function linesOf({ parts }: Held, layers: Layers): BufferGeometry {
  const shown = parts.flatMap((part, number) => (layers.has(part.layer) ? [{ part, number }] : []))
  const ends = shown.reduce((sum, { part }) => sum + part.mesh.lines.length / 3, 0)
  const all = {
    position: new Float32Array(3 * ends),
    aApart: new Float32Array(3 * ends),
    aPart: new Float32Array(ends),
    aFaint: new Float32Array(ends),
    aUnder: new Float32Array(ends),
  }
  let at = 0
  for (const { part, number } of shown) {
    const n = part.mesh.lines.length / 3
    all.position.set(part.mesh.lines, 3 * at)
    for (let i = 0; i < n; i++) {
      all.aApart.set(part.apart, 3 * (at + i))
      all.aUnder[at + i] = part.under + part.mesh.linesUnder[i]
    }
    all.aPart.fill(number, at, at + n)
    all.aFaint.fill(FULL.has(part.layer) ? 0 : 0.8, at, at + n)
    at += n
  }
  return geometryOf(all, ends)
}

export function rivetsOf({ parts, rivets }: Held, layers: Layers): BufferGeometry {
  const seen = layers.has('rivets') ? shownRivets(parts, rivets, layers) : []
  const all = {
    position: new Float32Array(3 * seen.length),
    normal: new Float32Array(3 * seen.length),
    aApart: new Float32Array(3 * seen.length),
    aRadius: new Float32Array(seen.length),
    aUnder: new Float32Array(seen.length),
  }
  seen.forEach((i, k) => {
    const { apart, under } = parts[rivets.part[i]]
    all.position.set(rivets.positions.subarray(3 * i, 3 * i + 3), 3 * k)
    all.normal.set(rivets.normals.subarray(3 * i, 3 * i + 3), 3 * k)
    all.aApart.set(apart, 3 * k)
    all.aRadius[k] = rivets.radius[i]
    all.aUnder[k] = under
  })
  const geometry = new BufferGeometry()
  for (const [name, list] of Object.entries(all))
    geometry.setAttribute(name, new BufferAttribute(list, list.length / Math.max(1, seen.length)))
  return geometry
}

/** A rivet is seen with the sheet its head is on. */
function shownRivets(parts: Held['parts'], { part }: RivetsInSpace, layers: Layers): number[] {
  const shown: number[] = []
  part.forEach((number, i) => {
    if (number >= 0 && layers.has(parts[number].layer)) shown.push(i)
  })
  return shown
}

function geometryOf(lists: Readonly<Record<string, Float32Array>>, count: number): BufferGeometry {
  const geometry = new BufferGeometry()
  // where nothing is shown each list is empty, of whatever size its items are
  for (const [name, list] of Object.entries(lists))
    geometry.setAttribute(name, new BufferAttribute(list, count > 0 ? list.length / count : 1))
  return geometry
}
