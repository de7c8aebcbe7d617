/**
 * One coach on the desk: the text of its file and every text it had, the design of the last text that read, and the revision
 * that edits are compared with. It is asked and answers; the worker holds it, and so do the tests.
 */
import { at } from '../checks/at/at.js'
import type { Subject } from '../checks/explain/entry.js'
import { designFormulas, explainable, working } from '../checks/explain/working.js'
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import { shareUnchanged } from '../definition/share-unchanged.js'
import type { Definition, Fault, Side } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import { derive } from '../derive/index.js'
import { createMemo } from '../derive/memo.js'
import type { Verdict } from '../derive/nouns.js'
import { packetPlan } from '../documents/packet/plan.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import { verdictCounts, worstFirst } from '../documents/sheets/checks-list.js'
import { pageToSvg } from '../documents/svg.js'
import { explainText } from '../quantity/explain.js'
import type { UnitSystem } from '../quantity/format.js'
import { compare } from '../ripple/compare.js'
import { rippleText } from '../ripple/ripple-text.js'
import { elevationOf } from './elevation.js'
import { type History, startHistory, stepped, textOf, withText } from './history.js'
import { keptParse } from './kept-parse.js'
import { movedDefinition } from './moved.js'
import type { Edit, Elevation, FaultShown, Look, MoveEdit, RippleShown, Sentence, SheetShown, State } from './nouns.js'
import { rippleLine } from './ripple-line.js'
import { isUnder, sheetPlan } from './sheets.js'
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

export interface WorkingShown {
  readonly id: string
  readonly says: string
  readonly text: string
  /** ids of the same kind that can be opened, where this one is not known */
  readonly near: readonly string[]
}

export interface PageShown {
  readonly path: string
  readonly says: string
  /** pages as SVG in millimetres; a text document has its text instead */
  readonly pages: number
  readonly svg: string | null
  readonly text: string | null
}

export interface Answer {
  readonly says: string
  /** lit up on the elevation: station, and waterline or buttock line, m */
  readonly at: { readonly station: number; readonly waterline: number; readonly look: Look } | null
  readonly lines: readonly string[]
}

export interface DeskCoach {
  readonly state: () => State
  /** says why where an edit cannot be written; otherwise null */
  readonly edit: (edit: Edit) => string | null
  /** a move that is still under way: shown, and written when it is settled, by that or by whatever is done next */
  readonly preview: (edit: MoveEdit) => string | null
  readonly settle: () => string | null
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
  readonly design: () => Design
}

/** So many steps back are taken without reading. */
const READINGS = 64

export function deskCoach({ path, files }: CoachFiles): DeskCoach | NotRead {
  const memo = createMemo()
  const parse = keptParse()
  let history: History = startHistory(files[path] ?? '')
  let faults: readonly Fault[] = []
  let definition: Definition | null = null
  let shown: Design | null = null
  let broken: FaultShown | null = null
  let subject: Subject | null = null
  let plan: readonly PlannedDocument[] | null = null

  // a coach that reads and cannot be derived is our mistake: it is said, and what was drawn last stays
  const show = (written: Definition): void => {
    broken = null
    try {
      shown = design(written, memo)
      subject = null
      plan = null
    } catch (reason) {
      broken = { file: path, line: 1, column: 1, says: `This coach cannot be derived, which is a mistake of the program: ${said(reason)}.` }
    }
  }
  // undo and redo come back to texts that were read before
  const readings = new Map<string, { readonly definition: Definition | null; readonly faults: readonly Fault[] }>()
  const keep = (text: string, reading: { readonly definition: Definition; readonly faults: readonly Fault[] }): void => {
    readings.set(text, reading)
    const [oldest] = readings.keys()
    if (readings.size > READINGS && oldest !== undefined) readings.delete(oldest)
  }
  const read = (text: string): boolean => {
    const known = readings.get(text)
    const found = known ?? readDefinition(path, text, (other) => files[other] ?? null, parse)
    faults = found.faults
    if (!found.definition) return false
    definition = known || !definition ? found.definition : shareUnchanged(definition, found.definition)
    if (!known) keep(text, { definition, faults })
    show(definition)
    return true
  }
  if (!read(textOf(history)) || !shown) return { faults: broken ? [broken] : faults.map(faultShown) }

  // the last text that read stays drawn while a person is in the middle of a word
  const now = (): Design => shown as Design
  const about = (): Subject => {
    subject ??= { design: now(), derived: derive(now().definition, memo) }
    return subject
  }
  const planned = (): readonly PlannedDocument[] => {
    plan ??= packetPlan(now())
    return plan
  }
  let frozen = { name: `revision ${now().revision}`, design: now() }

  const goTo = (next: History): void => {
    if (next === history) return
    const text = textOf(next)
    const isNew = text !== textOf(history)
    history = next
    if (isNew) read(text)
  }

  let underWay: MoveEdit | null = null
  const write = (edit: Edit): string | null => {
    const written = writeEdit(textOf(history), edit, definition ?? now().definition)
    if (!written.ok) return written.says
    goTo(withText(history, written.text, edit.stroke ?? null))
    return null
  }
  const settle = (): string | null => {
    const edit = underWay
    underWay = null
    return edit && write(edit)
  }
  const settled = <T>(then: () => T): T => {
    settle()
    return then()
  }

  return {
    design: now,
    state: () => ({
      ...{
        name: now().definition.coach.name,
        revision: now().revision,
        faults: broken ? [broken] : faults.map(faultShown),
        text: textOf(history),
        file: path,
      },
      ...{ undo: history.at, redo: history.entries.length - 1 - history.at, verdicts: verdictCounts(now().checks), since: frozen.name },
    }),
    edit: (edit) => settled(() => write(edit)),
    preview: (edit) => {
      // a text that does not read has no definition to move things in
      const moved = faults.length === 0 && definition ? movedDefinition(definition, edit) : null
      if (!moved) return settled(() => write(edit))
      underWay = edit
      show(moved)
      return null
    },
    settle,
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
    elevation: (look) => elevationOf(now(), look),
    sheet: (name) => sheetShown(now(), about(), planned(), name),
    page: (of, page) => pageShown(planned(), of, page),
    working: (id, units = 'metric') => workingShown(about(), id, units),
    ask: (question) => answer(about(), question),
  }
}

