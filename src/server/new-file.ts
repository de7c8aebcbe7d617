/** A file that was not there before: beside the known ones, under a plain name, whole or not at all, and never over another. */
import { closeSync, fsyncSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname } from 'node:path'

/** No name that hides, leads elsewhere, or that some disk would not take. */
const PLAIN = /^[A-Za-z0-9][A-Za-z0-9._-]{0,80}\.ya?ml$/

export type NewTrouble = 'not a name' | 'taken' | { readonly reason: unknown }

/** Null when it is written. `folders` are whole paths; a link of that name is a file that is there. */
export function newFile(file: string, folders: ReadonlySet<string>, text: string): NewTrouble | null {
  if (!folders.has(dirname(file)) || !PLAIN.test(basename(file))) return 'not a name'
  let handle: number
  try {
    handle = openSync(file, 'wx')
  } catch (reason) {
    return (reason as NodeJS.ErrnoException).code === 'EEXIST' ? 'taken' : { reason }
  }
  try {
    writeFileSync(handle, text)
    fsyncSync(handle)
    return null
  } catch (reason) {
    // the half of a file is worse than none
    rmSync(file, { force: true })
    return { reason }
  } finally {
    closeSync(handle)
  }
}
