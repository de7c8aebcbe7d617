/** What the screen knows, and the one way an edit goes: to the worker, and back as a new state and a new drawing. */
import { wrap } from 'comlink'
import { batch, createSignal } from 'solid-js'
import type { CoachFiles } from '../desk/desk-coach-nouns.js'
import { asElevation, type FirstDrawing } from '../desk/drawn-ahead.js'
import type { Figures } from '../desk/figures/figures.js'
import type { Mending } from '../desk/mending.js'
import type {
  Answer,
  DragShown,
  Edit,
  Elevation,
  Look,
  MoveEdit,
  PageShown,
  PlaceNote,
  RippleShown,
  SheetShown,
  SideId,
  SizeEdit,
  State,
  WorkingShown,
} from '../desk/nouns.js'
import { drawingReceiver } from '../desk/sent-drawing.js'
import type { UnitSystem } from '../quantity/format.js'
import { dropDraft, keepDraft } from './drafts.js'
import { openCoach, saveCoach } from './files.js'
import { tell } from './window-talk.js'
import type { DeskWorker, Moved } from './worker.js'

export const worker = wrap<DeskWorker>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }))

const [state, setState] = createSignal<State | null>(null)
/** The revision when last nothing was in the hand: what hangs on it is asked for again then, and not at every step of a hand. */
const [revision, setRevision] = createSignal<string | null>(null)
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
const [mending, setMending] = createSignal<Mending | null>(null)
/** what was saved elsewhere over the text this window began from */
export const [overtaken, setOvertaken] = createSignal<{ readonly text: string; readonly stamp: string } | null>(null)
/** a name is asked for, since the coach is no file of the desk yet */
export const [isNaming, setNaming] = createSignal(false)
const [savedText, setSavedText] = createSignal<string | null>(null)
const [working, setWorking] = createSignal<WorkingShown | null>(null)

const [hand, setHand] = createSignal<DragShown | null>(null)

export { elevation, hand, look, mending, page, revision, ripple, savedText, setWorking, sheet, sheetName, state, working }

const [stamp, setStamp] = createSignal<string | null>(null)
let opened: CoachFiles = { path: '', files: {} }
let wanted: { readonly path: string; readonly page: number } | null = null

/** What it was opened with. */
export const openedFiles = (): CoachFiles['files'] => opened.files

/** Whether the coach is no file of the desk yet. */
export const isUnsaved = (): boolean => stamp() === null && (state() ?? mending()) !== null

export async function open(path: string): Promise<void> {
  const found = await openCoach(path)
  if (typeof found === 'string') setNotice(found)
  else await take({ path: found.path, files: found.files }, found.stamp, found.drawn)
}

/** A coach from wherever it came; without a stamp it is no file of the desk yet. `drawn` is shown until its worker has read it. */
export function take(coach: CoachFiles, at: string | null, drawn?: FirstDrawing): Promise<void> {
  setOvertaken(null)
  setNaming(false)
  setNotice(null)
  // whatever the screen then asks of the worker comes to it after the coach itself, but where it is still at something else
  const isFree = pumping === null
  const begin = (): void => {
    opened = coach
    setStamp(at)
    setSavedText(at === null ? null : coach.files[coach.path])
  }
  const opening = send(async () => {
    const moved = await worker.open(coach, look())
    begin()
    return shownOr(moved)
  })
  if (isFree && drawn && drawn.elevation.look === look()) {
    begin()
    showFirst(drawn)
  }
  return opening
}

/** What was drawn ahead, and is not this window's own yet. */
let ahead: State | null = null

function showFirst(drawn: FirstDrawing): void {
  ahead = drawn.state
  batch(() => {
    setMending(null)
    setState(drawn.state)
    setRevision(drawn.state.revision)
    setElevation(asElevation(drawn))
    setHand(null)
  })
}

/** A coach that does not read has nothing to draw but its text. */
function shownOr(moved: Moved | Mending): Moved | null {
  if ('elevation' in moved) {
    setMending(null)
    return moved
  }
  batch(() => {
    setMending(moved)
    setState(null)
    setRevision(null)
    setElevation(null)
    setRipple(null)
    setSheet(null)
    setPage(null)
    setWorking(null)
  })
  keep(moved.file, moved.text)
  return null
}

