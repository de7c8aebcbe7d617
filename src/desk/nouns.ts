/** What the desk shows and takes: plain data that crosses from the worker to the screen. SI unless a name says otherwise. */
import type { Step } from '../definition/set-in-text.js'
import type { Market } from '../definition/types.js'
import type { Verdict } from '../derive/nouns.js'
import type { UnitSystem } from '../quantity/format.js'
import type { RippleLine } from '../ripple/line.js'
import type { Box } from './box.js'

/** From which side the coach is looked at. */
export type Look = 'right' | 'left' | 'plan' | 'nose' | 'tail'
export type Layer = 'skin' | 'frames' | 'seams' | 'openings' | 'chassis' | 'axles' | 'tanks' | 'masses'

/** A written size of a thing, to be typed as the tape says it; `steps` is where it is written, null where several values hang on it. */
export interface Field {
  readonly says: string
  readonly steps: readonly Step[] | null
  /** m */
  readonly metres: number
  /** written as one of these words instead of a length */
  readonly choice?: { readonly value: string; readonly words: readonly { readonly value: string; readonly says: string }[] }
}

/** One thing drawn on the elevation: x is the station (from nose and tail the buttock line), y the waterline (in plan the buttock line). */
export interface Drawn {
  /** of the thing, as an address or a search takes it; null for plain outline */
  readonly id: string | null
  readonly layer: Layer
  readonly says: string
  readonly points: readonly number[]
  readonly closed: boolean
  /** how it may be dragged on this drawing: sideways, up and down, or both; null where it may not */
  readonly moves: 'along' | 'up' | 'both' | null
  /** where it is written to stand, which a projected outline need not be the middle of; null for what follows from something else */
  readonly place: { readonly station: number | null; readonly waterline: number | null; readonly across: number | null } | null
  /** whether its edges may be pulled on this drawing */
  readonly isSized: boolean
  /** what a shifted arrow key moves it by: the pitch its rivets are written with, m; null for what has none */
  readonly pitch: number | null
  /** its written sizes, the station first */
  readonly fields: readonly Field[]
  /** verdict of the worst check that names it; null where none does */
  readonly verdict: Verdict | null
}

export interface Elevation {
  readonly look: Look
  readonly drawn: readonly Drawn[]
  /** x, y of every rivet that is seen, one after the other */
  readonly rivets: Float32Array
  readonly box: Box
}

/** A thing put at a station, a waterline, a place across, as far as it has one of its own; null leaves it where it is. m */
export interface MoveEdit {
  readonly kind: 'move'
  readonly id: string
  readonly station: number | null
  readonly waterline: number | null
  /** buttock line; of an opening in the roof and of a seam the girth */
  readonly across?: number | null
  readonly snap?: SnapWish
  readonly stroke?: string
}

/** Edges of an opening pulled to stations (fore, aft) and waterlines, on the roof girths (low, high); null leaves one where it is. m */
export interface SizeEdit {
  readonly kind: 'size'
  readonly id: string
  readonly fore: number | null
  readonly aft: number | null
  readonly low: number | null
  readonly high: number | null
  readonly snap?: SnapWish
  readonly stroke?: string
}

/** How far from a clean place a thing is still drawn there, m, and in which unit a place is round; absent where nobody wants that. */
export interface SnapWish {
  readonly reach: number
  readonly units: UnitSystem
}

/** A clean place a drag was drawn to, and why it is one; `at` is where the guide lies, a station (x) or a height on the drawing (y). m */
export interface SnapShown {
  readonly axis: 'x' | 'y'
  readonly at: number
  readonly says: string
}

/** What is told beside a thing while it is dragged. */
export interface DragShown {
  readonly id: string
  readonly snaps: readonly SnapShown[]
  /** what it means where it is now: rules it breaks, what the hitch carries, what its neighbours would cost */
  readonly says: readonly string[]
}

/** A thing pushed from where it is written to stand, however many pushes are on their way. m */
export interface NudgeEdit {
  readonly kind: 'nudge'
  readonly id: string
  readonly along: number
  readonly up: number
  readonly across?: number
  readonly stroke?: string
}

/**
 * One change a person makes. Edits with the same `stroke` that follow each other are one to undo: a drag. A text may be
 * left in the middle of a word; what a hand moves or types into a field is taken only where the coach still reads.
 */
export type Edit =
  | {
      readonly kind: 'set'
      readonly steps: readonly Step[]
      /** as the tape says it: `5825 mm` */
      readonly value: string
      readonly stroke?: string
    }
  | MoveEdit
  | SizeEdit
  | NudgeEdit
  | { readonly kind: 'text'; readonly text: string; readonly stroke?: string }

export interface FaultShown {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly says: string
}

