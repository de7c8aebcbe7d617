/** The demonstration's definitions, read from examples/. */
import { existsSync, readFileSync } from 'node:fs'
import { readDefinition } from '../src/definition/read-definition.js'
import type { Definition } from '../src/definition/types.js'

const load = (path: string): string | null => (existsSync(path) ? readFileSync(path, 'utf8') : null)

/** Throws with the first fault, as an example has none. */
export function readExample(name: string): Definition {
  const path = `examples/${name}.yaml`
  const { definition, faults } = readDefinition(path, readFileSync(path, 'utf8'), load)
  if (!definition) throw new Error(`${path} does not read: ${faults[0]?.says}`)
  return definition
}

/** The text of an example and the loader of its family, for those who change a line first. */
export function exampleText(name: string): { readonly path: string; readonly text: string; readonly load: typeof load } {
  const path = `examples/${name}.yaml`
  return { path, text: readFileSync(path, 'utf8'), load }
}

/** An example with every file it extends, as the desk is handed it. */
export function exampleFiles(name: string): { readonly path: string; readonly files: Readonly<Record<string, string>> } {
  const { path, text } = exampleText(name)
  const files: Record<string, string> = {}
  readDefinition(path, text, (other) => {
    const found = load(other)
    if (found !== null) files[other] = found
    return found
  })
  return { path, files: { ...files, [path]: text } }
}
