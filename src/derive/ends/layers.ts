/**
 * What each fastener of an end goes through, outside to inside, and so its grip and bought length. Found from where it
 * stands: inside half a lap of a seam there is one gore more, inside half a lap of the cap's edge the cap.
 */
import type { FastenerType } from '../../definition/types.js'
import { blindRivet, solidRivet } from '../common/rivet-stock.js'
import { capPart, type End, gorePart } from '../end-names.js'
import type { FastenerRow, Stack } from '../nouns.js'
import { type Ground, overAt } from './ground.js'
import { type LocalRow, placedRow } from './rows.js'
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
  for (let seam = 1; seam < ground.gores; seam++) {
    if (Math.abs(r * Math.sin(at.phi - ground.edges[seam])) > half) continue
    return overAt(ground, seam) === 'right' ? [seam, seam + 1] : [seam + 1, seam]
  }
  for (let k = 1; k < ground.gores; k++) if (at.phi >= ground.edges[k]) return [k]
  return [ground.gores]
}

/** The skin at a place: gores, and the cap where it reaches. */
export function skinsAt(ground: Ground, end: End, at: Located): Layer[] {
  const { ends } = ground.input
  const thickness = ends.skin.thickness.value
  const sheet = (part: string): Layer => ({ part, face: 'sheet', thickness })
  const gores = at.girth >= ends.cap - ends.lap / 2 - 1e-9 ? goresAt(ground, at).map((k) => sheet(gorePart(end, k))) : []
  return at.girth <= ends.cap + ends.lap / 2 + 1e-9 ? [sheet(capPart(end)), ...gores] : gores
}

/** `behind` gives the members behind the skin at a fastener of this row. */
export function resolveEndRow(
  ground: Ground,
  end: End,
  joint: number,
  local: LocalRow,
  fastener: FastenerType,
  layersOf: (at: Located, i: number) => readonly Layer[],
): EndRow {
  const through = new Map<string, number[]>()
  const known = new Map<string, number>()
  const stacks: (Omit<Stack, 'count'> & { count: number })[] = []
  const stack = local.located.map((at, i) => {
    const layers = layersOf(at, i)
    for (const { part, face } of layers) {
      const key = faceKey(part, face)
      const list = through.get(key)
      if (list) list.push(i)
      else through.set(key, [i])
    }
    const key = layers.map((l) => faceKey(l.part, l.face)).join('|')
    const found = known.get(key) ?? stacks.push({ ...stackOf(ground, fastener, layers), count: 0 }) - 1
    known.set(key, found)
    stacks[found].count++
    return found
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