/** A sentence with a number; `id` opens its working, `place` lights it up on the elevation. */
export interface Sentence {
  readonly id: string
  readonly says: string
  readonly verdict: Verdict | null
  /** capacity over demand less one, as a share; null where nothing is measured */
  readonly margin: number | null
  readonly source: string | null
  readonly mend: string | null
  /** ids of the things it is about */
  readonly about: readonly string[]
}

export interface SheetShown {
  readonly name: string
  readonly sentences: readonly Sentence[]
  readonly figures: readonly { readonly id: string; readonly says: string }[]
  /** documents of the packet that belong to it */
  readonly documents: readonly { readonly path: string; readonly says: string }[]
}

/** Where the coach stands after an edit. */
export interface State {
  readonly name: string
  /** null while a thing is in the hand: it has no name before it is let go */
  readonly revision: string | null
  readonly market: Market
  readonly faults: readonly FaultShown[]
  /** the text as it is now, of the file that is edited */
  readonly text: string
  readonly file: string
  readonly undo: number
  readonly redo: number
  /** null while a thing is in the hand: then only the rules of where things stand are looked at */
  readonly verdicts: Readonly<Record<Verdict, number>> | null
  /** what edits are compared with */
  readonly since: string
  /** the frozen revision that is looked at, where nothing can be changed; null for the coach as it is now */
  readonly looking: string | null
}

/** One line of a ripple on the screen. */
export interface RippleLineShown extends RippleLine {
  /** of a heading how many lines stand under it; null for a line */
  readonly count: number | null
}

/** Two states of a coach compared. */
export interface RippleShown {
  /** what it is compared with: a frozen revision unless somebody chose otherwise */
  readonly since: string
  /** what is compared with it; null for the coach as it is now */
  readonly until: string | null
  readonly line: string
  readonly lines: readonly RippleLineShown[]
  /** the same as the command line prints it: headings without an indent, sentences with one */
  readonly text: readonly string[]
}

/** A coach as it was frozen: its text and every file it extends. Never changed; a screen keeps it. */
export interface FrozenRevision {
  readonly id: string
  readonly name: string
  readonly revision: string
  /** when by the clock of the screen, ISO */
  readonly when: string
  readonly files: Readonly<Record<string, string>>
}

/** What can be compared: `now`, `opened` as it was when it was opened, `disk`, or the id of a frozen revision. */
export type SideId = string

/** Where a line of a ripple leads. */
export interface Go {
  /** why there is nothing to go to; null where there is */
  readonly says: string | null
  readonly at: Answer['at']
  readonly select: string | null
  readonly sheet: string | null
  readonly document: string | null
  readonly working: string | null
  readonly field: FieldShown | null
}

/** Where a value is written: the text view goes there, the elevation shows the thing. */
export interface FieldShown {
  readonly file: string
  /** counts from 1 */
  readonly line: number
  readonly column: number
  /** how many characters the value is written in; 0 for a group or a list */
  readonly length: number
  /** as a person says it: `masses compressor fridge mass` */
  readonly says: string
  /** what the elevation knows it by; null where it is nothing one sees there */
  readonly thing: string | null
}

/** One input of a working. Values in SI, figures as they are read. */
export interface InputShown {
  readonly symbol: string
  readonly says: string | null
  readonly value: number
  readonly unit: string
  readonly figure: string
  /** id of the working behind it; null for a given figure */
  readonly working: string | null
  /** where a given figure comes from, in words; null for what is worked */
  readonly from: string | null
  /** where it is written; null for what is measured, looked up or a default */
  readonly field: FieldShown | null
}

/** A figure opened. What cannot be worked says why, and has no formula. */
export interface WorkingShown {
  readonly id: string
  readonly says: string
  /** what its formula gives in general */
  readonly what: string | null
  readonly symbol: string | null
  readonly symbolic: string | null
  /** the formula with its figures; null where there is none, or too many */
  readonly substituted: string | null
  /** the condition of the branch that applies */
  readonly because: string | null
  /** SI */
  readonly value: number | null
  readonly unit: string | null
  readonly figure: string | null
  readonly source: string | null
  readonly cautions: readonly string[]
  readonly inputs: readonly InputShown[]
  /** ids of the same kind that can be opened, where this one is not known */
  readonly near: readonly string[]
}

export interface PageShown {
  readonly path: string
  readonly says: string
  /** which page, from 0, of how many */
  readonly page: number
  readonly pages: number
  /** in millimetres; a text document has its text instead */
  readonly svg: string | null
  readonly text: string | null
}

export interface Answer {
  readonly says: string
  /** what to light up: from where it is seen, and its place on that drawing */
  readonly at: { readonly look: Look; readonly x: number; readonly y: number } | null
  readonly lines: readonly string[]
}

/** What is at a place that is pointed at: the address, and what lies outside, through the skin and inside, each under its word. */
export interface PlaceNote {
  readonly address: string
  readonly lines: readonly { readonly says: string; readonly text: string }[]
}
