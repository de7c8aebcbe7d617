/** The desk in the browser: the elevation across the top, the open sheet below it, the ripple along the foot. */
import { createEffect, createSignal, For, onCleanup, onMount, Show } from 'solid-js'
import { render } from 'solid-js/web'
import { SHEETS } from '../desk/sheets.js'
import { AskBox } from './ask-box.js'
import { ChangeNoteView } from './change-note.js'
import {
  after,
  isUnsaved,
  mending,
  notice,
  open,
  openSheet,
  redo,
  save,
  savedText,
  setNotice,
  setUnits,
  sheetName,
  state,
  undo,
  units,
} from './desk.js'
import { door, hasOwnPicture, setDoor } from './door.js'
import { DoorPage, DoorWords } from './doors.js'
import { unsavedCoaches } from './drafts.js'
import { ElevationView } from './elevation.js'
import { fieldAsked } from './field-asked.js'
import { FirstVisit } from './first-visit.js'
import './fonts.css'
import './desk.css'
import './elevation.css'
import './sheet.css'
import './narrow-and-print.css'
import { askKnown, known } from './known.js'
import { LookingAt } from './looking-at.js'
import { MendView } from './mend-view.js'
import { workOffline } from './offline.js'
import { closeChangeNote, isNoteOpen } from './revisions.js'
import { RippleFoot } from './ripple-foot.js'
import { SaveAs } from './save-as.js'
import { SheetView } from './sheet.js'
import { TextView } from './text-view.js'
import { choose, dark } from './theme.js'
import { ThingBar } from './thing-bar.js'
import { TwoWindows, takeUpDraft } from './two-windows.js'

const TEXT = 'Text'

function Desk() {
  const [isText, setText] = createSignal(false)
  const openAnew = async (path: string): Promise<void> => {
    await open(path)
    await takeUpDraft()
  }
  const keys = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement) return
    const key = event.key.toLowerCase()
    if (key === 'z') event.shiftKey ? redo() : undo()
    else if (key === 'y') redo()
    else if (key === 's') save()
    else return
    event.preventDefault()
  }
  onMount(async () => {
    document.addEventListener('keydown', keys)
    const found = await askKnown()
    const asked = new URLSearchParams(location.search).get('coach')
    const first = found.find(({ path }) => path === asked) ?? found[0]
    if (first) await openAnew(first.path)
    else setNotice('The desk does not answer. Start it again with npm start, then reload this page.')
    await openSheet(sheetName())
    const left = unsavedCoaches().length
    if (left > 0 && !notice())
      setNotice(
        `${left === 1 ? 'A coach that was never saved is' : `${left} coaches that were never saved are`} kept in this browser: see Files.`,
      )
  })
  onCleanup(() => document.removeEventListener('keydown', keys))
  createEffect(() => {
    if (!fieldAsked()) return
    closeChangeNote()
    setDoor(null)
    setText(true)
  })
  return (
    <>
      <header class="head">
        <h1>Coachwright</h1>
        <label>
          Coach
          <select id="coach" onChange={(event) => openAnew(event.currentTarget.value)}>
            <For each={known()}>
              {({ path, name }) => (
                <option value={path} selected={path === (state() ?? mending())?.file && !isUnsaved()}>
                  {name}
                </option>
              )}
            </For>
            <Show when={isUnsaved() && (state() ?? mending())}>
              {(now) => (
                <option value={now().file} selected>
                  {state()?.name ?? now().file}, not saved
                </option>
              )}
            </Show>
          </select>
        </label>
        <span class="revision">revision {state()?.revision ?? '…'}</span>
        <span class="counts" id="counts">
          <Show when={state()?.verdicts} fallback={state() ? 'not judged yet' : '… fail, … cautions'}>
            {(verdicts) => (
              <>
                {verdicts().fail} fail, {verdicts().caution} cautions
              </>
            )}
          </Show>
        </span>
        <button type="button" onClick={undo} disabled={((state() ?? mending())?.undo ?? 0) === 0}>
          Undo
        </button>
        <button type="button" onClick={redo} disabled={((state() ?? mending())?.redo ?? 0) === 0}>
          Redo
        </button>
        <button type="button" onClick={save} disabled={!state() || state()?.text === savedText() || state()?.looking !== null}>
          Save
        </button>
        <DoorWords />
        <span class="gap" />
        <button
          type="button"
          aria-pressed={units() === 'inch'}
          onClick={() => {
            setUnits(units() === 'inch' ? 'metric' : 'inch')
            after()
          }}
        >
          Inch
        </button>
        <button type="button" aria-pressed={dark()} onClick={() => choose(!dark())}>
          Dark
        </button>
        <AskBox />
      </header>
      <Show when={notice()}>
        {(says) => (
          <p class="notice" role="status">
            {says()}{' '}
            <button type="button" onClick={() => setNotice(null)}>
              Close
            </button>
          </p>
        )}
      </Show>
      <SaveAs />
      <TwoWindows />
      <Show when={state()?.faults[0]}>
        {(fault) => (
          <p class="notice fault" role="alert">
            {fault().file}, line {fault().line}: {fault().says} Until that is mended the drawing is of the text before it.{' '}
            <button
              type="button"
              onClick={() => {
                setDoor(null)
                setText(true)
              }}
            >
              Open the text
            </button>
          </p>
        )}
      </Show>
      <LookingAt />
      <FirstVisit />
      <Show when={!mending() && !hasOwnPicture()}>
        <ElevationView />
        <ThingBar />
      </Show>
      <div class="work">
        <nav class="sheets" aria-label="Sheets">
          <ul>
            <For each={[...SHEETS.map(({ name }) => name), TEXT]}>
              {(name) => (
                <li>
                  <button
                    type="button"
                    aria-current={!door() && (name === TEXT ? isText() : !isText() && sheetName() === name) ? 'page' : undefined}
                    onClick={() => {
                      setDoor(null)
                      setText(name === TEXT)
                      closeChangeNote()
                      if (name !== TEXT) openSheet(name)
                    }}
                  >
                    {name}
                  </button>
                </li>
              )}
            </For>
          </ul>
        </nav>
        <Show when={!door()} fallback={<DoorPage />}>
          <Show when={!mending()} fallback={<MendView />}>
            <Show when={!isNoteOpen()} fallback={<ChangeNoteView />}>
              <Show when={!isText()} fallback={<TextView />}>
                <SheetView />
              </Show>
            </Show>
          </Show>
        </Show>
      </div>
      <Show when={!mending()}>
        <RippleFoot />
      </Show>
    </>
  )
}

const desk = document.getElementById('desk')
if (!desk) throw new Error('index.html has no element with the id desk')
render(() => <Desk />, desk)
workOffline()