const said = (reason: unknown): string => (reason instanceof Error ? reason.message : String(reason))

const faultShown = ({ file, line, column, says }: Fault): FaultShown => ({ file, line, column, says })

/** As many figures as a person would look through; the rest are found by asking. */
const FIGURES = 250

function sheetShown(shown: Design, subject: Subject, plan: readonly PlannedDocument[], name: string): SheetShown {
  const { checks, figures, documents } = sheetPlan(name)
  return {
    name,
    sentences: worstFirst(shown.checks.filter(({ id }) => isUnder(id, checks))).map(sentenceOf),
    figures:
      figures.length === 0
        ? []
        : explainable(subject)
            .filter(({ id }) => isUnder(id, figures))
            .slice(0, FIGURES),
    documents: [...new Set(documents.flatMap((start) => plan.filter(({ path }) => path.startsWith(start))))].map(({ path, says }) => ({
      path,
      says,
    })),
  }
}

function sentenceOf(check: Design['checks'][number]): Sentence {
  const { id, says, verdict, margin, source, mend, concerns } = check
  return { id: `check.${id}`, says, verdict: verdict as Verdict, margin, source, mend, about: concerns }
}

function pageShown(plan: readonly PlannedDocument[], path: string, page: number): PageShown | null {
  const document = plan.find((each) => each.path === path)
  if (!document) return null
  const { says, content } = document
  if (content.kind === 'text') return { path, says, pages: 1, svg: null, text: content.make() }
  const pages = content.make()
  const which = Math.min(pages.length - 1, Math.max(0, page))
  return { path, says, pages: pages.length, svg: pageToSvg(pages[which]), text: null }
}

function workingShown(subject: Subject, id: string, units: UnitSystem): WorkingShown {
  const found = working(subject, id)
  if (found.kind === 'none') return { id, says: found.says, text: '', near: found.near }
  const worked = found.kind === 'number' ? [found.worked] : found.check.worked
  return { id, says: found.says, text: worked.map((each) => explainText(each, designFormulas, units)).join('\n\n'), near: [] }
}

function answer(subject: Subject, question: string): Answer {
  const asked = question.trim()
  const place = at(subject.derived, asked)
  if (place.ok) {
    const { found } = place
    const list = (head: string, things: typeof found.outside): readonly string[] => [head, ...things.map((each) => `  ${each.sentence}`)]
    return {
      says: found.place.address,
      at: { station: found.place.station, waterline: found.place.z, look: lookOf(found.place.side) },
      lines: [...list('Outside', found.outside), ...list('Through the skin', found.through), ...list('Inside', found.inside)],
    }
  }
  return byWords(subject, asked, place.says)
}

/** More than this is a list nobody reads. */
const FOUND = 12

function byWords({ design: shown, derived }: Subject, asked: string, otherwise: string): Answer {
  const words = asked.toLowerCase().split(/\s+/).filter(Boolean)
  const has = (text: string): boolean => words.every((word) => text.toLowerCase().includes(word))
  const opening = shown.openings.find(({ id }) => id.toLowerCase() === asked.toLowerCase())
  const things = [
    ...shown.openings.filter((each) => has(`${each.id} ${each.says}`)).map((each) => `${each.id}, ${each.says}: ${where(each.place)}.`),
    ...shown.parts.filter((each) => has(`${each.id} ${each.says}`)).map((each) => `${each.says} (${each.id}): ${where(each.place)}.`),
    ...shown.rows
      .filter((each) => has(`${each.id} ${each.says}`))
      .map(
        (each) =>
          `${each.says} (${each.id}): ${each.station.length} of ${[...new Set(each.stacks.map((stack) => stack.name))].join(', ')}.`,
      ),
    ...shown.checks.filter((each) => has(each.says)).map((each) => each.says),
    ...explainable({ design: shown, derived })
      .filter((each) => has(`${each.id} ${each.says}`))
      .map((each) => `${each.says} (${each.id})`),
  ]
  if (things.length === 0)
    return {
      says: words.length > 0 ? `Nothing is called "${asked}". ${otherwise}` : 'Ask for a place, a thing or a figure.',
      at: null,
      lines: [],
    }
  const more = things.length - FOUND
  return {
    says: `${things.length} found`,
    at: opening ? { station: opening.place.station, waterline: opening.place.waterline, look: lookOf(opening.place.side) } : null,
    lines: [...things.slice(0, FOUND), ...(more > 0 ? [`and ${more} more: add a word.`] : [])],
  }
}

/** From where a thing on a side is seen. */
const lookOf = (side: Side): Look => (side === 'centre' ? 'plan' : side)

const where = ({ station, waterline, side }: { readonly station: number; readonly waterline: number; readonly side: string }): string =>
  `${side}, STA ${Math.round(station * 1000)}, WL ${Math.round(waterline * 1000)}`
