/** The frozen revisions of the coach on the screen, kept in this browser, and the two states that are compared. */
import { createSignal } from 'solid-js'
import type { FrozenRevision, RippleShown, SideId } from '../desk/nouns.js'
import type { Target } from '../ripple/line.js'
import { after, look, openPage, openSheet, ripple, select, setLit, setLook, setNotice, state, units, worker } from './desk.js'
import { setDoor } from './door.js'
import { askForField } from './field-asked.js'
import { openNote } from './way.js'

const [revisions, setRevisions] = createSignal<readonly FrozenRevision[]>([])
const [from, setFrom] = createSignal<SideId>('opened')
const [to, setTo] = createSignal<SideId>('now')
const [other, setOther] = createSignal<RippleShown | null>(null)
const [isNoteOpen, setNoteOpen] = createSignal(false)

export { from, isNoteOpen, revisions, to }

/** Edits since the last frozen revision are told anyway; any other two are asked for. */
const isUsual = (): boolean => to() === 'now' && from() === (revisions().at(-1)?.id ?? 'opened')
export const compared = (): RippleShown | null => (isUsual() ? ripple() : other())

export function openChangeNote(): void {
  setDoor(null)
  setNoteOpen(true)
}
export const closeChangeNote = (): boolean => setNoteOpen(false)

/** A family is the same text in every revision: each text is kept once. */
interface Kept {
  readonly texts: readonly string[]
  readonly revisions: readonly (Omit<FrozenRevision, 'files'> & { readonly files: Readonly<Record<string, number>> })[]
}

const key = (file: string): string => `revisions of ${file}`

/** Those of a coach that was opened; the last is what edits are compared with. */
export async function loadRevisions(file: string): Promise<void> {
  const kept = read(file)
  await worker.keep(kept)
  setRevisions(kept)
  setFrom(await worker.baseline())
  setTo('now')
  after()
}

function read(file: string): readonly FrozenRevision[] {
  const text = localStorage.getItem(key(file))
  if (text === null) return []
  try {
    const { texts, revisions: all } = JSON.parse(text) as Kept
    return all.map((each) => ({ ...each, files: Object.fromEntries(Object.entries(each.files).map(([path, i]) => [path, texts[i]])) }))
  } catch {
    setNotice('The revisions frozen in this browser do not read any more. They were left where they are.')
    return []
  }
}

function write(file: string, all: readonly FrozenRevision[]): void {
  const texts: string[] = []
  const placeOf = (text: string): number => {
    const known = texts.indexOf(text)
    return known >= 0 ? known : texts.push(text) - 1
  }
  const kept: Kept = {
    revisions: all.map((each) => ({
      ...each,
      files: Object.fromEntries(Object.entries(each.files).map(([path, text]) => [path, placeOf(text)])),
    })),
    texts,
  }
  try {
    localStorage.setItem(key(file), JSON.stringify(kept))
  } catch {
    setNotice('This browser has no room for another frozen revision: it lasts until the window is closed. Save the coach to its file.')
  }
}

export async function freeze(name: string): Promise<void> {
  const file = state()?.file
  if (file === undefined) return
  const frozen = await worker.freeze(name, new Date().toISOString())
  if (typeof frozen === 'string') {
    setNotice(frozen)
    return
  }
  // another window may have frozen one meanwhile
  const known = read(file).filter(({ id }) => !revisions().some((each) => each.id === id))
  const all = [...known, ...revisions(), frozen]
  await worker.keep(all)
  setRevisions(all)
  write(file, all)
  setFrom(frozen.id)
  setTo('now')
  after()
}

export async function compareSides(a: SideId, b: SideId): Promise<void> {
  setFrom(a)
  setTo(b)
  await refresh()
}

/** What is compared, anew after an edit or in another unit. */
export async function refresh(): Promise<void> {
  if (isUsual()) return
  const found = await worker.compare(from(), to(), units())
  if (typeof found === 'string') setNotice(found)
  else setOther(found)
}

/** To the place of a line: on the elevation, on its sheet, in the text. */
export async function goTo(target: Target): Promise<void> {
  const go = await worker.goTo(target, from())
  if (go.says !== null) {
    setNotice(go.says)
    return
  }
  closeChangeNote()
  setDoor(null)
  if (go.at && go.at.look !== look()) await setLook(go.at.look)
  select(go.select)
  setLit(go.at)
  if (go.field) {
    askForField(go.field)
    return
  }
  if (go.sheet) await openSheet(go.sheet)
  if (go.document) await openPage(go.document, 0)
  if (go.working) openNote(go.working)
}
