/**
 * Verifiers of a derived shell: each looks at the result alone and says the largest disagreement it found and where.
 *
 * Covers: holes against their mates in space, flat lengths against lengths in space, depths against stacks, and that
 * nothing is lost or counted twice. Areas: verify-areas.ts. Right against left: verify-mirror.ts.
 * Does not cover whether the layout is a good one: that is for the checks.
 */
import { at } from '../../maths/tangent-chain.js'
import { fastenerId, rowsById } from '../holes.js'
import type { FastenerRow, Pattern } from '../nouns.js'
import type { Shell } from './index.js'
import { flatOf, fromFlat, type Plate } from './plates.js'
import { lengthInSpace, midSurfaces } from './verify-depth.js'

/** The worst of what was compared, m (areas: m2), where it is, and how many were compared. */
export interface Agreement {
  readonly largest: number
  readonly where: string
  readonly compared: number
}

interface Tally {
  largest: number
  where: string
  compared: number
}
export const startTally = (): Tally => ({ largest: 0, where: 'nowhere', compared: 0 })

/** Takes in one difference; one that is not a number is the worst there can be. */
export function note(tally: Tally, difference: number, where: () => string): void {
  tally.compared++
  const size = Number.isNaN(difference) ? Number.POSITIVE_INFINITY : Math.abs(difference)
  if (size > tally.largest) {
    tally.largest = size
    tally.where = where()
  }
}

/** Every pattern with the plate it was developed from. */
export function patternsOf(shell: Shell): { readonly part: string; readonly plate: Plate; readonly pattern: Pattern }[] {
  const plates = new Map(shell.plates.map((p) => [`${p.part}|${p.face}`, p]))
  return shell.parts.flatMap((part) =>
    part.patterns.map((pattern) => {
      const plate = plates.get(`${part.id}|${pattern.face}`)
      if (!plate) throw new Error(`${part.id} has a pattern "${pattern.face}" and no plate for it`)
      return { part: part.id, plate, pattern }
    }),
  )
}

function eachHole(shell: Shell, pattern: Pattern, see: (row: FastenerRow, i: number, k: number) => void): void {
  const rows = rowsById(shell.rows)
  const set = pattern.holes
  for (let k = 0; k < set.x.length; k++) {
    const row = rows.get(set.rows[set.row[k]])
    if (!row) throw new Error(`a hole belongs to ${set.rows[set.row[k]]}, which is no row`)
    see(row, set.index[k], k)
  }
}

/**
 * Rolls every hole of every flat pattern up again and measures how far it then stands from the axis of its own fastener:
 * the normal of the mould line at the fastener's station and girth, on which all its layers must lie. m
 */
export function holesMeet(shell: Shell): Agreement {
  const tally = startTally()
  const surface = midSurfaces(shell)
  for (const { part, plate, pattern } of patternsOf(shell)) {
    const { depth, chain } = surface(plate)
    eachHole(shell, pattern, (row, i, k) => {
      const [station, girth] = fromFlat(plate, pattern.holes.x[k], pattern.holes.y[k])
      const foot = at(shell.section.withFlange, Math.abs(row.girth[i]))
      const layer = at(chain, Math.abs(girth), depth(girth))
      const side = Math.sign(girth) === Math.sign(row.girth[i]) || Math.abs(girth) < 1e-9 ? 1 : -1
      const dy = side * layer.y - foot.y
      const dz = layer.z - foot.z
      // across the normal, in the section's plane
      const across = dy * Math.cos(foot.heading) - dz * Math.sin(foot.heading)
      note(tally, Math.hypot(station - row.station[i], across), () => `${fastenerId(row, i)} in ${part}`)
    })
  }
  return tally
}

/** Flat coordinates of every hole, and every blank's size, against stations and lengths summed in space. m */
export function lengthsAgree(shell: Shell): Agreement {
  const tally = startTally()
  const surface = midSurfaces(shell)
  for (const { part, plate, pattern } of patternsOf(shell)) {
    const girths: number[] = [plate.g0, plate.g1]
    eachHole(shell, pattern, (row, i) => girths.push(row.girth[i]))
    const run = runsOf(plate, girths, surface)
    const whole = run.get(plate.g1) as number
    const { width, height } = flatOf(plate)
    note(tally, (plate.lie === 'hoop' ? width : height) - whole, () => `the blank of ${part}`)
    eachHole(shell, pattern, (row, i, k) => {
      const along = run.get(row.girth[i]) as number
      const [x, y] = flatFrom(plate, row.station[i], along, whole)
      note(tally, Math.hypot(pattern.holes.x[k] - x, pattern.holes.y[k] - y), () => `${fastenerId(row, i)} in ${part}`)
    })
  }
  return tally
}

/** Length in space from the plate's lesser girth to each girth. */
function runsOf(plate: Plate, girths: readonly number[], surface: ReturnType<typeof midSurfaces>): Map<number, number> {
  const mid = surface(plate)
  const run = new Map<number, number>()
  let before = plate.g0
  let sum = 0
  for (const g of [...new Set(girths)].sort((a, b) => a - b)) {
    sum += lengthInSpace(mid, before, g)
    run.set(g, sum)
    before = g
  }
  return run
}

function flatFrom(plate: Plate, station: number, along: number, whole: number): [number, number] {
  switch (plate.lie) {
    case 'hoop':
      return [along, plate.x1 - station]
    case 'right-hand':
      return [plate.x1 - station, whole - along]
    default:
      return [station - plate.x0, along]
  }
}
