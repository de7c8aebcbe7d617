/** The files the repository rules look at: a plain map from path to text, so that a rule can be fed an invented tree. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Path from the top of the repository, with forward slashes, to the file's text. */
export type Tree = ReadonlyMap<string, string>

export const root = fileURLToPath(new URL('..', import.meta.url))

export const treeOf = (files: Readonly<Record<string, string>>): Tree => new Map(Object.entries(files))

/**
 * Every file git tracks, and those not yet added that it does not ignore: a rule should speak before the commit.
 * Binary files are left out. Throws when this is not a git checkout, since the rules would then check nothing.
 */
export function readTree(): Tree {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8' })
  const tree = new Map<string, string>()
  for (const path of listed.split('\0').filter((name) => name !== '' && existsSync(join(root, name)))) {
    const text = readFileSync(join(root, path), 'utf8')
    if (!text.includes('\0')) tree.set(path, text)
  }
  return tree
}
