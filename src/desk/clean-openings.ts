/** Where an opening stands clean: beside a frame by the rule, between frames, in line or level with another, clear of a lap. m. */
import { mm } from '../checks/check.js'
import { type Ground, groundOf, halfFlange } from '../checks/layout/ground.js'
import { lapEdges } from '../checks/layout/lap-edges.js'
import type { OpeningDefinition } from '../definition/types.js'
import type { Derived } from '../derive/index.js'
import { type CleanPlace, down, up } from './clean-place.js'
import type { MoveEdit } from './nouns.js'

export function cleanForOpening(derived: Derived, { id, station }: MoveEdit): readonly CleanPlace[] {
  const { openings } = derived.definition
  const own = openings.find((each) => each.id === id)
  // an end has its own rules, and a pane there moves along one axis only
  if (!own || own.surface === 'nose' || own.surface === 'tail') return []
  const ground = groundOf(derived)
  const others = openings.filter((each) => each.id !== id)
  const beside = others.filter((each) => each.surface === own.surface)
  return [
    ...besideFrames(ground, own),
    ...betweenFrames(ground, own),
    ...besideOpenings(ground, own),
    ...inLine(own, beside),
    ...(own.surface === 'roof'
      ? []
      : [...level(own, beside), ...others.filter((each) => isAcross(own, each)).flatMap((each) => opposite(own, each))]),
    ...(own.surface === 'roof' ? onTheRoof(beside) : clearOfLaps(ground, own)),
    ...onThePitch(derived, own, station ?? own.station),
  ]
}

export const isAcross = (own: OpeningDefinition, other: OpeningDefinition): boolean =>
  (own.surface === 'left' && other.surface === 'right') || (own.surface === 'right' && other.surface === 'left')

/** The rule between the rivets of a rim and the flange of a frame. */
function besideFrames(ground: Ground, { width }: OpeningDefinition): readonly CleanPlace[] {
  return ground.input.frames.flatMap((frame) => {
    const reach = halfFlange(ground, frame) + ground.line + ground.edge + width / 2
    const says = `rim rivets ${mm(ground.edge)} mm clear of frame ${frame.id}: least allowed`
    const [fore, aft] = [down(frame.station - reach), up(frame.station + reach)]
    return [
      { key: 'station', at: aft, guide: aft - width / 2, says },
      { key: 'station', at: fore, guide: fore + width / 2, says },
    ] as const
  })
}

function betweenFrames({ input: { frames } }: Ground, { width }: OpeningDefinition): readonly CleanPlace[] {
  return frames.flatMap((frame, i): readonly CleanPlace[] => {
    const next = frames[i + 1]
    if (!next) return []
    const middle = (frame.station + next.station) / 2
    if (width < next.station - frame.station)
      return [{ key: 'station', at: middle, guide: middle, says: `centred between frames ${frame.id} and ${next.id}` }]
    return i === 0 ? [] : [{ key: 'station', at: frame.station, guide: frame.station, says: `centred on frame ${frame.id}` }]
  })
}

/** The rule between two rims, where they would stand beside each other. */
function besideOpenings(ground: Ground, own: OpeningDefinition): readonly CleanPlace[] {
  const { shapes } = ground.derived.shell.laid
  const shape = shapes.find((each) => each.id === own.id)
  if (!shape) return []
  return shapes
    .filter((other) => other !== shape && other.v0 < shape.v1 + 2 * ground.reach && other.v1 > shape.v0 - 2 * ground.reach)
    .flatMap((other) => {
      const off = 2 * ground.reach + own.width / 2
      const says = `rims just clear of ${other.surface === 'wheel' ? 'the wheel opening' : other.id}: least allowed`
      const [fore, aft] = [down(other.x0 - off), up(other.x1 + off)]
      return [
        { key: 'station', at: fore, guide: fore + own.width / 2, says },
        { key: 'station', at: aft, guide: aft - own.width / 2, says },
      ] as const
    })
}

