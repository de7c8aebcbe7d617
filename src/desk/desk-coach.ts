/**
 * One coach on the desk: the text of its file and every text it had, the design of the last text that read, and the revision
 * that edits are compared with. It is asked and answers; the worker holds it, and so do the tests.
 */
import type { Subject } from '../checks/explain/entry.js'
import { design } from '../checks/index.js'
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
import { answer } from './answer.js'
import type { CoachFiles, DeskCoach, NotRead } from './desk-coach-nouns.js'
import { type Drag, type InHand, startDrag } from './drag.js'
import { dragShown } from './drag-shown.js'
import { elevationOf } from './elevation.js'
import { figuresOf } from './figures/figures.js'
import { goOf } from './go.js'
import { type History, startHistory, stepped, textOf, withText } from './history.js'
import { notePages } from './note-pages.js'
import type { Edit, FaultShown } from './nouns.js'
import { placeNote } from './place-note.js'
import { practice } from './practice.js'
import { createReadings } from './readings.js'
import { revisionsOf, type Standing } from './revisions.js'
import { pageShown, sheetShown } from './sheet-shown.js'
import { spaceSender } from './space/sent.js'
import { workingShown } from './working-shown.js'
import { writeEdit } from './write-edit.js'

/** Derivations of a drag, which ask for no checks; where it rests those of everything else are still known. */
const PATIENCE = 300

