/**
 * The coach files the desk may open and save: the examples and whatever was named when it was started, and nothing else.
 * What such a file extends may be read, but only as YAML out of the folders these files stood in at the start: what a browser
 * saves must not become a way to read any file of this machine.
 */
import { createHash, randomBytes } from 'node:crypto'
import {
  closeSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { type Load, type Loaded, loadFiles } from '../definition/load-files.js'
import { child } from '../definition/written.js'
import { newFile } from './new-file.js'

export interface CoachName {
  /** what it is asked for by: from the top of the checkout, or whole where it lies elsewhere; forward slashes */
  readonly path: string
  readonly name: string
}

export interface OpenedFiles {
  readonly path: string
  /** SHA-256 of the entry's text, hexadecimal */
  readonly stamp: string
  /** the entry and everything it extends that could be read, by path */
  readonly files: Readonly<Record<string, string>>
}

/** What the disk does not give, as a sentence and the kind of no it is. */
export interface Unavailable {
  readonly no: 'not allowed' | 'not there' | 'not writable'
  readonly says: string
}

/** Somebody else saved since: their text, for the person to choose. */
export interface Overtaken {
  readonly no: 'overtaken'
  readonly says: string
  readonly text: string
  readonly stamp: string
}

/** There is a file of that name: another name is wanted. */
export interface Taken {
  readonly no: 'taken'
  readonly says: string
}

export interface CoachFiles {
  readonly list: () => readonly CoachName[]
  readonly open: (path: string) => OpenedFiles | Unavailable
  /** saves only over the text whose stamp is given */
  readonly save: (path: string, text: string, stamp: string) => { readonly path: string; readonly stamp: string } | Unavailable | Overtaken
  /** a new file beside the known ones; never over one that is there */
  readonly create: (path: string, text: string) => { readonly path: string; readonly stamp: string } | Unavailable | Taken
  /** reads what a text extends; null for what is not there or may not be read */
  readonly load: Load
}

export interface Places {
  /** folder the paths count from, the top of the checkout */
  readonly root: string
  /** folder whose whole coaches are offered */
  readonly examples: string
  /** a file named when the desk was started */
  readonly also?: string
}

const stampOf = (text: string): string => createHash('sha256').update(text).digest('hex')

const isYaml = (path: string): boolean => /\.ya?ml$/i.test(path)

export function coachFiles({ root, examples, also }: Places): CoachFiles {
  const at = (path: string): string => resolve(root, path)
  const named = also === undefined ? [] : [nameOf(root, also)]
  /** begun at this desk; they stay on the list wherever they lie */
  const made: string[] = []
  /** Coaches seen whole once stay on the list, so that a slip saved into one does not take it off the desk. */
  const known = new Set<string>(named)
  const readings = new Map<string, Loaded>()
  const folders = new Set([resolve(examples)])
  for (const path of named) for (const one of read(path, anyYaml)?.sources ?? [{ path }]) folders.add(dirname(at(one.path)))

  function anyYaml(path: string): string | null {
    return isYaml(path) ? textAt(at(path)) : null
  }

  function load(path: string): string | null {
    const file = at(path)
    const inside = [...folders].some((folder) => file.startsWith(folder.endsWith(sep) ? folder : folder + sep))
    return inside ? anyYaml(path) : null
  }

  function read(path: string, from: Load): Loaded | null {
    const text = textAt(at(path))
    if (text === null) return null
    const before = readings.get(path)
    // reading YAML takes far longer than reading the disk, and a list is asked for often
    if (before?.root && before.sources.every((one) => one.text === (one.path === path ? text : from(one.path)))) return before
    const loaded = loadFiles(path, text, from)
    readings.set(path, loaded)
    return loaded
  }

  function list(): readonly CoachName[] {
    const found = examplesIn(examples).map((file) => nameOf(root, file))
    return [...new Set([...named, ...found, ...made])].flatMap((path) => {
      const loaded = read(path, load)
      if (loaded && isWhole(loaded)) known.add(path)
      return known.has(path) && (loaded || named.includes(path)) ? [{ path, name: coachName(loaded) ?? basename(path) }] : []
    })
  }

  function refusal(path: string): Unavailable | null {
    if (known.has(path) || list().some((coach) => coach.path === path)) return null
    return {
      no: 'not allowed',
      says: `The desk may not open ${path}: only the examples and the file it was started with. Start it with coachwright open FILE to work on another.`,
    }
  }

  function open(path: string): OpenedFiles | Unavailable {
    const refused = refusal(path)
    if (refused) return refused
    const loaded = read(path, load)
    const entry = loaded?.sources[0]
    if (!loaded || !entry)
      return { no: 'not there', says: `There is no file ${path} to read any more; it was moved, or this account may not read it.` }
    return { path, stamp: stampOf(entry.text), files: Object.fromEntries(loaded.sources.map((one) => [one.path, one.text])) }
  }

  // nothing waits between the comparison and the renaming, so two windows cannot both be told that theirs was saved
  function save(path: string, text: string, stamp: string): ReturnType<CoachFiles['save']> {
    const refused = refusal(path)
    if (refused) return refused
    const before = textAt(at(path))
    if (before === null)
      return { no: 'not there', says: `There is no file ${path} any more, so nothing was saved. Save the text to a file of its own.` }
    if (stampOf(before) !== stamp) {
      return {
        no: 'overtaken',
        says: `${path} was changed elsewhere since it was opened here, so nothing was saved. Compare both texts and keep what is wanted.`,
        text: before,
        stamp: stampOf(before),
      }
    }
    try {
      replace(realpathSync(at(path)), text)
    } catch (reason) {
      return { no: 'not writable', says: `${path} cannot be saved: ${whyNot(reason)}. The text on the disk is as it was.` }
    }
    return { path, stamp: stampOf(text) }
  }

  function create(path: string, text: string): ReturnType<CoachFiles['create']> {
    // a path is written one way only, or two windows would know one file by two names
    const trouble = nameOf(root, at(path)) === path ? newFile(at(path), folders, text) : 'not a name'
    if (trouble === 'taken') return { no: 'taken', says: `There is a file ${path} already, and it was left as it is. Take another name.` }
    if (trouble === 'not a name') {
      const where = [...folders].map((folder) => nameOf(root, folder) || 'the top of the checkout').join(' or ')
      const says = `A coach cannot be saved as ${path}: take a name of letters, digits, dots and dashes that ends in .yaml, in ${where}.`
      return { no: 'not allowed', says }
    }
    if (trouble) return { no: 'not writable', says: `${path} cannot be saved: ${whyNot(trouble.reason)}. Nothing was written.` }
    made.push(path)
    // a family or a list of masses is saved with a coach, and is none
    const loaded = read(path, load)
    if (loaded && isWhole(loaded)) known.add(path)
    return { path, stamp: stampOf(text) }
  }

  list()
  return { list, open, save, create, load }
}

/** From the top of the checkout where it lies inside, else whole. */
function nameOf(root: string, file: string): string {
  const inside = relative(root, resolve(file))
  const path = inside.startsWith('..') || isAbsolute(inside) ? resolve(file) : inside
  return path.replaceAll('\\', '/')
}

function examplesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter(isYaml)
      .sort()
      .map((name) => join(folder, name))
  } catch {
    return []
  }
}

