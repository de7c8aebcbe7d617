/** Where a pulled edge of an opening comes to lie clean: by the rule beside a frame or a lap, in line with an edge, as large as another. m. */
import { mm } from '../checks/check.js'
import { groundOf, halfFlange } from '../checks/layout/ground.js'
import { lapEdges } from '../checks/layout/lap-edges.js'
import type { OpeningDefinition } from '../definition/types.js'
import type { Derived } from '../derive/index.js'
import { isAcross } from './clean-openings.js'
import { type CleanPlace, down, up } from './clean-place.js'
import type { SizeEdit } from './nouns.js'

export function cleanForEdges(derived: Derived, edit: SizeEdit): readonly CleanPlace[] {
  const own = derived.definition.openings.find((each) => each.id === edit.id)
  if (!own) return []
  const others = derived.definition.openings.filter((each) => each !== own)
  const seen = others.filter((each) => each.surface === own.surface || isAcross(own, each))
  return [...alongEdges(derived, own, seen), ...upEdges(derived, own, seen)].filter(({ key }) => (edit as Keys)[key as keyof Keys] !== null)
}

type Keys = Pick<SizeEdit, 'fore' | 'aft' | 'low' | 'high'>

function alongEdges(derived: Derived, { station, width }: OpeningDefinition, seen: readonly OpeningDefinition[]): readonly CleanPlace[] {
  const ground = groundOf(derived)
  const [fore, aft] = [station - width / 2, station + width / 2]
  const frames = ground.input.frames.flatMap((frame) => {
    const off = halfFlange(ground, frame) + ground.line + ground.edge
    const says = `rim rivets ${mm(ground.edge)} mm clear of frame ${frame.id}: least allowed`
    return [both('fore', up(frame.station + off), says), both('aft', down(frame.station - off), says)]
  })
  const others = seen.flatMap((each) => [
    both('fore', each.station - each.width / 2, `in line with the fore edge of ${each.id}`),
    both('aft', each.station + each.width / 2, `in line with the aft edge of ${each.id}`),
    both('fore', aft - each.width, `as wide as ${each.id}, ${mm(each.width)} mm`),
    both('aft', fore + each.width, `as wide as ${each.id}, ${mm(each.width)} mm`),
  ])
  return [...frames, ...others]
}

function upEdges(derived: Derived, own: OpeningDefinition, seen: readonly OpeningDefinition[]): readonly CleanPlace[] {
  const middle = own.waterline
  if (middle === null) return seen.flatMap((each) => tall(own.girth, own.height, each))
  const ground = groundOf(derived)
  const laps = lapEdges(ground, own.surface).flatMap(({ seam, under, over }) => {
    const says = `rim rivets ${mm(ground.edge)} mm clear of lap ${seam}: least allowed`
    return [both('high', down(under), says), both('low', up(over), says)]
  })
  const others = seen.flatMap((each) => [
    ...tall(middle, own.height, each),
    both('low', (each.waterline ?? 0) - each.height / 2, `level with the sill of ${each.id}`),
    both('high', (each.waterline ?? 0) + each.height / 2, `level with the head of ${each.id}`),
  ])
  return [...laps, ...others]
}

const tall = (middle: number, height: number, { id, height: other }: OpeningDefinition): readonly CleanPlace[] => [
  both('low', middle + height / 2 - other, `as high as ${id}, ${mm(other)} mm`),
  both('high', middle - height / 2 + other, `as high as ${id}, ${mm(other)} mm`),
]

const both = (key: CleanPlace['key'], at: number, says: string): CleanPlace => ({ key, at, guide: at, says })
