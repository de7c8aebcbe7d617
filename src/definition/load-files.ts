/** Follows `extends` from file to file and lays them over one another; every file states its schema version. */
import { mergeWritten, withoutOmits } from './merge.js'
import { readYaml } from './read-yaml.js'
import type { Fault } from './types.js'
import { child, found, type Where, type Written, type WrittenMap } from './written.js'

/** Version of the written form this program reads. */
export const SCHEMA = 1

/** Gives a file's text, or null where there is none. The core never touches a disk. */
export type Load = (path: string) => string | null

export interface Source {
  readonly path: string
  readonly text: string
}

export interface Loaded {
  /** merged, without `extends` and `schema`; null when some file does not read at all */
  readonly root: Written | null
  readonly faults: Fault[]
  /** in the order met: the entry first */
  readonly sources: readonly Source[]
}

/** How a text becomes its written form; whoever reads the same files again and again hands in one that keeps them. */
export type Parse = typeof readYaml

export function loadFiles(path: string, text: string, load: Load, parse: Parse = readYaml): Loaded {
  const faults: Fault[] = []
  const sources: Source[] = []
  const read = new Map<string, Written | null>()
  const root = open(path, text, [])
  return { root, faults, sources }

  function open(file: string, content: string, above: readonly string[]): Written | null {
    const known = read.get(file)
    if (known !== undefined) return known
    sources.push({ path: file, text: content })
    const { root: own, faults: slips } = parse(content, file)
    faults.push(...slips)
    const merged = own && withParents(own, file, [...above, file])
    read.set(file, merged)
    return merged
  }

  function withParents(own: Written, file: string, chain: readonly string[]): Written | null {
    if (own.kind !== 'map') {
      faults.push(plain('the definition', own.at, 'keys such as coach: and frames:', found(own), 'Start from one of the examples.'))
      return null
    }
    checkSchema(own)
    const rest = new Map(own.entries)
    rest.delete('extends')
    rest.delete('schema')
    const mine: WrittenMap = { ...own, entries: rest }
    let base: Written | null = null
    let whole = true
    for (const parent of parents(own, file)) {
      const above = openParent(parent, chain)
      if (above) base = base ? mergeWritten(base, above, faults) : above
      else whole = false
    }
    if (!whole) return null
    return base ? mergeWritten(base, mine, faults) : withoutOmits(mine, faults)
  }

  function openParent(
    parent: { readonly path: string; readonly written: string; readonly at: Where },
    chain: readonly string[],
  ): Written | null {
    if (chain.includes(parent.path)) {
      const round = [...chain.slice(chain.indexOf(parent.path)), parent.path].join(' extends ')
      faults.push(
        plain(
          'extends',
          parent.at,
          'files that do not lead back here',
          `"${parent.written}"`,
          `The chain goes round: ${round}. Take one of them out.`,
        ),
      )
      return null
    }
    const content = load(parent.path)
    if (content === null) {
      faults.push(
        plain('extends', parent.at, 'a file beside this one', `"${parent.written}"`, `There is no file ${parent.path}: check its name.`),
      )
      return null
    }
    return open(parent.path, content, chain)
  }

  function parents(own: WrittenMap, file: string): { path: string; written: string; at: Where }[] {
    const written = child(own, 'extends')
    if (!written) return []
    const items = written.kind === 'list' ? written.items : [written]
    return items.flatMap((item) => {
      if (item.kind === 'scalar' && typeof item.value === 'string' && item.value !== '') {
        return [{ path: beside(file, item.value), written: item.value, at: item.at }]
      }
      faults.push(plain('extends', item.at, 'the name of a file beside this one', found(item), 'For instance extends: sedge.family.yaml.'))
      return []
    })
  }

  function checkSchema(own: WrittenMap): void {
    const written = child(own, 'schema')
    const expected = `the version of the form, ${SCHEMA}`
    if (!written) {
      faults.push(plain('schema', own.at, expected, 'nothing', `Add the line schema: ${SCHEMA} at the top of the file.`))
    } else if (
      written.kind === 'scalar' &&
      typeof written.value === 'number' &&
      Number.isInteger(written.value) &&
      written.value > SCHEMA
    ) {
      faults.push(plain('schema', written.at, expected, found(written), 'It was written for a newer Coachwright: update the program.'))
    } else if (written.kind !== 'scalar' || written.value !== SCHEMA) {
      faults.push(plain('schema', written.at, expected, found(written), `Write schema: ${SCHEMA}.`))
    }
  }
}

function plain(path: string, at: Where, expected: string, foundHere: string, advice: string): Fault {
  return { path, ...at, expected, found: foundHere, says: `${path}: expected ${expected}, found ${foundHere}. ${advice}` }
}

/** `../a.yaml` beside `examples/b/c.yaml` is `examples/a.yaml`. Forward slashes, as in the file itself. */
export function beside(file: string, relative: string): string {
  if (relative.startsWith('/')) return relative
  const out: string[] = []
  const steps = [...file.split('/').slice(0, -1), ...relative.split('/')]
  steps.forEach((step, i) => {
    if (step === '..' && out.length && out[out.length - 1] !== '..' && out[out.length - 1] !== '') out.pop()
    else if (step !== '.' && (step !== '' || i === 0)) out.push(step)
  })
  return out.join('/')
}
