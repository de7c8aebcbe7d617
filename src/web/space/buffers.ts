/** What the worker sent as buffers of the picture: all sheets in one, all lines in one, all rivets in one. */
import { BufferAttribute, BufferGeometry } from 'three'
import type { RivetsInSpace, SpaceLayer } from '../../studies/space/nouns.js'
import type { Held } from './held.js'

export type Layers = ReadonlySet<SpaceLayer | 'rivets'>

/** What a closed skin hides from whoever looks down on it. It comes last in its buffer, where it can be left out. */
const INSIDE: ReadonlySet<SpaceLayer> = new Set(['frames', 'lining', 'floor', 'tanks'])

interface Shown {
  readonly part: Held['parts'][number]
  readonly number: number
}

function shownOf(parts: Held['parts'], layers: Layers): { readonly shown: readonly Shown[]; readonly outside: readonly Shown[] } {
  const all = parts.flatMap((part, number) => (layers.has(part.layer) ? [{ part, number }] : []))
  const isInside = ({ part }: Shown): boolean => layers.has('skin') && INSIDE.has(part.layer)
  const outside = all.filter((each) => !isInside(each))
  return { shown: [...outside, ...all.filter(isInside)], outside }
}

/** How much of a buffer is seen from outside: indices of sheets, ends of lines. */
export const outsideOf = (geometry: BufferGeometry): number => geometry.userData.outside ?? Number.POSITIVE_INFINITY

export function sheetsOf({ parts, gaps, deepest }: Held, layers: Layers): BufferGeometry {
  const { shown, outside } = shownOf(parts, layers)
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
  geometry.userData.outside = outside.reduce((sum, { part }) => sum + part.mesh.index.length, 0)
  return geometry
}

/** The skin, its panes and the floor are drawn in full ink, what is behind them more lightly. */
const FULL: ReadonlySet<SpaceLayer> = new Set(['skin', 'panes', 'wheels', 'floor'])

export function linesOf({ parts }: Held, layers: Layers): BufferGeometry {
  const { shown, outside } = shownOf(parts, layers)
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
  const geometry = geometryOf(all, ends)
  geometry.userData.outside = outside.reduce((sum, { part }) => sum + part.mesh.lines.length / 3, 0)
  return geometry
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
