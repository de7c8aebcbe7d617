/** What the screen knows, and the one way an edit goes: to the worker, and back as a new state and a new drawing. */
import { wrap } from 'comlink'
import { batch, createSignal } from 'solid-js'
import type { Answer, PageShown, WorkingShown } from '../desk/desk-coach.js'
import type { Edit, Elevation, FaultShown, Look, MoveEdit, RippleShown, SheetShown, State } from '../desk/nouns.js'
import type { UnitSystem } from '../quantity/format.js'
import { openCoach, saveCoach } from './files.js'
import type { DeskWorker, Moved } from './worker.js'

const worker = wrap<DeskWorker>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }))

const [state, setState] = createSignal<State | null>(null)
const [elevation, setElevation] = createSignal<Elevation | null>(null)
const [look, setLookTo] = createSignal<Look>('left')
const [ripple, setRipple] = createSignal<RippleShown | null>(null)
const [sheet, setSheet] = createSignal<SheetShown | null>(null)
const [page, setPage] = createSignal<PageShown | null>(null)
const [sheetName, setSheetName] = createSignal('Lines')
export const [selected, select] = createSignal<string | null>(null)
export const [lit, setLit] = createSignal<Answer['at']>(null)
export const [units, setUnits] = createSignal<UnitSystem>('metric')
export const [notice, setNotice] = createSignal<string | null>(null)
const [closed, setClosed] = createSignal<readonly FaultShown[] | null>(null)
const [savedText, setSavedText] = createSignal<string | null>(null)
const [working, setWorking] = createSignal<WorkingShown | null>(null)

export { closed, elevation, look, page, ripple, savedText, setWorking, sheet, sheetName, state, working }

let stamp = ''
let wanted: { readonly path: string; readonly page: number } | null = null

export async function open(path: string): Promise<void> {
  const found = await openCoach(path)
  if (typeof found === 'string') {
    setNotice(found)
    return
  }
  const draft = localStorage.getItem(draftKey(found.path))
  const onDisk = found.files[found.path]
  const moved = await worker.open(found, look())
  stamp = found.stamp
  if ('faults' in moved) {
    setClosed(moved.faults)
    return
  }
  batch(() => {
    setClosed(null)
    setSavedText(onDisk)
    show(moved)
  })
  if (draft !== null && draft !== onDisk) {
    await edit({ kind: 'text', text: draft })
    setNotice('Your draft of this coach was taken up again. Undo leads back to the file.')
  }
  await after()
}

const draftKey = (path: string): string => `draft of ${path}`

function show(moved: Moved): void {
  batch(() => {
    setState(moved.state)
    setElevation(moved.elevation)
    if (moved.says !== null) setNotice(moved.says)
  })
  const { file, text } = moved.state
  if (text === savedText()) localStorage.removeItem(draftKey(file))
  else localStorage.setItem(draftKey(file), text)
}

/** What may come a little later than the drawing: ripple, sentences, the paper that is open. Only the last is asked for. */
let afterwards: ReturnType<typeof setTimeout> | undefined

/** ms: after an edit at once, in a drag only where the hand rests, so that the next frame never waits for paper */
const [SOON, AT_REST] = [40, 700]

/** While the worker is busy only the last of the edits of a drag waits for it. */
let isBusy = false
let waiting: (() => Promise<Moved>) | null = null

async function send(ask: () => Promise<Moved>, rest = SOON): Promise<void> {
  if (isBusy) {
    waiting = ask
    return
  }
  isBusy = true
  clearTimeout(afterwards)
  try {
    await drawn(ask)
    while (waiting) {
      const next = waiting
      waiting = null
      await drawn(next)
    }
  } finally {
    isBusy = false
  }
  after(rest)
}

/** Measured for whoever looks: from the edit to the frame that shows it. */
async function drawn(ask: () => Promise<Moved>): Promise<void> {
  const start = performance.now()
  show(await ask())
  requestAnimationFrame(() => performance.measure('edit to drawn', { start }))
}

export const edit = (change: Edit): Promise<void> => send(() => worker.edit(change, look()))
export const preview = (change: MoveEdit): Promise<void> => send(() => worker.preview(change, look()), AT_REST)
export const settle = (): Promise<void> => send(() => worker.settle(look()))
export const undo = (): Promise<void> => send(() => worker.undo(look()))
export const redo = (): Promise<void> => send(() => worker.redo(look()))

export async function setLook(next: Look): Promise<void> {
  setLookTo(next)
  await send(() => worker.look(next))
}

export function after(rest = SOON): void {
  clearTimeout(afterwards)
  afterwards = setTimeout(async () => {
    setRipple(await worker.ripple(units()))
    await openSheet(sheetName(), false)
  }, rest)
}

export async function openSheet(name: string, isNew = true): Promise<void> {
  setSheetName(name)
  const shown = await worker.sheet(name)
  setSheet(shown)
  if (isNew || !wanted) wanted = shown.documents.length > 0 ? { path: shown.documents[0].path, page: 0 } : null
  await openPage(wanted?.path ?? null, wanted?.page ?? 0)
}

export async function openPage(path: string | null, which: number): Promise<void> {
  wanted = path === null ? null : { path, page: which }
  setPage(path === null ? null : await worker.page(path, which))
}

export async function openWorking(id: string): Promise<void> {
  setWorking(await worker.working(id, units()))
}

export const ask = (question: string): Promise<Answer> => worker.ask(question)

export async function freeze(name: string): Promise<void> {
  setRipple(await worker.freeze(name))
}

export async function save(): Promise<void> {
  const now = state()
  if (!now) return
  const { file, text } = now
  const saved = await saveCoach(file, text, stamp)
  if (!saved.ok) {
    setNotice(saved.says)
    return
  }
  stamp = saved.stamp
  setSavedText(text)
  localStorage.removeItem(draftKey(file))
  setNotice(`${file} is saved.`)
}
