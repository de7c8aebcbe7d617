/**
 * Verifier: a coach with its right and left changed over has the same parts on the other side, holes and all.
 *
 * A sheet seen from outside has x running aft on the left and forward on the right, so the flat pattern of a left part is
 * its right twin's with x counted from the other end; a centre sheet and a frame are turned over their middle.
 */
import type { Definition, Surface } from '../../definition/types.js'
import type { FastenerRow, Pattern } from '../nouns.js'
import type { Shell } from './index.js'
import type { Plate } from './plates.js'
import { type Agreement, note, patternsOf, startTally } from './verify.js'

const SWAPPED: Readonly<Partial<Record<Surface, Surface>>> = { left: 'right', right: 'left' }

/** The same coach seen in a mirror: every opening on the other side. */
export function mirrored(definition: Definition): Definition {
  const openings = definition.openings.map((o) => ({ ...o, surface: SWAPPED[o.surface] ?? o.surface, girth: 0 - o.girth }))
  return { ...definition, openings }
}

/** An id with its sides changed over. */
export function otherHand(id: string): string {
  return id.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'))
}

/** A roof opening's header stands on its left and its sill on its right: they change places. */
function twinOf(part: string, acrossRoof: ReadonlySet<string>): string {
  const [kind, ...rest] = part.split('-')
  if (!acrossRoof.has(rest.join('-'))) return otherHand(part)
  return kind === 'header' ? part.replace(kind, 'sill') : kind === 'sill' ? part.replace(kind, 'header') : part
}

/** Worst distance between a hole and its twin, or a blank's size and its twin's, m; infinite where a twin is missing. */
export function handsAgree(shell: Shell, mirror: Shell): Agreement {
  const tally = startTally()
  const acrossRoof = new Set(shell.openings.filter((o) => o.side === 'centre').map((o) => o.id))
  const twins = new Map(patternsOf(mirror).map((p) => [`${p.part}|${p.plate.face}`, p]))
  for (const { part, plate, pattern } of patternsOf(shell)) {
    const twin = twins.get(`${twinOf(part, acrossRoof)}|${plate.face}`)
    compareSets(tally, holesSeen(plate, pattern), twin ? pointsOf(twin.pattern) : [], `${part} and its twin`)
    if (twin) compareSets(tally, [sizeOf(pattern)], [sizeOf(twin.pattern)], `the blank of ${part} and its twin`)
  }
  const rows = new Map(mirror.rows.map((r) => [r.id, r]))
  for (const row of shell.rows) {
    const twin = rows.get(otherHand(row.id))
    compareSets(tally, placesOf(row, -1), twin ? placesOf(twin, 1) : [], `${row.id} and its twin`)
  }
  note(tally, shell.parts.length === mirror.parts.length ? 0 : Number.NaN, () => 'the number of parts')
  note(tally, shell.rows.length === mirror.rows.length ? 0 : Number.NaN, () => 'the number of rows')
  return tally
}

type Point = readonly [x: number, y: number, key: string]

function pointsOf(pattern: Pattern): Point[] {
  const { holes } = pattern
  return holes.x.map((x, k) => [x, holes.y[k], holes.rows[holes.row[k]]] as const)
}

/** Holes as the twin's pattern should have them. */
function holesSeen(plate: Plate, pattern: Pattern): Point[] {
  const [width, height] = sizeOf(pattern)
  return pointsOf(pattern).map(([x, y, row]) => {
    const key = otherHand(row)
    if (plate.lie === 'centre') return [x, height - y, key] as const
    return [width - x, y, key] as const
  })
}

function sizeOf(pattern: Pattern): Point {
  return [Math.max(...pattern.outline.map((p) => p[0])), Math.max(...pattern.outline.map((p) => p[1])), '']
}

function placesOf(row: FastenerRow, hand: 1 | -1): Point[] {
  return row.station.map((x, i) => [x, hand * row.girth[i], ''] as const)
}

/** Nearest partners of two sets of points, each used once: both are sorted, and points a hair apart may change places. */
function compareSets(tally: ReturnType<typeof startTally>, want: readonly Point[], have: readonly Point[], what: string): void {
  if (want.length !== have.length) {
    note(tally, Number.NaN, () => `${what}: ${want.length} against ${have.length}`)
    return
  }
  const grid = new Map<string, Point[]>()
  const cell = (u: number): number => Math.round(u / CELL)
  const put = (p: Point): void => {
    const key = `${p[2]}|${cell(p[0])}|${cell(p[1])}`
    const list = grid.get(key)
    if (list) list.push(p)
    else grid.set(key, [p])
  }
  for (const p of have) put(p)
  for (const p of want) note(tally, nearest(grid, p, cell), () => `${what}, the hole of ${p[2]} at ${p[0].toFixed(4)}, ${p[1].toFixed(4)}`)
}

/** Holes stand further apart than this. m */
const CELL = 1e-3

function nearest(grid: Map<string, Point[]>, p: Point, cell: (u: number) => number): number {
  let best = Number.POSITIVE_INFINITY
  let from: Point[] | undefined
  let at = -1
  for (let i = -1; i <= 1; i++) {
    for (let j = -1; j <= 1; j++) {
      const list = grid.get(`${p[2]}|${cell(p[0]) + i}|${cell(p[1]) + j}`)
      list?.forEach((q, k) => {
        const away = Math.hypot(q[0] - p[0], q[1] - p[1])
        if (away < best) {
          best = away
          from = list
          at = k
        }
      })
    }
  }
  from?.splice(at, 1)
  return best
}
