/** Verifiers of stacks and counts: every fastener passes once through each of its layers, at the depth they really lie. */
import { fastenerId } from '../holes.js'
import type { FastenerRow } from '../nouns.js'
import type { Shell } from './index.js'
import { type Agreement, note, startTally } from './verify.js'
import { midSurfaces } from './verify-depth.js'

/** Parts of other trades: holes are placed in them, and their patterns come with their own trade. */
const FOREIGN = /^(underbelly|(nose|tail)-(cap|gore-\d+|lining-(\d+|crown)))$/

/**
 * Depth of each layer's mid surface against the thicknesses stacked outside it, for rows whose layers bear on each other
 * throughout (skin on frame, seam, rim). m
 */
export function depthsAgree(shell: Shell): Agreement {
  const tally = startTally()
  const surface = midSurfaces(shell)
  for (const { row, through } of shell.resolved) {
    if (row.kind !== 'hoop' && row.kind !== 'joint' && row.kind !== 'seam') continue
    const own = through.filter(({ plate }) => !FOREIGN.test(plate.part))
    const inside = own.map(({ index }) => new Set(index))
    const outward = shell.laid.input.shell.joint.over === 'end' ? shell.laid.input.ends.skin.thickness.value : 0
    for (let i = 0; i < row.station.length; i++) {
      const stack = row.stacks[row.stack[i]]
      own.forEach(({ plate }, k) => {
        if (!inside[k].has(i)) return
        const layer = stack.parts.indexOf(plate.part)
        const before =
          stack.thickness.slice(0, layer).reduce((a, b) => a + b, 0) -
          (row.kind === 'joint' ? outward * stack.parts.filter((p) => FOREIGN.test(p) && p !== 'underbelly').length : 0)
        note(
          tally,
          surface(plate).depth(row.girth[i]) - (before + stack.thickness[layer] / 2),
          () => `${fastenerId(row, i)} in ${plate.part}`,
        )
      })
    }
  }
  return tally
}

/** Sentences, one for each thing lost, doubled or miscounted; none when all is there. */
export function nothingLost(shell: Shell): string[] {
  const ids = new Map<string, string>()
  const holes = holesByPart(shell)
  return [
    ...shell.rows.flatMap((row) => [...rowFaults(row), ...idFaults(row, ids), ...layerFaults(row, holes)]),
    ...strayHoles(shell),
    ...sharedFaults(shell),
    ...doubled(
      shell.parts.map((p) => p.id),
      'part',
    ),
    ...doubled(
      shell.rows.map((r) => r.id),
      'row',
    ),
  ]
}

function rowFaults(row: FastenerRow): string[] {
  const n = row.station.length
  const faults: string[] = []
  const arrays = [row.girth, row.waterline, row.span, row.number, row.stack]
  if (arrays.some((a) => a.length !== n)) faults.push(`${row.id} has arrays of different lengths`)
  const inSpans = row.spans.reduce((sum, s) => sum + s.count, 0)
  if (inSpans !== n) faults.push(`the spans of ${row.id} hold ${inSpans} fasteners, the row ${n}`)
  for (const s of row.spans) if (!(s.pitch > 0)) faults.push(`the span ${s.from}-${s.to} of ${row.id} has a pitch of ${s.pitch}`)
  const inStacks = row.stacks.reduce((sum, s) => sum + s.count, 0)
  if (inStacks !== n) faults.push(`the stacks of ${row.id} hold ${inStacks} fasteners, the row ${n}`)
  return faults
}

function idFaults(row: FastenerRow, seen: Map<string, string>): string[] {
  return row.station.flatMap((_, i) => {
    const id = fastenerId(row, i)
    const other = seen.get(id)
    seen.set(id, row.id)
    return other === undefined ? [] : [`two fasteners are called ${id}`]
  })
}

/** part -> `row|index` -> how many holes */
function holesByPart(shell: Shell): Map<string, Map<string, number>> {
  return new Map(
    shell.parts.map((part) => {
      const seen = new Map<string, number>()
      for (const { holes } of part.patterns) {
        holes.x.forEach((_, k) => {
          const key = `${holes.rows[holes.row[k]]}|${holes.index[k]}`
          seen.set(key, (seen.get(key) ?? 0) + 1)
        })
      }
      return [part.id, seen]
    }),
  )
}

function layerFaults(row: FastenerRow, holes: ReadonlyMap<string, ReadonlyMap<string, number>>): string[] {
  return row.station.flatMap((_, i) =>
    row.stacks[row.stack[i]].parts.flatMap((part) => {
      if (FOREIGN.test(part)) return []
      const found = holes.get(part)?.get(`${row.id}|${i}`) ?? 0
      return found === 1 ? [] : [`${fastenerId(row, i)} has ${found} holes in ${part}, not one`]
    }),
  )
}

/** Holes that belong to no layer of their fastener's stack. */
function strayHoles(shell: Shell): string[] {
  const rows = new Map(shell.rows.map((r) => [r.id, r]))
  return shell.parts.flatMap((part) =>
    part.patterns.flatMap(({ holes }) =>
      holes.x.flatMap((_, k) => {
        const row = rows.get(holes.rows[holes.row[k]])
        if (!row) return [`${part.id} has a hole of ${holes.rows[holes.row[k]]}, which is no row`]
        const stack = row.stacks[row.stack[holes.index[k]]]
        return stack.parts.includes(part.id)
          ? []
          : [`${fastenerId(row, holes.index[k])} has a hole in ${part.id}, which is not in its stack`]
      }),
    ),
  )
}

/** A fastener two rows share belongs to one of them only: the other has none in the same hole. */
function sharedFaults(shell: Shell): string[] {
  const rows = new Map(shell.rows.map((r) => [r.id, r]))
  return shell.rows.flatMap((row) =>
    Object.entries(row.shared).flatMap(([key, others]) => {
      const i = Number(key)
      return others.flatMap((id) => {
        const other = rows.get(id)
        const again =
          other?.station.findIndex((x, j) => Math.hypot(x - row.station[i], other.girth[j] - row.girth[i]) < other.diameter / 2) ?? -1
        return other && again >= 0 ? [`${fastenerId(row, i)} and ${fastenerId(other, again)} are one fastener counted twice`] : []
      })
    }),
  )
}

function doubled(ids: readonly string[], what: string): string[] {
  const seen = new Set<string>()
  return ids.flatMap((id) => {
    if (seen.has(id)) return [`two ${what}s are called ${id}`]
    seen.add(id)
    return []
  })
}
