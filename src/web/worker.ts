/** Holds the coach beside the screen, so that deriving it never stops a drag. */
import { expose, transfer } from 'comlink'
import { deskCoach } from '../desk/desk-coach.js'
import type { CoachFiles, DeskCoach } from '../desk/desk-coach-nouns.js'
import type { Figures } from '../desk/figures/figures.js'
import { type Mending, type MendingCoach, mendingCoach } from '../desk/mending.js'
import type {
  Answer,
  DragShown,
  Edit,
  FrozenRevision,
  Go,
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
import { type Differs, differsFrom } from '../desk/other-text.js'
import { type Provable, provable } from '../desk/prove-shown.js'
import { drawingSender, type SentDrawing } from '../desk/sent-drawing.js'
import { type Side, sideOf } from '../desk/side-by-side.js'
import type { SpaceAsked, SpaceSent } from '../desk/space/sent.js'
import type { UnitSystem } from '../quantity/format.js'
import type { Target } from '../ripple/line.js'
import { families, proved, sideOfFiles, start } from './worker-doors.js'

/** What comes back after every edit: where the coach stands, and how it looks. */
export interface Moved {
  readonly says: string | null
  readonly state: State
  readonly elevation: SentDrawing
  /** of a drag that is under way */
  readonly hand: DragShown | null
}

let held: DeskCoach | null = null
/** what it was opened with */
let files: CoachFiles = { path: '', files: {} }
let broken: MendingCoach | null = null

function here(): DeskCoach {
  if (!held) throw new Error('no coach is open in the worker')
  return held
}

const send = drawingSender()

/** ms that nobody has asked for anything before a hand is practised; in the middle of it whoever asks waits one step at most. */
const IDLE = 1000
let asked = 0
addEventListener('message', () => {
  asked = performance.now()
})

/** Once, as soon as there is a coach and nobody wants anything of it. */
function practise(hand: (() => boolean) | null): void {
  const isIdle = performance.now() - asked >= IDLE
  const practised = hand ?? (isIdle ? (held?.practice('left') ?? null) : null)
  if (!practised || !isIdle) setTimeout(practise, IDLE, practised)
  else if (practised()) setTimeout(practise, 0, practised)
}
setTimeout(practise, IDLE, null)

/** The rivets go over without being copied; of a step of a drag what is new. */
function looked(look: Look, says: string | null, isStep = false): Moved {
  const elevation = here().elevation(look)
  const rivets = elevation.rivets.slice()
  return transfer({ says, state: here().state(), elevation: { ...send(elevation, isStep), rivets }, hand: here().inHand(look) }, [
    rivets.buffer,
  ])
}

/** Becomes the coach that is held as soon as it reads. */
function mended(by: (coach: MendingCoach) => DeskCoach | null, look: Look): Moved | Mending {
  if (!broken) throw new Error('no coach is being mended')
  const coach = by(broken)
  if (!coach) return broken.shown()
  files = broken.files()
  held = coach
  broken = null
  return looked(look, null)
}

const desk = {
  open: (coach: CoachFiles, look: Look): Moved | Mending => {
    const opened = deskCoach(coach)
    // a coach that is opened again has the revisions it had
    if (held && files.path === coach.path && !('faults' in opened)) opened.revisions.keep(held.revisions.all())
    files = coach
    broken = 'faults' in opened ? mendingCoach(coach, opened) : null
    held = 'faults' in opened ? null : opened
    return broken ? broken.shown() : looked(look, null)
  },
  mend: (text: string, look: Look): Moved | Mending => mended((coach) => coach.write(text), look),
  mendStep: (by: -1 | 1, look: Look): Moved | Mending => mended((coach) => coach.step(by), look),
  give: (more: CoachFiles['files'], look: Look): Moved | Mending => mended((coach) => coach.give(more), look),
  differs: (text: string, units: UnitSystem): Differs => differsFrom(files, text, here().design(), units),
  files: (): CoachFiles => files,
  side: (look: Look): Side => sideOf(here().design(), files.path, look),
  sideOfFiles,
  families,
  start,
  provable: (): readonly Provable[] => provable(here().design()),
  prove: (part: string, list: { readonly name: string; readonly text: string }, face: string | null) =>
    proved(here().design(), part, list, face),
  look: (look: Look): Moved => looked(look, null),
  edit: (edit: Edit, look: Look): Moved => looked(look, here().edit(edit)),
  preview: (edit: MoveEdit | SizeEdit, look: Look): Moved => looked(look, here().preview(edit), true),
  settle: (look: Look): Moved => looked(look, here().settle()),
  abandon: (look: Look): Moved => {
    here().abandon()
    return looked(look, null)
  },
  undo: (look: Look): Moved => {
    here().undo()
    return looked(look, null)
  },
  redo: (look: Look): Moved => {
    here().redo()
    return looked(look, null)
  },
  freeze: (name: string, when: string): FrozenRevision | string => here().freeze(name, when),
  keep: (kept: readonly FrozenRevision[]): void => here().revisions.keep(kept),
  saved: (text: string): void => here().revisions.saved(text),
  compare: (from: SideId, to: SideId, units: UnitSystem): RippleShown | string => here().revisions.compare(from, to, units),
  baseline: (): SideId => here().revisions.baseline(),
  lookAt: (side: SideId | null, look: Look): Moved => looked(look, here().lookAt(side)),
  takeUp: (side: SideId, look: Look): Moved => looked(look, here().takeUp(side)),
  notePages: (from: SideId, to: SideId, date: string, units: UnitSystem): readonly string[] | string =>
    here().notePages(from, to, date, units),
  goTo: (target: Target, from: SideId): Go => here().goTo(target, from),
  ripple: (units: UnitSystem): RippleShown => here().ripple(units),
  sheet: (name: string): SheetShown => here().sheet(name),
  page: (path: string, page: number): PageShown | null => here().page(path, page),
  working: (id: string, units: UnitSystem): WorkingShown => here().working(id, units),
  ask: (question: string): Answer => here().ask(question),
  fileText: (file: string): string | null => here().fileText(file),
  space: (asked: SpaceAsked): SpaceSent => here().space(asked),
  /** typed where it is asked: src/web/figures/asked.ts */
  figure: (name: keyof Figures, asked: readonly unknown[]): unknown =>
    (here().figures[name] as (...asked: readonly unknown[]) => unknown)(...asked),
  at: (look: Look, x: number, y: number): PlaceNote | null => here().at(look, x, y),
}

export type DeskWorker = typeof desk

expose(desk)
