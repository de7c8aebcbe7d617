/** What weighs twice: one name at one place, or a stated item beside the very thing that is derived and that it does not name. */
import type { MassDefinition } from '../../definition/weight-types.js'
import type { MassLine, Point, Twice, Twin } from '../weight-nouns.js'
import { middle } from './middle.js'

/** Within a hand's breadth of each other two things of one name are one thing, m. Common practice, no source. */
const HAND = 0.1

export function sameTwice(lines: readonly MassLine[]): Twice[] {
  const byName = new Map<string, Point[]>()
  const found: Twice[] = []
  for (const { says, centre } of lines) {
    const name = says.toLowerCase()
    const places = byName.get(name) ?? []
    if (places.some((p) => Math.hypot(p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]) < HAND)) found.push({ says, at: centre })
    byName.set(name, [...places, centre])
  }
  return found
}

/**
 * A stated item of the same group whose name holds every word of what is derived (`floor panel 18 mm` beside `floor-panel`), and
 * that names no twin. One finding an item, whatever number of parts it is.
 */
export function statedToo(masses: readonly MassDefinition[], untaken: readonly Twin[]): Twice[] {
  return masses.flatMap(({ item, group, twins }): Twice[] => {
    if (twins.length > 0) return []
    const name = item.toLowerCase()
    const own = untaken.filter((twin) => twin.group === group && twin.words.some((word) => isNamed(name, word)))
    const [first] = own
    if (!first) return []
    const more = own.length === 1 ? '' : ` and ${own.length - 1} more`
    const says = `${item}, which the list states and the design derives as well (${first.says}${more}; its twin is ${first.words[0]})`
    return [{ says, at: middle(own.flatMap((twin) => twin.points)) }]
  })
}

/** Kinds are written with hyphens; what is bought or cut goes by its own name after the word that says so. */
const isNamed = (name: string, word: string): boolean =>
  word
    .replace(/^(bought|opening) /, '')
    .toLowerCase()
    .split(/[- ]/)
    // few names hold even the letters
    .every((part) => name.includes(part) && new RegExp(`(^|[^a-z0-9])${part}(e?s)?([^a-z0-9]|$)`).test(name))
