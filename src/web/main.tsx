/** The desk in the browser: the elevation across the top, the open sheet below it, the ripple along the foot. */
import { createEffect, createSignal, For, onCleanup, onMount, Show } from 'solid-js'
import { render } from 'solid-js/web'
import { SHEETS } from '../desk/sheets.js'
import { AskBox } from './ask-box.js'
import { ChangeNoteView } from './change-note.js'
import {
  after,
  closed,
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
import { ElevationView } from './elevation.js'
import { fieldAsked } from './field-asked.js'
import { type CoachNamed, coaches } from './files.js'
import { FirstVisit } from './first-visit.js'
import './fonts.css'
import './desk.css'
import './elevation.css'
import './sheet.css'
import './narrow-and-print.css'
import { LookingAt } from './looking-at.js'
import { workOffline } from './offline.js'
import { closeChangeNote, isNoteOpen } from './revisions.js'
import { RippleFoot } from './ripple-foot.js'
import { SheetView } from './sheet.js'
import { TextView } from './text-view.js'
import { choose, dark } from './theme.js'
import { ThingBar } from './thing-bar.js'

const TEXT = 'Text'

function Desk() {
  const [known, setKnown] = createSignal<readonly CoachNamed[]>([])
  const [isText, setText] = createSignal(false)
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
    const found = await coaches().catch(() => [])
    setKnown(found)
    const asked = new URLSearchParams(location.search).get('coach')
    const first = found.find(({ path }) => path === asked) ?? found[0]
    if (first) await open(first.path)
    else setNotice('The desk does not answer. Start it again with npm start, then reload this page.')
    await openSheet(sheetName())
  })
  onCleanup(() => document.removeEventListener('keydown', keys))
  createEffect(() => {
    if (!fieldAsked()) return
    closeChangeNote()
    setText(true)
  })
  return (
    <>
      <header class="head">
        <h1>Coachwright</h1>
        <label>
          Coach
          <select id="coach" onChange={(event) => open(event.currentTarget.value)} value={state()?.file ?? ''}>
            <For each={known()}>{({ path, name }) => <option value={path}>{name}</option>}</For>
          </select>
        </label>
        <span class="revision">revision {state()?.revision ?? '…'}</span>
        <span class="counts" id="counts">
          {state()?.verdicts.fail ?? 0} fail, {state()?.verdicts.caution ?? 0} cautions
        </span>
        <button type="button" onClick={undo} disabled={(state()?.undo ?? 0) === 0}>
          Undo
        </button>
        <button type="button" onClick={redo} disabled={(state()?.redo ?? 0) === 0}>
          Redo
        </button>
        <button type="button" onClick={save} disabled={state()?.text === savedText() || state()?.looking !== null}>
          Save
        </button>
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
      <Show when={closed()}>
        {(faults) => (
          <section class="closed" aria-label="Faults">
            <h2>That coach does not read</h2>
            <ul>
              <For each={faults()}>
                {({ file, line, says }) => (
                  <li>
                    {file}, line {line}: {says}
                  </li>
                )}
              </For>
            </ul>
          </section>
        )}
      </Show>
      <Show when={state()?.faults[0]}>
        {(fault) => (
          <p class="notice fault" role="alert">
            {fault().file}, line {fault().line}: {fault().says} Until that is mended the drawing is of the text before it.{' '}
            <button type="button" onClick={() => setText(true)}>
              Open the text
            </button>
          </p>
        )}
      </Show>
      <LookingAt />
      <FirstVisit />
      <ElevationView />
      <ThingBar />
      <div class="work">
        <nav class="sheets" aria-label="Sheets">
          <ul>
            <For each={[...SHEETS.map(({ name }) => name), TEXT]}>
              {(name) => (
                <li>
                  <button
                    type="button"
                    aria-current={(name === TEXT ? isText() : !isText() && sheetName() === name) ? 'page' : undefined}
                    onClick={() => {
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
        <Show when={!isNoteOpen()} fallback={<ChangeNoteView />}>
          <Show when={!isText()} fallback={<TextView />}>
            <SheetView />
          </Show>
        </Show>
      </div>
      <RippleFoot />
    </>
  )
}

const desk = document.getElementById('desk')
if (!desk) throw new Error('index.html has no element with the id desk')
render(() => <Desk />, desk)
workOffline()
