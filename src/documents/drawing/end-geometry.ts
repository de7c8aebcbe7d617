/** An end in metres as a view shows it: from the local axes of the end to the coach, and which of its lines a view sees. */
import type { Design } from '../../derive/design.js'
import type { EndLine, Point3 } from '../../derive/jig-nouns.js'
import type { Part } from '../../derive/nouns.js'

export type WhichEnd = 'nose' | 'tail'

export interface EndStands {
  readonly end: WhichEnd
  /** station of its joint frame */
  readonly joint: number
  /** which way outward runs in stations */
  readonly out: 1 | -1
}

/** Where the ends stand, as the design says; an end whose joint no frame carries is left out. */
export function endsOf(design: Design): readonly EndStands[] {
  return (['nose', 'tail'] as const).flatMap((end) => {
    const frame = design.definition.frames.find((f) => f.joint === end)
    return frame ? [{ end, joint: frame.station, out: end === 'nose' ? (-1 as const) : (1 as const) }] : []
  })
}

/** A place of the coach (station, y, z) in the axes of its end. */
export const intoEnd = (at: EndStands, station: number, y: number, z: number): Point3 => [at.out * (station - at.joint), y, z]

/** The upper stretch of a line down an end, to where it stands farthest out: what is seen from above. */
export function seenFromAbove(line: EndLine): readonly Point3[] {
  const reach = line.points.map(([x, y]) => Math.hypot(x, y))
  return line.points.slice(0, reach.indexOf(Math.max(...reach)) + 1)
}

/** The lines that show where a part of an end sits, or null for a part that has none: then its place is marked. */
export function linesOfPart(design: Design, part: Part): readonly Point3[] | null {
  const { lines } = design.ends.drawn
  const named = (id: string): readonly Point3[] => lines.find((l) => l.id === id)?.points ?? []
  const number = Number(/-(\d+)$/.exec(part.id)?.[1] ?? Number.NaN)
  switch (part.kind) {
    case 'end-rib':
      return named(part.id.includes('-seam-rib-') ? `seam-${number}` : `mid-${number}`)
    case 'header-ring':
      return named('cap')
    case 'end-base':
      return named('floor')
    default:
      return null
  }
}

/** The patch a skin of an end covers: a gore between its edges, or the cap. */
export function patchOfPart(design: Design, part: Part): readonly Point3[] | null {
  const { lines } = design.ends.drawn
  if (part.kind === 'crown-cap') {
    const edge = lines.find((l) => l.kind === 'cap')?.points ?? []
    return edge.length === 0 ? null : edge
  }
  if (part.kind !== 'gore') return null
  const edges = lines.filter((l) => l.kind === 'joint' || l.kind === 'seam')
  const k = Number(/-(\d+)$/.exec(part.id)?.[1] ?? Number.NaN)
  const [right, left] = [edges[k - 1], edges[k]]
  return right && left ? [...right.points, ...[...left.points].reverse()] : null
}
