/**
 * One coach on the desk: the text of its file and every text it had, the design of the last text that read, and the revision
 * that edits are compared with. It is asked and answers; the worker holds it, and so do the tests.
 */
import type { Subject } from '../checks/explain/entry.js'
import { design } from '../checks/index.js'
import { type ReadDefinition, readDefinition } from '../definition/read-definition.js'
import { type Step, whereWritten } from '../definition/set-in-text.js'
import { shareUnchanged } from '../definition/share-unchanged.js'
import type { Definition, Fault } from '../definition/types.js'
import type { Written } from '../definition/written.js'
import type { Design } from '../derive/design.js'
import { derive } from '../derive/index.js'
import { createMemo } from '../derive/memo.js'
import { packetPlan } from '../documents/packet/plan.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import { verdictCounts } from '../documents/sheets/checks-list.js'
import type { UnitSystem } from '../quantity/format.js'
import { compare } from '../ripple/compare.js'
import { rippleText } from '../ripple/ripple-text.js'
import { answer } from './answer.js'
import { type Drag, type InHand, startDrag } from './drag.js'
import { dragShown } from './drag-shown.js'
import { elevationOf } from './elevation.js'
import { type Figures, figuresOf } from './figures/figures.js'
import { type History, startHistory, stepped, textOf, withText } from './history.js'
import { keptParse } from './kept-parse.js'
import type {
  Answer,
  DragShown,
  Edit,
  Elevation,
  FaultShown,
  Look,
  MoveEdit,
  PageShown,
  PlaceNote,
  RippleShown,
  SheetShown,
  SizeEdit,
  State,
  WorkingShown,
} from './nouns.js'
import { placeNote } from './place-note.js'
import { rippleLine } from './ripple-line.js'
import { pageShown, sheetShown, workingShown } from './sheet-shown.js'
import { writeEdit } from './write-edit.js'

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
  readonly undo: () => void
  readonly redo: () => void
  /** what is compared with from now on */
  readonly freeze: (name: string) => void
  readonly ripple: (units?: UnitSystem) => RippleShown
  readonly elevation: (look: Look) => Elevation
  readonly sheet: (name: string) => SheetShown
  readonly page: (path: string, page: number) => PageShown | null
  readonly working: (id: string, units?: UnitSystem) => WorkingShown
  readonly ask: (question: string) => Answer
  /** what is at a place of a drawing; null beside the coach */
  readonly at: (look: Look, x: number, y: number) => PlaceNote | null
  readonly design: () => Design
  /** what is drawn live on the sheets */
  readonly figures: Figures
}

type Reading = Pick<ReadDefinition, 'definition' | 'faults' | 'merged'>

/** Derivations of a drag, which ask for no checks; where it rests those of everything else are still known. */
const PATIENCE = 300

/** So many steps back are taken without reading. */
const READINGS = 64

