/**
 * Results of heavy studies kept on disk under the key of what they depend on, in node's own folder for such things. It may be emptied
 * at any time; where it cannot be written nothing is kept and everything is worked out afresh.
 */
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Results of one study that are kept, the oldest going first. */
const KEPT = 40

const folderOf = (study: string): string => join(fileURLToPath(new URL('../../../node_modules/.cache/coachwright', import.meta.url)), study)

/** What was kept under the key, or null. A file that does not read or is not what it says counts as none. */
export function fromCache<T extends { readonly key: string }>(study: string, key: string, folder: string = folderOf(study)): T | null {
  try {
    const kept = JSON.parse(readFileSync(join(folder, `${key}.json`), 'utf8')) as T
    return kept.key === key ? kept : null
  } catch {
    return null
  }
}

export function intoCache(study: string, result: { readonly key: string }, folder: string = folderOf(study)): void {
  try {
    mkdirSync(folder, { recursive: true })
    const file = join(folder, `${result.key}.json`)
    // another process may be reading: the name appears with the whole of it
    const beside = `${file}.${process.pid}`
    writeFileSync(beside, JSON.stringify(result))
    renameSync(beside, file)
    const all = readdirSync(folder).map((name) => ({ name, at: statSync(join(folder, name)).mtimeMs }))
    for (const { name } of all.sort((a, b) => b.at - a.at).slice(KEPT)) rmSync(join(folder, name), { force: true })
  } catch {
    // a cache that cannot be written is no cache; the result is at hand
  }
}
