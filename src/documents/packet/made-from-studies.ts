/** What the studies' documents are made from: everything of a design that a blank, a flat or a chance is worked out from, and its sheet prints. */

import type { FastenerType } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import type { FastenerRow, Part } from '../../derive/nouns.js'
import { figureMade, figureOf, typeShows } from './made-from-parts.js'
import type { MadeFrom } from './planned.js'

/** What the shape of the end lining hangs on: the lofted surface, its ribs and how deep the lining lies on them. */
export function liningMade({ definition }: Design): MadeFrom {
  const { section, shell, ends, lining } = definition
  return {
    name: 'the shape of the end lining',
    from: [section, shell, ends, lining],
    shows: () => [
      [section.crown, section.chain, section.fit, shell.tape, shell.frame.height, shell.skin.thickness.value],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.make, ends.skin.thickness.value],
      [lining.thickness.value, lining.floorGap],
      [shell.frame.rowOffset, shell.frame.thickness.value, shell.jointFrame.flange],
    ],
  }
}

/** How its panels lap. */
export const lapsMade = ({ definition: { lining } }: Design): MadeFrom => ({
  name: 'the laps of the lining',
  from: [lining],
  shows: () => lining.lap,
})

/** What all formed panels hang on: the lofted surface, where it is parted, and how the sheets lap. */
export function shapeMade({ definition }: Design): MadeFrom {
  const { section, shell, ends } = definition
  return {
    name: 'the shape of the formed panels',
    from: [section, shell, ends],
    shows: () => [
      [section.crown, section.chain, section.fit, shell.toe, shell.joint, shell.skin.thickness.value],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.lap, ends.skin, ends.minThickness],
    ],
  }
}

export const stockMade = ({ definition: { stock } }: Design): MadeFrom => ({
  name: 'the sheets formed panels are cut from',
  from: [stock],
  shows: () => stock,
})

export const rulesMade = ({ definition: { rules } }: Design): MadeFrom => ({
  name: 'edge distance and clamps',
  from: [rules],
  shows: () => [rules.edgeDistance, rules.clampMargin],
})

/** Of the rivets through these panels, as the notes on their sheets give them. */
export const rivetsMade = ({ definition: { fasteners }, rows }: Design, panels: readonly Part[]): MadeFrom => ({
  name: 'the types of rivets',
  from: [fasteners, rows],
  shows: () => {
    const ids = new Set(panels.map(({ id }) => id))
    const taken = new Set(rows.filter((row) => partsThrough(row).some((id) => ids.has(id))).map(({ fastener }) => fastener))
    return fasteners.filter(({ id }) => taken.has(id)).map(typeShows)
  },
})

/** A blank's sheet is headed by the first panel it is cut for: of the nose, on the right hand or in the middle. */
export function headsMade(design: Design, panels: readonly Part[]): readonly MadeFrom[] {
  const first = panels.filter(({ id, place }) => id.startsWith('nose-') && place.side !== 'left')
  const views = new Set(first.map(figureOf))
  return [...views].map((view) => figureMade(design, view))
}

/** What is read from an object, read once: whoever drags a window holds a hundred designs that share nearly all their objects. */
function once<T extends object, V>(read: (of: T) => V): (of: T) => V {
  const known = new WeakMap<T, V>()
  return (of) => {
    const old = known.get(of)
    if (old !== undefined) return old
    const value = read(of)
    known.set(of, value)
    return value
  }
}

const partsThrough = once((row: FastenerRow): readonly string[] => [...new Set(row.stacks.flatMap((s) => s.parts))])

/** Of each panel: its heading, the rivets through it, whose holes it has, and the openings marked on it. */
export function panelsMade(design: Design, panels: readonly Part[]): readonly MadeFrom[] {
  const { fasteners, frames } = design.definition
  const joints = frames.filter((f) => f.joint !== null).map((f) => f.station)
  const through = new Map(panels.map((p) => [p.id, [] as FastenerRow[]]))
  for (const row of design.rows) for (const id of partsThrough(row)) through.get(id)?.push(row)
  return panels.map((part) => {
    const rows = through.get(part.id) ?? []
    const openings = design.openings.filter((o) => o.cutIn.includes(part.id))
    return {
      name: part.id,
      from: [part, fasteners, frames, ...rows, ...openings],
      shows: () => [
        [part.says, part.side, part.material, part.thickness, part.place, part.notes, part.mass.value],
        joints,
        rows.map((row) => [row.id, drilledFor(fasteners.find((f) => f.id === row.fastener)), pilotsShown(row, part.id)]),
        openings.map((o) => [o.id, o.says, o.end?.loop ?? o.outline]),
      ],
    }
  })
}

const drilledFor = (type: FastenerType | undefined): unknown => type && [type.id, type.kind, type.diameter, type.hole, type.pilot]

/** Each fastener of the row that goes through the part: its name and where it stands. */
function pilotsShown(row: FastenerRow, part: string): readonly unknown[] {
  const isThrough = row.stacks.map((s) => s.parts.includes(part))
  return row.stack.flatMap((stack, i) => {
    if (!isThrough[stack]) return []
    const { from, to } = row.spans[row.span[i]]
    return [[from, to, row.number[i], row.station[i], row.girth[i], row.waterline[i], row.end?.azimuth[i], row.end?.y[i]]]
  })
}

/** Gores bent over their ribs as the definition places them: how far they deviate, and what their seams cost. */
export function waysMade({ definition }: Design): MadeFrom {
  const { section, ends, rows, floor } = definition
  return {
    name: 'two ways to make a gore',
    from: [section, ends, rows.gore, rows.hoop, floor],
    shows: () => [
      [section.crown, section.chain, section.fit, floor?.thickness],
      [ends.profile, ends.exponent, ends.seams, ends.cap, ends.lap, ends.skin, ends.make, ends.within],
      [rows.gore.pitch, rows.hoop.pitch],
    ],
  }
}

const jointTried = once((j: Design['joints'][number]) => [j.id, j.says, j.layers, j.rows])
const partTried = once((p: Part) => [p.id, p.says, p.kind, p.trade, p.material, p.thickness.value, p.patterns[0]?.flat.x])
const rowTried = once((r: FastenerRow) => [
  [r.id, r.kind, r.fastener, r.station, r.girth, r.waterline, r.end],
  [r.stack, r.stacks.map((s) => s.parts)],
])

/** Everything the trials of meeting holes are drawn from: how the shop works, and every fastener with what it goes through. */
export function fitMade({ definition, joints, parts, rows }: Design): MadeFrom {
  const { process, fasteners, section, ends } = definition
  return {
    name: 'whether the holes meet',
    // the lists are made anew with every design: their members are looked at one by one below
    from: [process, fasteners, section, ends, joints, parts, rows],
    shows: () => [
      process,
      fasteners.map((f) => [f.id, f.hole, f.pilot, f.shank, f.diameter.value]),
      // the turn of the surface at each fastener, and whether forming moves holes nobody knows how far
      [section.crown, section.chain, section.fit, ends.make],
      joints.map(jointTried),
      parts.map(partTried),
      rows.map(rowTried),
    ],
  }
}
