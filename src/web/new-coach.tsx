/** Begins a coach: a family and a length, or one's own section and a length. */
import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js'
import { type Family, patternFor } from '../desk/new-coach/families.js'
import { sectionShown, type TypedSection } from '../desk/new-coach/own-section.js'
import type { Started } from '../desk/new-coach/start-coach.js'
import { parseQuantity } from '../quantity/doors.js'
import { openedFiles, setNotice, state, take, worker } from './desk.js'
import { setDoor } from './door.js'
import { openCoach } from './files.js'
import { known } from './known.js'
import { Field, SectionForm, SectionPicture } from './section-form.js'

/** A handful of arcs to begin with: every figure is there to be typed over. */
const FIRST: TypedSection = {
  crown: '1980 mm',
  width: '',
  height: '2180 mm',
  pieces: [
    { name: 'roof', kind: 'arc', radius: '3000 mm', to: '14 deg', length: '' },
    { name: 'shoulder', kind: 'arc', radius: '400 mm', to: '82 deg', length: '' },
    { name: 'side', kind: 'arc', radius: '7000 mm', to: '95 deg', length: '' },
    { name: 'turn-under', kind: 'arc', radius: '400 mm', to: 'fit', length: '' },
  ],
}

const [families, setFamilies] = createSignal<readonly Family[]>([])
const [typed, setTyped] = createSignal(FIRST)
const [isOwn, setOwn] = createSignal(false)
const [name, setName] = createSignal('')
const [length, setLength] = createSignal('')
const [chosen, setChosen] = createSignal(0)

let asked = 0

/** What the desk's coaches stand on, and the one that is open. */
async function askFamilies(list: ReturnType<typeof known>): Promise<void> {
  const own = ++asked
  const all = await Promise.all(list.map(({ path }) => openCoach(path)))
  const coaches = all.flatMap((each) => (typeof each === 'string' ? [] : [{ path: each.path, files: each.files }]))
  const now = state()
  if (now && !coaches.some(({ path }) => path === now.file))
    coaches.push({ path: now.file, files: { ...openedFiles(), [now.file]: now.text } })
  const found = await worker.families(coaches)
  if (own === asked) setFamilies(found)
}

export function NewCoach() {
  const [isBusy, setBusy] = createSignal(false)
  const [refused, setRefused] = createSignal<readonly string[]>([])
  // whoever is quick is here before the desk has read its own coach or heard of the others
  createEffect(on([known, () => state()?.file], ([list]) => void askFamilies(list)))
  const family = createMemo((): Family | undefined => families()[chosen()])
  const shown = createMemo(() => sectionShown(typed()))
  const picture = createMemo(() => (isOwn() ? shown() : family()?.section))
  const metres = createMemo(() => {
    const text = length().trim()
    const read = parseQuantity(/[a-z"'′″]$/i.test(text) ? text : `${text} mm`, 'length')
    return read.ok ? { m: read.value, says: undefined } : { m: null, says: text === '' ? undefined : read.says }
  })
  const range = (): string => {
    const of = family()
    return of ? `${(of.shortest * 1000).toFixed(0)} to ${(of.longest * 1000).toFixed(0)} mm` : ''
  }
  const lengthFault = createMemo(() => {
    const { m, says } = metres()
    const of = family()
    if (m === null || !of) return says
    return m < of.shortest || m > of.longest
      ? `Between ${range()}: shorter has no room for door and axle, longer no sheet or board.`
      : undefined
  })
  // the length of the member in the middle, until somebody says another
  createEffect(() => {
    const members = family()?.members ?? []
    if (length() === '' && members.length > 0) setLength(`${(members[Math.floor(members.length / 2)].length * 1000).toFixed(0)} mm`)
  })
  const isReady = (): boolean =>
    !isBusy() &&
    family() !== undefined &&
    name().trim() !== '' &&
    metres().m !== null &&
    lengthFault() === undefined &&
    (!isOwn() || shown().section !== null)
  const start = async (event: Event): Promise<void> => {
    event.preventDefault()
    const [of, m] = [family(), metres().m]
    if (!of || m === null || !isReady()) return
    setBusy(true)
    try {
      const pattern = patternFor(of, m)
      const started = await worker.start(pattern.path, { name: name().trim(), length: m, section: isOwn() ? shown().section : null })
      await opened(started)
    } finally {
      setBusy(false)
    }
  }
  const opened = async (started: Started | null): Promise<void> => {
    if (!started) return
    setRefused(started.faults.map(({ says }) => says))
    if (started.faults.length > 0) return
    await take({ path: started.path, files: started.files }, null)
    setDoor(null)
    setNotice(`${name().trim()} is begun: ${started.says[0]} It is kept in this browser until you save it.`)
    setName('')
  }
  return (
    <form class="new-coach" onSubmit={start}>
      <section class="column">
        <h2>New coach</h2>
        <div class="fields">
          <Field says="Name" id="new-name" value={name()} fault={undefined} put={setName} />
          <span class="field">
            <label>
              Family
              <select id="new-family" onChange={(event) => setChosen(event.currentTarget.selectedIndex)}>
                <For each={families()}>{(each) => <option>{each.name}</option>}</For>
              </select>
            </label>
          </span>
          <Field says="Length, nose to tail" id="new-length" value={length()} fault={lengthFault()} put={setLength} />
        </div>
        <Show when={family()} fallback={<p class="faint">The families of this desk are being read.</p>}>
          {(of) => (
            <p class="faint">
              {range()}. Sheets, fasteners and rules are the family's; furniture, tanks and axles those of{' '}
              {patternFor(of(), metres().m ?? 0).name}, moved along.
            </p>
          )}
        </Show>
        <fieldset>
          <legend>Section</legend>
          <label>
            <input type="radio" name="section" checked={!isOwn()} onChange={() => setOwn(false)} /> the family's
          </label>{' '}
          <label>
            <input type="radio" name="section" id="own" checked={isOwn()} onChange={() => setOwn(true)} /> one's own
          </label>
        </fieldset>
        <Show when={isOwn()}>
          <SectionForm typed={typed()} shown={shown()} change={setTyped} />
        </Show>
        <div class="bar">
          <button type="submit" id="start" disabled={!isReady()}>
            Start
          </button>
          <span role="status">{isBusy() ? 'It is being laid out …' : ''}</span>
        </div>
        <ul class="faults" aria-live="polite">
          <For each={refused()}>{(says) => <li class="fault">{says}</li>}</For>
        </ul>
      </section>
      <section class="column picture" aria-label="Picture of the section">
        <Show when={picture()}>
          {(drawn) => (
            <>
              <SectionPicture shown={drawn()} />
              <ul>
                <For each={drawn().says}>{(says) => <li>{says}</li>}</For>
              </ul>
            </>
          )}
        </Show>
      </section>
    </form>
  )
}
