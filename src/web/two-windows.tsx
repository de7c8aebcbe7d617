/** Two windows on one coach: each hears what the other does, and the person chooses; nobody's text is lost or written over unseen. */
import { createSignal, For, Show } from 'solid-js'
import type { Differs } from '../desk/other-text.js'
import {
  countFrom,
  isUnsaved,
  mending,
  overtaken,
  savedAs,
  savedText,
  setNotice,
  setOvertaken,
  state,
  units,
  worker,
  writeText,
} from './desk.js'
import { draftsOf, dropDraft } from './drafts.js'
import { saveCoach } from './files.js'
import { hear, me, tell, windowsOn } from './window-talk.js'

/** Another window's text of the coach that is open here; `stamp` where it is on the disk. */
interface Theirs {
  readonly from: string
  readonly text: string
  readonly stamp: string | null
}

const [theirs, setTheirs] = createSignal<Theirs | null>(null)
const [differs, setDiffers] = createSignal<Differs | null>(null)
/** windows whose edits were looked at and left; what they save is said all the same */
const left = new Set<string>()

const openHere = (): { readonly file: string; readonly text: string } | null => state() ?? mending()

hear(({ kind, path, text, stamp, from }) => {
  const here = openHere()
  if (here?.file !== path) return
  if (kind === 'who') tell({ kind: 'here', path, text: here.text, stamp: null })
  else if (kind === 'saved' && stamp !== null) heardSaved(from, text, stamp, here.text)
  else if (text === here.text || text === savedText()) {
    if (theirs()?.from === from) forget()
  } else if (!left.has(from)) setTheirs({ from, text, stamp: null })
})

function heardSaved(from: string, text: string, stamp: string, mine: string): void {
  left.delete(from)
  if (text !== mine) {
    setTheirs({ from, text, stamp })
    return
  }
  countFrom(text, stamp)
  dropDraft(openHere()?.file ?? '')
  forget()
}

function forget(): void {
  setTheirs(null)
  setDiffers(null)
  setOvertaken(null)
}

/** Takes up what was left here of a coach that has just been opened, and asks who else has it open. */
export async function takeUpDraft(): Promise<void> {
  const here = openHere()
  if (!here) return
  const { file, text } = here
  forget()
  left.clear()
  const alive = await windowsOn(file)
  const [latest] = draftsOf(file).filter(({ by }) => by !== me && !alive.has(by))
  if (!latest || openHere()?.file !== file || openHere()?.text !== text) return
  // an older draft of a window that is gone stays, and is taken up when this one is done with
  dropDraft(file, latest.by)
  if (latest.text === text) return
  await writeText(latest.text)
  setNotice('Your draft of this coach was taken up again. Undo leads back to the file.')
}

async function takeTheirs({ text, stamp }: Pick<Theirs, 'text' | 'stamp'>): Promise<void> {
  if (stamp !== null) countFrom(text, stamp)
  forget()
  await writeText(text)
  setNotice('Their text is taken. Undo leads back to yours.')
}

function keepMine(): void {
  const other = theirs()
  if (other) left.add(other.from)
  setNotice(
    other?.stamp
      ? 'Yours is kept here. Saving it will ask once more, since the file has their text now.'
      : 'Yours is kept here, theirs in the other window. Who saves second is asked.',
  )
  forget()
}

async function saveOver(stamp: string): Promise<void> {
  const here = state()
  if (!here) return
  const saved = await saveCoach(here.file, here.text, stamp)
  if (saved.ok) savedAs(here.file, here.text, saved.stamp)
  else if (saved.theirs) setOvertaken(saved.theirs)
  else setNotice(saved.says)
  if (saved.ok) forget()
}

export function TwoWindows() {
  const other = (): Pick<Theirs, 'text' | 'stamp'> | null => overtaken() ?? theirs()
  const says = (): string => {
    const name = openHere()?.file ?? ''
    if (overtaken()) return `${name} was saved elsewhere since it was opened here, so nothing was saved yet. Your text is kept here.`
    if (theirs()?.stamp) return `${name} was saved in another window, with a text that is not the one here.`
    return isUnsaved()
      ? 'This coach is open in another window too, and the two texts differ.'
      : `${name} is being edited in another window too, and the two texts differ.`
  }
  return (
    <Show when={other()}>
      {(choice) => (
        <section class="notice choices" role="alert" aria-label="Another text of this coach">
          <p>{says()}</p>
          <div class="bar">
            <button type="button" onClick={() => takeTheirs(choice())}>
              Take theirs
            </button>
            <Show
              when={overtaken()}
              fallback={
                <button type="button" onClick={keepMine}>
                  Keep mine
                </button>
              }
            >
              {(disk) => (
                <button type="button" onClick={() => saveOver(disk().stamp)}>
                  Keep mine, and save it over theirs
                </button>
              )}
            </Show>
            <Show when={state()}>
              <button type="button" onClick={async () => setDiffers(differs() ? null : await worker.differs(choice().text, units()))}>
                {differs() ? 'Close what differs' : 'See what differs'}
              </button>
            </Show>
          </div>
          <Show when={differs()}>
            {(told) => (
              <section class="differs" aria-label="What differs" tabindex="0">
                <p>{told().line} Read from theirs to yours:</p>
                <For each={told().lines}>{(line) => (line.startsWith(' ') ? <p>{line.trim()}</p> : <h3>{line}</h3>)}</For>
              </section>
            )}
          </Show>
        </section>
      )}
    </Show>
  )
}