function inLine(own: OpeningDefinition, beside: readonly OpeningDefinition[]): readonly CleanPlace[] {
  return beside.flatMap(({ id, station, width }) => {
    const [fore, aft] = [station - width / 2, station + width / 2]
    return [
      { key: 'station', at: station, guide: station, says: `in line with ${id}` },
      { key: 'station', at: fore + own.width / 2, guide: fore, says: `fore edge in line with that of ${id}` },
      { key: 'station', at: aft - own.width / 2, guide: aft, says: `aft edge in line with that of ${id}` },
    ] as const
  })
}

function level(own: OpeningDefinition, beside: readonly OpeningDefinition[]): readonly CleanPlace[] {
  return beside.flatMap(({ id, waterline, height }): readonly CleanPlace[] => {
    if (waterline === null) return []
    const [head, sill] = [waterline + height / 2, waterline - height / 2]
    return [
      { key: 'waterline', at: waterline, guide: waterline, says: `level with ${id}` },
      { key: 'waterline', at: head - own.height / 2, guide: head, says: `head level with that of ${id}` },
      { key: 'waterline', at: sill + own.height / 2, guide: sill, says: `sill level with that of ${id}` },
    ]
  })
}

function opposite({ height }: OpeningDefinition, other: OpeningDefinition): readonly CleanPlace[] {
  const { id, station, waterline } = other
  if (waterline === null) return [{ key: 'station', at: station, guide: station, says: `opposite ${id}` }]
  const head = waterline + other.height / 2
  return [
    { key: 'station', at: station, guide: station, says: `opposite ${id}` },
    { key: 'waterline', at: waterline, guide: waterline, says: `level with ${id} on the other side` },
    { key: 'waterline', at: head - height / 2, guide: head, says: `head level with that of ${id} on the other side` },
  ]
}

const onTheRoof = (beside: readonly OpeningDefinition[]): readonly CleanPlace[] => [
  { key: 'across', at: 0, guide: 0, says: 'on the centre line' },
  ...beside.map(({ id, girth }) => ({ key: 'across' as const, at: girth, guide: girth, says: `as far across as ${id}` })),
]

/** The rule between the rivets of a rim and a lap: the highest place under each, the lowest over it. */
function clearOfLaps(ground: Ground, { surface, height }: OpeningDefinition): readonly CleanPlace[] {
  return lapEdges(ground, surface).flatMap(({ seam, under, over }): readonly CleanPlace[] => {
    const says = `rim rivets ${mm(ground.edge)} mm clear of lap ${seam}: least allowed`
    return [
      { key: 'waterline', at: down(under - height / 2), guide: under, says },
      { key: 'waterline', at: up(over + height / 2), guide: over, says },
    ]
  })
}

/** The fore row of the rim over a rivet of the next seam, so that both lie on the pitch of the strake between them. */
function onThePitch({ shell }: Derived, own: OpeningDefinition, station: number): readonly CleanPlace[] {
  const { line } = shell.laid.input.shell.rim
  const sign = own.surface === 'left' ? -1 : 1
  const shape = shell.laid.shapes.find((each) => each.id === own.id)
  if (!shape || own.surface === 'roof') return []
  const top = sign > 0 ? shape.v0 : -shape.v1
  const rows = shell.rows
    .filter((row) => row.kind === 'seam' && row.girth.length > 0 && Math.sign(row.girth[0]) === sign)
    .sort((a, b) => off(a) - off(b))
  function off(row: { readonly girth: readonly number[] }): number {
    return Math.abs(Math.abs(row.girth[0]) - top)
  }
  const [row] = rows
  if (!row) return []
  const wanted = station - own.width / 2 - line
  const nearest = row.station.reduce((best, each) => (Math.abs(each - wanted) < Math.abs(best - wanted) ? each : best), row.station[0])
  return [{ key: 'station', at: nearest + line + own.width / 2, guide: nearest, says: `rim row on the pitch of ${row.id}`, isPitch: true }]
}
