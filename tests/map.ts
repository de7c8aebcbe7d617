/** Compares src/README.md, the map, with the rooms that are really there. */
import { ROOMS } from './rules.js'
import type { Tree } from './tree.js'

const MAP = 'src/README.md'

/** Lines of the form `- \`room/\` what it is for`, in the order they stand. */
export const mapped = (readme: string): readonly string[] => [...readme.matchAll(/^\s*- `([^`]+)` +\S/gm)].map((match) => match[1] ?? '')

/** Every folder of src/ that holds a file, at any depth, with a closing slash; and every file that stands at its top. */
export function standing(tree: Tree): readonly string[] {
  const found = new Set<string>()
  for (const path of tree.keys()) {
    if (!path.startsWith('src/') || path === MAP) continue
    const inside = path.slice('src/'.length).split('/')
    if (inside.length === 1) found.add(inside[0] ?? '')
    for (let depth = 1; depth < inside.length; depth++) found.add(`${inside.slice(0, depth).join('/')}/`)
  }
  return [...found].sort()
}

/** Sentences saying where the map and the ground differ; none when the map is true. */
export function mapFaults(tree: Tree): readonly string[] {
  const written = mapped(tree.get(MAP) ?? '')
  const real = standing(tree)
  const rooms = written.map((line) => ROOMS.findIndex((room) => line === `${room}/` || line.startsWith(`${room}/`)))
  return [
    ...real.filter((name) => !written.includes(name)).map((name) => `src/${name} is not on the map, src/README.md`),
    ...written.filter((name) => !real.includes(name)).map((name) => `src/README.md names ${name}, which is not there`),
    ...written.filter((name, i) => written.indexOf(name) < i).map((name) => `src/README.md names ${name} twice`),
    ...written
      .filter((_, i) => i > 0 && (rooms[i] ?? -1) < (rooms[i - 1] ?? -1))
      .map((name) => `src/README.md names ${name} out of reading order`),
    ...written
      .filter((name, i) => isBeforeItsFolder(name, i, written))
      .map((name) => `src/README.md names ${name} before the folder it stands in`),
  ]
}

function isBeforeItsFolder(name: string, i: number, written: readonly string[]): boolean {
  const folder = name.replace(/[^/]+\/?$/, '')
  return folder !== '' && !written.slice(0, i).includes(folder)
}