/** `begun` is every text it had before it could be read. */
export function deskCoach({ path, files }: CoachFiles, begun: History = startHistory(files[path] ?? '')): DeskCoach | NotRead {
  const memo = createMemo(PATIENCE)
  const space = spaceSender()
  const readings = createReadings({ path, files })
  let history = begun
  let faults: readonly Fault[] = []
  let definition: Definition | null = null
  // with the place of every value in the text
  let merged: Written | null = null
  let drag: Drag | null = null
  let inHand: InHand | null = null
  let shown: Design | null = null
  let broken: FaultShown | null = null
  let subject: Subject | null = null
  let plan: readonly PlannedDocument[] | null = null
  // a frozen revision somebody looks at, in the place of the coach as it is now
  let looked: Standing | null = null

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
  const read = (text: string): boolean => {
    const found = readings.read(text, definition)
    faults = found.faults
    broken = null
    if (!found.definition) return false
    const written = found.definition
    definition = written
    merged = found.merged
    drag = null
    // a coach that reads and cannot be derived is our mistake, and is said
    const why = show(written)
    broken =
      why === null
        ? null
        : { file: path, line: 1, column: 1, says: `This coach cannot be derived, which is a mistake of the program: ${why}.` }
    return true
  }
  if (!read(textOf(history)) || !shown) return { faults: broken ? [broken] : faults.map(faultShown) }

  /** The last text that read stays drawn while a person is in the middle of a word; what a drag left out is made up for whoever asks. */
  const whole = (): Design => {
    if (inHand && shown === inHand.design && !inHand.isWhole) {
      show(inHand.definition)
      inHand = { ...inHand, design: shown as Design, isWhole: true }
    }
    return shown as Design
  }
  const now = (): Design => looked?.design ?? whole()
  const about = (): Subject => {
    subject ??= { design: now(), derived: derive(now().definition, memo) }
    return subject
  }
  const planned = (): readonly PlannedDocument[] => {
    plan ??= packetPlan(now())
    return plan
  }
  /** as it is in the hand, with what a drag leaves out left out */
  const seen = (): Design => looked?.design ?? (shown as Design)
  const isJudged = (): boolean => looked !== null || inHand === null || inHand.isWhole
  const current = (): Standing => ({ name: 'the coach as it is now', text: textOf(history), design: whole(), merged })
  const revisions = revisionsOf({
    ...{ path, files, now: current },
    derive: (written) => design(shareUnchanged(whole().definition, written), memo),
  })

  const goTo = (next: History): void => {
    if (next === history) return
    const text = textOf(next)
    const isNew = text !== textOf(history)
    history = next
    if (isNew) read(text)
  }

  const faultsNow = (): readonly FaultShown[] => (looked ? [] : broken ? [broken] : faults.map(faultShown))
  const refused = (): string | null =>
    looked && `This is “${looked.name}” as it was frozen, and stays so. Go back to the coach as it is now to change it, or take it up.`
  const isWritten = (steps: readonly Step[]): boolean => merged !== null && whereWritten(merged, steps) !== null
  /** Says why it was not taken; then text and drawing are as they were. */
  const write = (edit: Edit): string | null => {
    if (looked) return refused()
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
        revision: isJudged() ? seen().revision : null,
        market: seen().definition.coach.market,
        faults: faultsNow(),
        text: looked?.text ?? textOf(history),
        file: path,
      },
      ...(looked ? { undo: 0, redo: 0 } : { undo: history.at, redo: history.entries.length - 1 - history.at }),
      ...{ verdicts: isJudged() ? verdictCounts(seen().checks) : null },
      ...{ since: revisions.nameOf(revisions.baseline()), looking: looked?.name ?? null },
    }),
    edit: (edit) => settled(() => write(edit)),
    preview: (edit) => {
      if (looked) return refused()
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
    practice: (look) =>
      inHand || looked || faultsNow().length > 0 ? null : practice({ derived: about().derived, design: now(), isWritten }, look),
    undo: () => settled(() => looked ?? goTo(stepped(history, -1))),
    redo: () => settled(() => looked ?? goTo(stepped(history, 1))),
    revisions,
    freeze: (name, when = '') => {
      settle()
      const [wrong] = faultsNow()
      if (wrong) return `Nothing was frozen: line ${wrong.line}, ${wrong.says} Mend that first.`
      return refused() ?? revisions.freeze(name, when)
    },
    ripple: (units = 'metric') => {
      const found = revisions.compare(revisions.baseline(), 'now', units)
      // a frozen revision that this program reads no more is said, and compared with nothing
      return typeof found === 'string'
        ? { since: revisions.nameOf(revisions.baseline()), until: null, line: found, lines: [], text: [found] }
        : found
    },
    lookAt: (side) => {
      settle()
      const standing = side === null || side === 'now' ? null : revisions.standing(side)
      if (typeof standing === 'string') return standing
      looked = standing
      subject = null
      plan = null
      return null
    },
    takeUp: (side) => {
      settle()
      const standing = revisions.standing(side)
      if (typeof standing === 'string') return standing
      looked = null
      subject = null
      plan = null
      const others = revisions.all().find(({ id }) => id === side)?.files ?? {}
      const since = Object.keys(others).filter((file) => file !== path && others[file] !== files[file])
      const says = write({ kind: 'text', text: standing.text })
      return says ?? (since.length > 0 ? `The text was taken up. What it extends is not what it was then: ${since.join(', ')}.` : null)
    },
    notePages: (from, to, date, units = 'metric') => notePages(revisions, from, to, { date, units }),
    goTo: (target, from) => {
      const before = revisions.standing(from)
      const ground = { now: now(), before: typeof before === 'string' ? now() : before.design, plan: planned() }
      return goOf({ ...ground, merged: looked ? looked.merged : merged }, target)
    },
    elevation: (look) => elevationOf(seen(), look),
    sheet: (name) => sheetShown(now(), about(), planned(), name),
    page: (of, page) => pageShown(planned(), of, page),
    working: (id, units = 'metric') => workingShown(about(), looked ? looked.merged : merged, id, units),
    ask: (question) => answer(about(), question),
    fileText: (file) => (file === path ? (looked?.text ?? textOf(history)) : (files[file] ?? null)),
    space: (asked) => space(about(), asked),
    figures: figuresOf(now, about),
    at: (look, x, y) => placeNote(about(), look, x, y),
  }
}

const faultShown = ({ file, line, column, says }: Fault): FaultShown => ({ file, line, column, says })
