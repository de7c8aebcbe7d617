/** Several coaches beside each other: of each its outline and the figures one compares, and which of these differ. */
import type { Design } from '../derive/design.js'
import type { Box } from './box.js'
import { elevationOf } from './elevation.js'
import type { Drawn, Look } from './nouns.js'

export interface Side {
  readonly file: string
  readonly name: string
  readonly revision: string
  /** as on the elevation, without rivets and masses */
  readonly drawn: readonly Pick<Drawn, 'layer' | 'points' | 'closed'>[]
  readonly box: Box
  /** what it comes to, by name; a figure nobody can work out says why */
  readonly figures: Readonly<Record<string, Figure>>
}

export interface Figure {
  readonly says: string
  /** rounded as it is said, to be compared by; null where it is not known */
  readonly value: number | null
}

export interface SideRow {
  readonly name: string
  readonly says: readonly string[]
  readonly differs: boolean
}

const figure = (value: number, digits: number, unit: string): Figure => {
  const rounded = Number(value.toFixed(digits))
  return { says: `${rounded.toFixed(digits)}${unit === '' ? '' : ` ${unit}`}`, value: rounded }
}
const unknown = (says: string): Figure => ({ says, value: null })

export function sideOf(design: Design, file: string, look: Look): Side {
  const { drawn, box } = elevationOf(design, look)
  const { coach } = design.definition
  return {
    ...{ file, name: coach.name, revision: design.revision, box },
    drawn: drawn.filter(({ layer }) => layer !== 'masses').map(({ layer, points, closed }) => ({ layer, points, closed })),
    figures: figuresOf(design),
  }
}

function figuresOf(design: Design): Side['figures'] {
  const { totals, definition, parts, checks, openings } = design
  const { solid, blind } = totals.fasteners
  const verdicts = (verdict: string): number => checks.filter((each) => each.verdict === verdict).length
  return {
    'Body, nose to tail': figure(totals.bodyLength * 1000, 0, 'mm'),
    'Over all, with the A-frame': figure(totals.overallLength * 1000, 0, 'mm'),
    Width: figure(totals.overallWidth * 1000, 0, 'mm'),
    Frames: figure(definition.frames.length, 0, ''),
    Openings: figure(openings.length, 0, ''),
    ...weighed(design),
    Parts: figure(parts.length, 0, ''),
    Rivets: figure(solid + blind, 0, ''),
    'of them solid': figure(solid, 0, ''),
    Holes: figure(totals.holes, 0, ''),
    'Checks that fail': figure(verdicts('fail'), 0, ''),
    Cautions: figure(verdicts('caution'), 0, ''),
  }
}

function weighed({ weight, definition }: Design): Record<string, Figure> {
  const names = ['Unloaded', 'Cargo it may carry', 'Hitch, least of the cases', 'Hitch, most of the cases'] as const
  const written = definition.weight
  if (!('cases' in weight) || !written) return Object.fromEntries(names.map((name) => [name, unknown('not weighed')]))
  const cases = weight.cases.filter(({ design }) => design)
  const shares = cases.map(({ share, id }) => ({ id, share: share.value }))
  const least = shares.reduce((a, b) => (b.share < a.share ? b : a), shares[0])
  const most = shares.reduce((a, b) => (b.share > a.share ? b : a), shares[0])
  const share = (one: (typeof shares)[number] | undefined): Figure =>
    one ? { says: `${(one.share * 100).toFixed(1)} %, case ${one.id}`, value: Number((one.share * 100).toFixed(1)) } : unknown('no cases')
  return {
    Unloaded: figure(weight.unloaded.value, 0, 'kg'),
    'Cargo it may carry': figure(weight.capacity.value, 0, 'kg'),
    'Hitch, least of the cases': share(least),
    'Hitch, most of the cases': share(most),
  }
}

/** Rows that differ first, each in the order of the figures. */
export function rowsBeside(sides: readonly Side[]): readonly SideRow[] {
  const names = [...new Set(sides.flatMap(({ figures }) => Object.keys(figures)))]
  const rows = names.map((name): SideRow => {
    const each = sides.map(({ figures }) => figures[name] ?? unknown('not known'))
    return { name, says: each.map(({ says }) => says), differs: new Set(each.map(({ says }) => says)).size > 1 }
  })
  return [...rows.filter(({ differs }) => differs), ...rows.filter(({ differs }) => !differs)]
}