/** `begun` is every text it had before it could be read. */
export function deskCoach({ path, files }: CoachFiles, begun: History = startHistory(files[path] ?? '')): DeskCoach | NotRead {
  const memo = createMemo(PATIENCE)
  const parse = keptParse()
  let history = begun
  let faults: readonly Fault[] = []
  let definition: Definition | null = null
  let merged: Written | null = null
  let drag: Drag | null = null
  let inHand: InHand | null = null
  let shown: Design | null = null
  let broken: FaultShown | null = null
  let subject: Subject | null = null
  let plan: readonly PlannedDocument[] | null = null

  /** Whether it could be derived; where it could not, what was drawn last stays. */
  const show = (written: Definition, made?: Design): string | null => {
    try {
      shown = made ?? design(written, memo)
      subject = null
      plan = null
      return null
    } catch (reason) {
      return reason instanceof Error ? reason.message : String(reason)
    }
  }
  // undo and redo come back to texts that were read before
  const readings = new Map<string, Reading>()
  const keep = (text: string, reading: Reading): void => {
    readings.set(text, reading)
    const [oldest] = readings.keys()
    if (readings.size > READINGS && oldest !== undefined) readings.delete(oldest)
  }
  const read = (text: string): boolean => {
    const known = readings.get(text)
    const found = known ?? readDefinition(path, text, (other) => files[other] ?? null, parse)
    faults = found.faults
    broken = null
    if (!found.definition) return false
    definition = known || !definition ? found.definition : shareUnchanged(definition, found.definition)
    merged = found.merged
    drag = null
    if (!known) keep(text, { definition, faults, merged })
    // a coach that reads and cannot be derived is our mistake, and is said
    const why = show(definition)
    broken =
      why === null
        ? null
        : { file: path, line: 1, column: 1, says: `This coach cannot be derived, which is a mistake of the program: ${why}.` }
    return true
  }
  if (!read(textOf(history)) || !shown) return { faults: broken ? [broken] : faults.map(faultShown) }

  // the last text that read stays drawn while a person is in the middle of a word; what a drag left out is made up for whoever asks
  const now = (): Design => {
    if (inHand && shown === inHand.design && !inHand.isWhole) {
      show(inHand.definition)
      inHand = { ...inHand, design: shown as Design, isWhole: true }
    }
    return shown as Design
  }
  const about = (): Subject => {
    subject ??= { design: now(), derived: derive(now().definition, memo) }
    return subject
  }
  const planned = (): readonly PlannedDocument[] => {
    plan ??= packetPlan(now())
    return plan
  }
  /** as it is in the hand, with what a drag leaves out left out */
  const seen = (): Design => shown as Design
  const isJudged = (): boolean => inHand === null || inHand.isWhole
  let frozen = { name: `revision ${now().revision}`, design: now() }

  const goTo = (next: History): void => {
    if (next === history) return
    const text = textOf(next)
    const isNew = text !== textOf(history)
    history = next
    if (isNew) read(text)
  }

  const faultsNow = (): readonly FaultShown[] => (broken ? [broken] : faults.map(faultShown))
  const isWritten = (steps: readonly Step[]): boolean => merged !== null && whereWritten(merged, steps) !== null
  /** Says why it was not taken; then text and drawing are as they were. */
  const write = (edit: Edit): string | null => {
    const [wrong] = faultsNow()
    if (edit.kind !== 'text' && wrong) return `The text does not read: line ${wrong.line}, ${wrong.says} Mend that first, or undo it.`
    const written = writeEdit(textOf(history), edit, definition ?? now().definition, isWritten)
    if (!written.ok) return written.says
    const before = history
    goTo(withText(history, written.text, edit.stroke ?? null))
    const [fault] = faultsNow()
    if (edit.kind === 'text' || !fault) return null
    history = before
    read(textOf(before))
    return `That was not taken: ${fault.says}`
  }
  const abandon = (): void => {
    if (inHand && definition) show(definition)
    inHand = null
    drag = null
  }
  const settle = (): string | null => {
    if (!inHand) return null
    const { edit } = inHand
    inHand = null
    drag = null
    const before = history
    const says = write(edit)
    // a drag that ends where it began, or where it may not, leaves nothing of itself on the drawing
    if (history === before && definition) show(definition)
    return says
  }
  const settled = <T>(then: () => T): T => {
    settle()
    return then()
  }

  return {
    design: now,
    state: () => ({
      ...{
        name: seen().definition.coach.name,
        revision: seen().revision,
        market: seen().definition.coach.market,
        faults: faultsNow(),
        text: textOf(history),
        file: path,
      },
      ...{ undo: history.at, redo: history.entries.length - 1 - history.at, since: frozen.name },
      ...{ verdicts: isJudged() ? verdictCounts(seen().checks) : null },
    }),
    edit: (edit) => settled(() => write(edit)),
    preview: (edit) => {
      // a text that does not read has no definition to move things in
      if (faultsNow().length > 0) return settled(() => write(edit))
      if (inHand && inHand.edit.id !== edit.id) settle()
      drag ??= startDrag({ derived: about().derived, design: now(), memo, isWritten })
      const next = drag.to(edit)
      if (!next) return settled(() => write(edit))
      inHand = next
      show(next.definition, next.design)
      return null
    },
    settle,
    abandon,
    inHand: (look) => inHand && dragShown(inHand, look),
    undo: () => settled(() => goTo(stepped(history, -1))),
    redo: () => settled(() => goTo(stepped(history, 1))),
    freeze: (name) => {
      settle()
      frozen = { name, design: now() }
    },
    ripple: (units = 'metric') => {
      const ripple = compare(frozen.design, now())
      return { since: frozen.name, line: rippleLine(ripple, frozen.name), lines: rippleText(ripple, units) }
    },
    elevation: (look) => elevationOf(seen(), look),
    sheet: (name) => sheetShown(now(), about(), planned(), name),
    page: (of, page) => pageShown(planned(), of, page),
    working: (id, units = 'metric') => workingShown(about(), id, units),
    ask: (question) => answer(about(), question),
    at: (look, x, y) => placeNote(about(), look, x, y),
    figures: figuresOf(now, about),
  }
}

const faultShown = ({ file, line, column, says }: Fault): FaultShown => ({ file, line, column, says })
