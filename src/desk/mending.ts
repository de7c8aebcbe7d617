/** A coach that did not read when it was opened: its text and its faults, until it reads and becomes a coach like any other. */
import { loadFiles } from '../definition/load-files.js'
import { deskCoach } from './desk-coach.js'
import type { CoachFiles, DeskCoach, NotRead } from './desk-coach-nouns.js'
import { type History, startHistory, stepped, textOf, withText } from './history.js'
import type { FaultShown } from './nouns.js'

export interface Mending {
  readonly file: string
  readonly text: string
  readonly faults: readonly FaultShown[]
  readonly undo: number
  readonly redo: number
  /** files it extends that were not given with it */
  readonly wanted: readonly string[]
}

export interface MendingCoach {
  readonly shown: () => Mending
  /** the coach itself as soon as the text reads, with every text it had */
  readonly write: (text: string) => DeskCoach | null
  readonly step: (by: -1 | 1) => DeskCoach | null
  /** files that were missing, by the path they are wanted under */
  readonly give: (files: Readonly<Record<string, string>>) => DeskCoach | null
  readonly files: () => CoachFiles
}

export function mendingCoach({ path, files }: CoachFiles, { faults }: NotRead): MendingCoach {
  let given = files
  let history: History = startHistory(files[path] ?? '')
  let known = faults
  const tried = (next: History): DeskCoach | null => {
    history = next
    const coach = deskCoach({ path, files: given }, history)
    if (!('faults' in coach)) return coach
    known = coach.faults
    return null
  }
  return {
    shown: () => ({
      ...{ file: path, text: textOf(history), faults: known, undo: history.at, redo: history.entries.length - 1 - history.at },
      wanted: wantedBy({ path, files: { ...given, [path]: textOf(history) } }),
    }),
    // a text is one entry as long as it is typed at: the coach's own edits have strokes of their own
    write: (text) => tried(withText(history, text, 'mending')),
    step: (by) => tried(stepped(history, by)),
    give: (more) => {
      given = { ...given, ...more }
      return tried(history)
    },
    files: () => ({ path, files: given }),
  }
}

/** Files a coach extends, or what it extends does, that are not among those it came with. */
export function wantedBy({ path, files }: CoachFiles): readonly string[] {
  const missing = new Set<string>()
  loadFiles(path, files[path] ?? '', (other) => {
    const text = files[other]
    if (text === undefined) missing.add(other)
    return text ?? null
  })
  return [...missing]
}

/**
 * The coach among files somebody chose together, and the files under the paths it asks for them by: a file chosen from a folder
 * says only its name. Null where none of them is whole, the one that no other extends comes first.
 */
export function chosenCoach(chosen: Readonly<Record<string, string>>, known: Readonly<Record<string, string>>): CoachFiles | null {
  const names = Object.keys(chosen)
  const extended = new Set(names.flatMap((name) => wantedBy({ path: name, files: { [name]: chosen[name] } }).map(nameOf)))
  const path = names.find((name) => !extended.has(name)) ?? names[0]
  if (path === undefined) return null
  return { path, files: filled({ path, files: { [path]: chosen[path] } }, chosen, known) }
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1)

/** What a coach wants, from the files chosen by their names, or else from the known ones. */
export function filled(
  { path, files }: CoachFiles,
  chosen: Readonly<Record<string, string>>,
  known: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const byName = new Map([...Object.entries(known), ...Object.entries(chosen)].map(([each, text]) => [nameOf(each), text]))
  let all = files
  for (let wanted = wantedBy({ path, files: all }); ; wanted = wantedBy({ path, files: all })) {
    const more = wanted.flatMap((each) => {
      const text = byName.get(nameOf(each))
      return text === undefined ? [] : [[each, text] as const]
    })
    if (more.length === 0) return all
    all = { ...all, ...Object.fromEntries(more) }
  }
}
