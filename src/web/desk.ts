/** What the screen knows, and the one way an edit goes: to the worker, and back as a new state and a new drawing. */
import { wrap } from 'comlink'
import { batch, createSignal } from 'solid-js'
import type {
  Answer,
  Edit,
  Elevation,
  FaultShown,
  Look,
  MoveEdit,
  PageShown,
  RippleShown,
  SheetShown,
  State,
  WorkingShown,
} from '../desk/nouns.js'
import type { SpaceAsked, SpaceSent } from '../desk/space/sent.js'
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
  await send(async () => {
    const moved = await worker.open(found, look())
    setClosed('faults' in moved ? moved.faults : null)
    if ('faults' in moved) return null
    stamp = found.stamp
    setSavedText(onDisk)
    return moved
  })
  if (closed() || draft === null || draft === onDisk) return
  await edit({ kind: 'text', text: draft })
  setNotice('Your draft of this coach was taken up again. Undo leads back to the file.')
}

const draftKey = (path: string): string => `draft of ${path}`

function show(moved: Moved): void {
  const before = state()
  batch(() => {
    setState(moved.state)
    setElevation(moved.elevation)
    if (moved.says !== null) setNotice(moved.says)
  })
  const { file, text } = moved.state
  if (before?.file === file && before.text === text) return
  if (text === savedText()) localStorage.removeItem(draftKey(file))
  else localStorage.setItem(draftKey(file), text)
}

/** ms: after an edit at once, in a drag only where the hand rests, so that the next frame never waits for paper */
const [SOON, AT_REST] = [40, 700]

/** Something for the worker that changes what is drawn; null where it did not. */
interface Job {
  readonly run: () => Promise<Moved | null>
  readonly isPreview: boolean
}

const waiting: Job[] = []
let pumping: Promise<void> | null = null

/** One after the other and none left out, but that in a drag only its last place waits. */
function send(run: Job['run'], isPreview = false): Promise<void> {
  clearTimeout(afterwards)
  if (isPreview && waiting.at(-1)?.isPreview) waiting.pop()
  waiting.push({ run, isPreview })
  pumping ??= pump()
  return pumping
}

async function pump(): Promise<void> {
  let isPreview = false
  for (let job = waiting.shift(); job; job = waiting.shift()) {
    isPreview = job.isPreview
    await drawn(job).catch((reason) => setNotice(`The desk met something it was not made for, which is a fault of the program: ${reason}`))
  }
  pumping = null
  after(isPreview ? AT_REST : SOON)
}

/** Measured for whoever looks: from the edit to the frame that shows it. */
async function drawn({ run }: Job): Promise<void> {
  const start = performance.now()
  const moved = await run()
  if (!moved) return
  show(moved)
  requestAnimationFrame(() => performance.measure('edit to drawn', { start }))
}

export const edit = (change: Edit): Promise<void> => send(() => worker.edit(change, look()))
export const preview = (change: MoveEdit): Promise<void> => send(() => worker.preview(change, look()), true)
export const settle = (): Promise<void> => send(() => worker.settle(look()))
export const undo = (): Promise<void> => send(() => worker.undo(look()))
export const redo = (): Promise<void> => send(() => worker.redo(look()))

export async function setLook(next: Look): Promise<void> {
  setLookTo(next)
  await send(() => worker.look(next))
}

/** What may come a little later than the drawing: ripple, sentences, the paper that is open. Only the last is asked for. */
let afterwards: ReturnType<typeof setTimeout> | undefined

export function after(rest = SOON): void {
  clearTimeout(afterwards)
  afterwards = setTimeout(async () => {
    if (!state()) return
    setRipple(await worker.ripple(units()))
    await openSheet(sheetName(), false)
  }, rest)
}

export async function openSheet(name: string, isNew = true): Promise<void> {
  setSheetName(name)
  if (!state()) return
  const shown = await worker.sheet(name)
  setSheet(shown)
  const isThere = shown.documents.some(({ path }) => path === wanted?.path)
  if (isNew || !isThere) wanted = shown.documents.length > 0 ? { path: shown.documents[0].path, page: 0 } : null
  await openPage(wanted?.path ?? null, wanted?.page ?? 0)
}

export async function openPage(path: string | null, which: number): Promise<void> {
  wanted = path === null ? null : { path, page: which }
  setPage(path === null ? null : await worker.page(path, which))
}

export async function openWorking(id: string): Promise<void> {
  setWorking(await worker.working(id, units()))
}

export const askSpace = (asked: SpaceAsked): Promise<SpaceSent> => worker.space(asked)

export const ask = (question: string): Promise<Answer> => worker.ask(question)

export async function freeze(name: string): Promise<void> {
  setRipple(await worker.freeze(name, units()))
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