/** A family has no frames and a list of masses no name: neither is a coach of its own. */
const isWhole = (loaded: Loaded): boolean =>
  coachName(loaded) !== null && loaded.root !== null && child(loaded.root, 'frames') !== undefined

function coachName(loaded: Loaded | null): string | null {
  const coach = loaded?.root ? child(loaded.root, 'coach') : undefined
  const name = coach && child(coach, 'name')
  return name?.kind === 'scalar' && name.text !== '' ? name.text : null
}

/** Null for what is no readable file of text. */
function textAt(file: string): string | null {
  try {
    if (!statSync(file).isFile()) return null
    return new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(file))
  } catch {
    return null
  }
}

/** The whole new text or the whole old one, whatever happens in between. */
function replace(file: string, text: string): void {
  const beside = `${file}.${process.pid}-${randomBytes(4).toString('hex')}.saving`
  try {
    const handle = openSync(beside, 'wx', statSync(file).mode)
    try {
      writeFileSync(handle, text)
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
    renameSync(beside, file)
  } catch (reason) {
    rmSync(beside, { force: true })
    throw reason
  }
}

function whyNot(reason: unknown): string {
  const { code } = reason as NodeJS.ErrnoException
  const why: Readonly<Record<string, string>> = {
    EACCES: 'this account may not write there',
    EPERM: 'this account may not write there',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk takes no writing',
  }
  return why[code ?? ''] ?? `the disk says ${code ?? String(reason)}`
}
