/** The demonstration coaches, read from examples/ the way the command reads them. */
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { readDefinition } from '../src/definition/read-definition.js'
import type { Definition } from '../src/definition/types.js'

const root = fileURLToPath(new URL('..', import.meta.url))

/** The texts of examples/, read beforehand: a bench of the reader does not time the disk. */
export function textOf(path: string): string {
  return readFileSync(join(root, path), 'utf8')
}

const load = (path: string): string | null => (existsSync(join(root, path)) ? textOf(path) : null)

export function definitionOf(path: string): Definition {
  const { definition, faults } = readDefinition(path, textOf(path), load)
  if (definition === null) throw new Error(`${path} has faults: ${faults.map((fault) => fault.says).join(' ')}`)
  return definition
}

/** The same numbers in new objects, so that nothing kept from an earlier derivation is recognised. */
export const afresh = (definition: Definition): Definition => freeze(structuredClone(definition))

/** Barrel and ends: no chassis, nothing on the floor, and nobody asks what it weighs or how it tows. */
export const bodyAlone = (definition: Definition): Definition => ({
  ...definition,
  ...{ chassis: null, weight: null, masses: [], suspension: null, towing: null, papers: null },
  floor: definition.floor && { ...definition.floor, panel: null, covering: null, bolts: null, screws: null, openings: [], cutter: null },
})

function freeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null) {
    for (const inner of Object.values(value)) freeze(inner)
    Object.freeze(value)
  }
  return value
}

/** The definition with one opening moved aft, everything else the very same objects. m. */
export function withOpeningMoved(definition: Definition, id: string, by: number): Definition {
  if (!definition.openings.some((opening) => opening.id === id)) throw new Error(`${definition.coach.name} has no opening ${id}`)
  const openings = definition.openings.map((opening) =>
    opening.id === id ? Object.freeze({ ...opening, station: opening.station + by }) : opening,
  )
  return Object.freeze({ ...definition, openings: Object.freeze(openings) })
}

/** The definition with one stated mass moved aft, everything else the very same objects. m. */
export function withMassMoved(definition: Definition, item: string, by: number): Definition {
  if (!definition.masses.some((mass) => mass.item === item)) throw new Error(`${definition.coach.name} has no ${item}`)
  const masses = definition.masses.map((mass) =>
    mass.item === item && mass.station !== null ? Object.freeze({ ...mass, station: mass.station + by }) : mass,
  )
  return Object.freeze({ ...definition, masses: Object.freeze(masses) })
}