export const mend = (text: string): Promise<void> => send(async () => shownOr(await worker.mend(text, look())))
const mendStep = (by: -1 | 1): Promise<void> => send(async () => shownOr(await worker.mendStep(by, look())))
/** Files a coach extends that were not there. */
export const give = (more: CoachFiles['files']): Promise<void> => send(async () => shownOr(await worker.give(more, look())))

/** The whole text, of a coach that reads or of one that does not yet. */
export const writeText = (text: string): Promise<void> => (mending() ? mend(text) : edit({ kind: 'text', text }))

/** What is not on the disk is kept here, and other windows hear of it. */
function keep(file: string, text: string): void {
  if (text === savedText()) dropDraft(file)
  else keepDraft(file, text, stamp() === null ? opened.files : null)
  tell({ kind: 'edited', path: file, text, stamp: null })
}

const received = drawingReceiver()

function show(moved: Moved): void {
  const before = state()
  batch(() => {
    setState(moved.state)
    if (moved.state.revision !== null) setRevision(moved.state.revision)
    setElevation(received(moved.elevation))
    setHand(moved.hand)
    if (moved.says !== null) setNotice(moved.says)
  })
  const { file, text, looking } = moved.state
  // what was frozen is no draft
  if (looking !== null) return
  if (before !== ahead && before?.file === file && before.text === text) return
  keep(file, text)
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
  after(isPreview ? AT_REST : SOON, true)
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
export const preview = (change: MoveEdit | SizeEdit): Promise<void> => send(() => worker.preview(change, look()), true)
export const settle = (): Promise<void> => send(() => worker.settle(look()))
export const abandon = (): Promise<void> => send(() => worker.abandon(look()))
export const placeAt = (x: number, y: number): Promise<PlaceNote | null> => worker.at(look(), x, y)
export const undo = (): Promise<void> => (mending() ? mendStep(-1) : send(() => worker.undo(look())))
export const redo = (): Promise<void> => (mending() ? mendStep(1) : send(() => worker.redo(look())))

export async function setLook(next: Look): Promise<void> {
  setLookTo(next)
  await send(() => worker.look(next))
}

/** What may come a little later than the drawing: ripple, sentences, the paper that is open. Only the last is asked for. */
let afterwards: ReturnType<typeof setTimeout> | undefined
/** What it was told of last: a drag that was put back needs no paper drawn anew. */
let told = ''

/** `onlyNew` where something was sent that may have changed nothing. */
export function after(rest = SOON, onlyNew = false): void {
  clearTimeout(afterwards)
  afterwards = setTimeout(async () => {
    const now = state()
    const of = now && [now.file, now.revision, now.text, now.since, units(), sheetName()].join(' ')
    if (!of || (onlyNew && of === told && now.verdicts !== null)) return
    told = of
    setRipple(await worker.ripple(units()))
    // where a hand rests everything is judged, and the counts are said again
    if (state()?.verdicts === null) show(await worker.look(look()))
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

/** A live figure by its name; typed where it is asked: figures/asked.ts. */
export const askFigure = (name: keyof Figures, asked: readonly unknown[]): Promise<unknown> => worker.figure(name, asked)

export const ask = (question: string): Promise<Answer> => worker.ask(question)
export const fileText = (file: string): Promise<string | null> => worker.fileText(file)

/** A frozen revision in the place of the coach as it is now, or that again; nothing is changed. */
export const lookAt = (side: SideId | null): Promise<void> => send(() => worker.lookAt(side, look()))
/** The text of a frozen revision becomes the text, which is undone like any edit. */
export const takeUp = (side: SideId): Promise<void> => send(() => worker.takeUp(side, look()))

export async function save(): Promise<void> {
  const at = stamp()
  const now = state()
  if (!now || now.looking !== null) return
  if (at === null) {
    setNaming(true)
    return
  }
  const { file, text } = now
  const saved = await saveCoach(file, text, at)
  if (saved.ok) savedAs(file, text, saved.stamp)
  else if (saved.theirs) setOvertaken(saved.theirs)
  else setNotice(saved.says)
}

/** The text is on the disk under that stamp: by this window, or by another one whose text is the same. */
export function savedAs(file: string, text: string, at: string): void {
  dropDraft(file)
  worker.saved(text)
  setStamp(at)
  setSavedText(text)
  setOvertaken(null)
  setNotice(`${file} is saved.`)
  tell({ kind: 'saved', path: file, text, stamp: at })
}

/** From now on edits count from that text of the disk. */
export function countFrom(text: string, at: string): void {
  setStamp(at)
  setSavedText(text)
}
