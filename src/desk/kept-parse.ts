/** Reads each file's text once as long as it stays the same: of a coach's files only the one that is edited changes. */
import type { Parse } from '../definition/load-files.js'
import { readYaml } from '../definition/read-yaml.js'

export function keptParse(): Parse {
  const kept = new Map<string, { readonly text: string; readonly read: ReturnType<Parse> }>()
  return (text, file) => {
    const known = kept.get(file)
    if (known && known.text === text) return known.read
    const read = readYaml(text, file)
    kept.set(file, { text, read })
    return read
  }
}
