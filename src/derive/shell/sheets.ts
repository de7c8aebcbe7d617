/** The barrel's strakes: bands between seams, each lapped under the one above it, and how each lies in the stack. */
import { type DepthZone, type Development, developAt, developed } from '../../maths/development.js'
import type { TangentChain } from '../../maths/tangent-chain.js'
import type { Memo } from '../memo.js'
import { barrelOf, type ShellInput } from './input.js'
import type { OpeningShape } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import type { Section } from './section.js'

/** One lap: signed girth of its seam line and which sheet lies under. */
export interface Lap {
  readonly seam: string
  readonly side: 'left' | 'right'
  readonly girth: number
  readonly half: number
}

/** Layers from the outside in; within one, sheets that lie under others come a fraction later. */
export const ORDER = { skin: 0, end: 2, member: 3, framing: 4, belly: 5, inner: 6, lining: 7 }

/** Order of the ith of n sheets that lap in one layer: always less than the next layer's. */
export const lapped = (layer: number, i: number, n: number): number => layer + i / n

export function lapsOf(input: ShellInput): Lap[] {
  return input.shell.seams.flatMap((seam) =>
    (['left', 'right'] as const).map((side) => ({
      seam: seam.id,
      side,
      girth: side === 'right' ? seam.girth : -seam.girth,
      half: input.shell.lap / 2,
    })),
  )
}

/** Depth of the neutral surface in a bent toe flange: the K-factor is measured from the inside of the bend. */
function bendZones(input: ShellInput, section: Section, t: number): DepthZone[] {
  const { turn, kFactor } = input.shell.toe
  if (turn === 0) return []
  const depth = turn > 0 ? t * (1 - kFactor) : t * kFactor
  const bend = section.withFlange.elements[section.withFlange.elements.length - 2]
  return [
    { from: bend.girth0, to: bend.girth1, depth },
    { from: -bend.girth1, to: -bend.girth0, depth },
  ]
}

/** The skin's own mid surface without any lap: openings and rim lines are drawn on it. */
export function skinDevelopment(input: ShellInput, section: Section): Development {
  const t = input.shell.skin.thickness.value
  return developAt(section.withFlange, t / 2, bendZones(input, section, t))
}

export function strakesOf(
  input: ShellInput,
  section: Section,
  shapes: readonly OpeningShape[],
  skin: Development,
  memo: Memo,
  token: unknown,
): Plate[] {
  const { x0, x1 } = barrelOf(input)
  const t = input.shell.skin.thickness.value
  const half = input.shell.lap / 2
  const seams = input.shell.seams.map((s) => s.girth)
  const edges = [0, ...seams, section.sheetEdge]
  const strakes: Plate[] = []
  const count = input.shell.strakes.length
  const upperOver = input.shell.lapOrder === 'upper over lower'
  input.shell.strakes.forEach((strake, i) => {
    const upper = edges[i]
    const lower = edges[i + 1]
    const top = i === 0 ? -(lower + half) : upper - half
    const bottom = i === input.shell.strakes.length - 1 ? lower : lower + half
    // the lap in which this sheet lies under its neighbour
    const under: [number, number][] = []
    if (upperOver && i > 0) under.push([upper - half, upper + half])
    if (!upperOver && i < seams.length) under.push([lower - half, lower + half])
    const zones: DepthZone[] = under.flatMap(([from, to]) => [
      { from, to, depth: 1.5 * t },
      { from: -to, to: -from, depth: 1.5 * t },
    ])
    const development = memo.keep(`strake-${strake.id} development`, [token], () =>
      zones.length > 0 ? developAt(section.withFlange, t / 2, [...zones, ...bendZones(input, section, t)]) : skin,
    )
    for (const side of i === 0 ? (['centre'] as const) : (['left', 'right'] as const)) {
      const [g0, g1] = side === 'left' ? [-bottom, -top] : [top, bottom]
      const id = side === 'centre' ? `strake-${strake.id}` : `strake-${strake.id}-${side}`
      const plate: Plate = {
        part: id,
        face: 'sheet',
        kind: 'strake',
        says: `${strake.id} strake${side === 'centre' ? '' : `, ${side} side`}`,
        material: input.shell.skin.alloy,
        thickness: t,
        x0,
        x1,
        g0,
        g1,
        order: lapped(ORDER.skin, upperOver ? i : count - 1 - i, count),
        development,
        lie: lieOf(g0, g1),
        cuts: shapes.filter((s) => meets(s, x0, x1, g0, g1, skin)),
        ring: null,
        marks: rollMarks(section.withFlange, x0, x1, g0, g1),
      }
      strakes.push(memo.keep(id, [token, ...plate.cuts], () => plate))
    }
  })
  return strakes
}

function meets(s: OpeningShape, x0: number, x1: number, g0: number, g1: number, skin: Development): boolean {
  return s.x1 > x0 && s.x0 < x1 && s.v1 > developed(skin, g0) && s.v0 < developed(skin, g1)
}

/** Where the radius of the sheet changes: the lines a roller sets out from. Flat coordinates are filled in by patterns.ts. */
function rollMarks(chain: TangentChain, x0: number, x1: number, g0: number, g1: number): Plate['marks'] {
  const marks: Plate['marks'][number][] = []
  for (const [i, e] of chain.elements.entries()) {
    if (i === 0) continue
    for (const g of [e.girth0, -e.girth0]) {
      if (g <= g0 || g >= g1) continue
      marks.push({
        says: `${chain.elements[i - 1].name} to ${e.name}`,
        kind: e.name === 'toe bend' ? 'bend' : 'roll',
        from: [x0, g],
        to: [x1, g],
      })
    }
  }
  return marks
}
