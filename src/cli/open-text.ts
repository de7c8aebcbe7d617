/** The text of a file somebody named, or a sentence why it cannot be had. */
import { readdirSync, readFileSync, type Stats, statSync } from 'node:fs'
import { basename, dirname } from 'node:path'
import { didYouMean } from '../definition/near-miss.js'
import { refuse } from './refused.js'

/** Far above any definition or hole list; a picture or a disk image named by mistake is larger. */
const LARGEST = 20_000_000

/** `what` as a phrase: "a definition", "a hole list". Throws Refused. */
export function openText(file: string, what: string): string {
  const no = (says: string, found: string) => refuse(file, says, { file, expected: `${what} to read`, found })
  const there = lookAt(file)
  if (!there) {
    const near = didYouMean(basename(file), neighbours(file))
    throw no(`There is no file ${file}${near ? `. ${near}` : '; check its name and the folder you are in.'}`, 'nothing')
  }
  if (there.isDirectory()) {
    const inside = neighbours(`${file}/x`)
      .filter((name) => /\.ya?ml$/.test(name))
      .slice(0, 3)
    throw no(`${file} is a folder; name the file in it${inside.length ? `, such as ${inside.join(' or ')}` : ''}.`, 'a folder')
  }
  // a device would be read for ever; a pipe ends
  if (!there.isFile() && !there.isFIFO()) throw no(`${file} is not a file; name ${what}.`, 'a device')
  if (there.size > LARGEST)
    throw no(`${file} is ${Math.round(there.size / 1e6)} MB, which is no ${what.replace(/^an? /, '')}.`, 'a file too large')
  return decoded(bytesOf(file, no), no, file)
}

/** A name that cannot be looked at (a file taken for a folder, a name too long) is a name of nothing. */
function lookAt(file: string): Stats | null {
  try {
    return statSync(file)
  } catch {
    return null
  }
}

function bytesOf(file: string, no: (says: string, found: string) => Error): Uint8Array {
  try {
    return readFileSync(file)
  } catch (reason) {
    const { code } = reason as NodeJS.ErrnoException
    const why =
      code === 'EACCES' || code === 'EPERM' ? 'you may not read it; ask for the right to, or copy it' : `the disk says ${code ?? reason}`
    throw no(`${file} cannot be read: ${why}.`, 'an unreadable file')
  }
}

function decoded(bytes: Uint8Array, no: (says: string, found: string) => Error, file: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw no(`${file} is not text in UTF-8. Save it as UTF-8 and try again.`, 'bytes that are not text')
  }
}

function neighbours(file: string): readonly string[] {
  try {
    return readdirSync(dirname(file))
  } catch {
    return []
  }
}

/** For extended files: the text, or null where there is none to read; the definition's own fault then says so. */
export function loadText(file: string): string | null {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return null
  }
}
