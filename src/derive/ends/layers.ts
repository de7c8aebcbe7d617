/**
 * What each fastener of an end goes through, outside to inside, and so its grip and bought length. Found from where it
 * stands: inside half a lap of a seam there is one gore more, inside half a lap of the cap's edge the cap.
 */
import type { FastenerType } from '../../definition/types.js'
import { blindRivet, solidRivet } from '../common/rivet-stock.js'
import { capPart, type End, gorePart } from '../end-names.js'
import type { FastenerRow, Stack } from '../nouns.js'
import { type Ground, overAt } from './ground.js'
import type { LocalRow } from './laid-row.js'
import { placedRow } from './placed-row.js'
import type { Located } from './skin.js'

export interface Layer {
  readonly part: string
  readonly face: string
  readonly thickness: number
}

/** A row of an end and, for each face of a part, which of its fasteners go through it. */
export interface EndRow {
  readonly row: FastenerRow
  readonly local: LocalRow
  readonly through: ReadonlyMap<string, readonly number[]>
}

export const faceKey = (part: string, face: string): string => `${part} ${face}`

/** Gores at a place, the outermost first. */
export function goresAt(ground: Ground, at: Pick<Located, 'point' | 'phi'>): number[] {
  const half = ground.input.ends.lap / 2
  const r = Math.sqrt(at.point[0] ** 2 + at.point[1] ** 2)
  let gore = 1
  while (gore < ground.gores && at.phi < ground.edges[gore]) gore++
  const off = (seam: number): number =>
    seam < 1 || seam >= ground.gores ? Number.POSITIVE_INFINITY : Math.abs(r * Math.sin(at.phi - ground.edges[seam]))
  // a gore narrower than a lap has both its seams within reach: the nearer one counts, and half way between them the right-hand one
  const seam = off(gore) < off(gore - 1) - ALIKE ? gore : gore - 1
  if (off(seam) > half) return [gore]
  return overAt(ground, seam) === 'right' ? [seam, seam + 1] : [seam + 1, seam]
}

/** Distances that differ by less are the same, m. */
const ALIKE = 1e-9

/** The sheets at places of one end; the same sheets come as the same list, so that fasteners are told apart without a look inside. */
export function skinsOf(ground: Ground, end: End): (at: Located) => readonly Layer[] {
  const { ends } = ground.input
  const sheet = (part: string): Layer => ({ part, face: 'sheet', thickness: ends.skin.thickness.value })
  const known = new Map<number, readonly Layer[]>()
  return (at) => {
    const gores = at.girth >= ends.cap - ends.lap / 2 - 1e-9 ? goresAt(ground, at) : []
    const isUnderCap = at.girth <= ends.cap + ends.lap / 2 + 1e-9
    const code = gores.reduce((sum, k) => sum * (ground.gores + 1) + k, isUnderCap ? 1 : 0)
    const found = known.get(code) ?? [...(isUnderCap ? [sheet(capPart(end))] : []), ...gores.map((k) => sheet(gorePart(end, k)))]
    known.set(code, found)
    return found
  }
}

/** A stack met along a row, and where to note which fasteners go through each of its faces. */
interface Met {
  readonly skins: readonly Layer[]
  readonly behind: readonly Layer[]
  readonly stack: number
  readonly lists: readonly number[][]
}

/** `skins` and `behind` give the sheets and the members behind them at a fastener: each time the same list for the same layers. */
export function resolveEndRow(
  ground: Ground,
  end: End,
  joint: number,
  local: LocalRow,
  fastener: FastenerType,
  skins: (at: Located) => readonly Layer[],
  behind: (at: Located, i: number) => readonly Layer[],
): EndRow {
  const through = new Map<string, number[]>()
  const stacks: (Omit<Stack, 'count'> & { count: number })[] = []
  const known: Met[] = []
  const meet = (over: readonly Layer[], under: readonly Layer[]): Met => {
    const found = known.find((m) => m.skins === over && m.behind === under)
    if (found) return found
    const layers = [...over, ...under]
    const lists = layers.map(({ part, face }) => {
      const key = faceKey(part, face)
      const list = through.get(key) ?? []
      through.set(key, list)
      return list
    })
    const met = { skins: over, behind: under, stack: stacks.push({ ...stackOf(ground, fastener, layers), count: 0 }) - 1, lists }
    known.push(met)
    return met
  }
  const stack = local.located.map((at, i) => {
    const met = meet(skins(at), behind(at, i))
    for (const list of met.lists) list.push(i)
    stacks[met.stack].count++
    return met.stack
  })
  return { row: Object.freeze({ ...placedRow(local, end, joint), stack, stacks }), local, through }
}

function stackOf(ground: Ground, fastener: FastenerType, layers: readonly Layer[]): Omit<Stack, 'count'> {
  const thickness = layers.map((l) => l.thickness)
  const grip = thickness.reduce((a, b) => a + b, 0)
  const { diameter, kind } = fastener
  const bought = kind === 'blind' ? blindRivet(diameter.value, grip) : solidRivet(diameter.value, grip, ground.input.rules.rivetLength)
  return { parts: layers.map((l) => l.part), thickness, grip, length: bought.length.value, name: bought.name }
}
