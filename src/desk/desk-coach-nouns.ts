/** What one coach on the desk is made from, and what it answers. */
import type { Design } from '../derive/design.js'
import type { UnitSystem } from '../quantity/format.js'
import type { Target } from '../ripple/line.js'
import type { Figures } from './figures/figures.js'
import type {
  Answer,
  DragShown,
  Edit,
  Elevation,
  FaultShown,
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
} from './nouns.js'
import type { Revisions } from './revisions.js'
import type { SpaceAsked, SpaceSent } from './space/sent.js'

/** A coach's file and every file it extends, by path. */
export interface CoachFiles {
  readonly path: string
  readonly files: Readonly<Record<string, string>>
}

/** The definition did not read when it was opened: there is nothing to show but its faults. */
export interface NotRead {
  readonly faults: readonly FaultShown[]
}

export interface DeskCoach {
  readonly state: () => State
  /** says why where an edit cannot be written; otherwise null */
  readonly edit: (edit: Edit) => string | null
  /** a move that is still under way: shown, and written when it is settled, by that or by whatever is done next */
  readonly preview: (edit: MoveEdit | SizeEdit) => string | null
  readonly settle: () => string | null
  /** puts a move that is still under way back where it began */
  readonly abandon: () => void
  /** what is told beside a move that is under way; null where none is */
  readonly inHand: (look: Look) => DragShown | null
  /** steps of a hand nobody sees, for when nobody asks for anything: see practice.ts; null while a thing is in a hand or the text does not read */
  readonly practice: (look: Look) => (() => boolean) | null
  readonly undo: () => void
  readonly redo: () => void
  /** what is compared with from now on; `when` is ISO, by the clock of whoever asks. A sentence where the text does not read */
  readonly freeze: (name: string, when?: string) => FrozenRevision | string
  /** the last frozen revision with the coach as it is now */
  readonly ripple: (units?: UnitSystem) => RippleShown
  readonly revisions: Revisions
  /** shows a frozen revision and takes no edit until it is left again with null; says why not where it does not read */
  readonly lookAt: (side: SideId | null) => string | null
  /** the text of a frozen revision becomes the text, as one edit */
  readonly takeUp: (side: SideId) => string | null
  /** the change note from one to the other, a page each; a sentence where one does not read */
  readonly notePages: (from: SideId, to: SideId, date: string, units?: UnitSystem) => readonly string[] | string
  /** where a line of the ripple leads */
  readonly goTo: (target: Target, from: SideId) => Go
  readonly elevation: (look: Look) => Elevation
  readonly sheet: (name: string) => SheetShown
  readonly page: (path: string, page: number) => PageShown | null
  readonly working: (id: string, units?: UnitSystem) => WorkingShown
  readonly ask: (question: string) => Answer
  /** what is at a place of a drawing; null beside the coach */
  readonly at: (look: Look, x: number, y: number) => PlaceNote | null
  /** of a file that was read: the edited one as it stands now, one it extends as it was opened; null for any other */
  readonly fileText: (file: string) => string | null
  /** the coach in space, but for what the screen has already */
  readonly space: (asked: SpaceAsked) => SpaceSent
  readonly design: () => Design
  /** what is drawn live on the sheets */
  readonly figures: Figures
}
