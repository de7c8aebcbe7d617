/** One's own section as it is typed, a row for each arc, with its picture and what is wrong beside each field. */
import { createMemo, For, Show } from 'solid-js'
import type { SectionShown, TypedPiece, TypedSection } from '../desk/new-coach/own-section.js'

interface Form {
  readonly typed: TypedSection
  readonly shown: SectionShown
  readonly change: (typed: TypedSection) => void
}

export function SectionForm(props: Form) {
  const put = (i: number, over: Partial<TypedPiece>): void =>
    props.change({ ...props.typed, pieces: props.typed.pieces.map((piece, k) => (k === i ? { ...piece, ...over } : piece)) })
  const count = createMemo(() => props.typed.pieces.length)
  const add = (kind: 'arc' | 'line'): void =>
    props.change({ ...props.typed, pieces: [...props.typed.pieces, { name: '', kind, radius: '', to: '', length: '' }] })
  return (
    <div class="own-section">
      <p class="faint">
        Half of it, from the crown down. Headings: 0 deg level outboard, 90 deg straight down. A figure alone is in mm or degrees; fit
        leaves one value to be solved for a size.
      </p>
      <div class="fields">
        <Field
          says="Crown over the floor"
          id="crown"
          value={props.typed.crown}
          fault={props.shown.faults.crown}
          put={(crown) => props.change({ ...props.typed, crown })}
        />
        <Field
          says="Width, if it must be"
          id="width"
          value={props.typed.width}
          fault={props.shown.faults.width}
          put={(width) => props.change({ ...props.typed, width })}
        />
        <Field
          says="Crown to toe, if it must be"
          id="height"
          value={props.typed.height}
          fault={props.shown.faults.height}
          put={(height) => props.change({ ...props.typed, height })}
        />
      </div>
      <ol class="pieces">
        {/* by number and not by value: a row that is typed in is the same row after each key */}
        <For each={Array.from({ length: count() }, (_, i) => i)}>
          {(i) => {
            const piece = (): TypedPiece => props.typed.pieces[i] ?? { name: '', kind: 'arc', radius: '', to: '', length: '' }
            const fault = (key: string): string | undefined => props.shown.faults[`pieces ${i} ${key}`]
            return (
              <li class="fields">
                <Field
                  says={piece().kind === 'arc' ? 'Arc' : 'Straight'}
                  id={`name-${i}`}
                  value={piece().name}
                  fault={fault('name')}
                  put={(name) => put(i, { name })}
                />
                <Show
                  when={piece().kind === 'arc'}
                  fallback={
                    <Field
                      says="length"
                      id={`length-${i}`}
                      value={piece().length}
                      fault={fault('length')}
                      put={(length) => put(i, { length })}
                    />
                  }
                >
                  <Field
                    says="radius"
                    id={`radius-${i}`}
                    value={piece().radius}
                    fault={fault('radius')}
                    put={(radius) => put(i, { radius })}
                  />
                  <Field says="to heading" id={`to-${i}`} value={piece().to} fault={fault('to')} put={(to) => put(i, { to })} />
                </Show>
                <button
                  type="button"
                  aria-label={`Take out ${piece().name || `piece ${i + 1}`}`}
                  onClick={() => props.change({ ...props.typed, pieces: props.typed.pieces.filter((_, k) => k !== i) })}
                >
                  Take out
                </button>
              </li>
            )
          }}
        </For>
      </ol>
      <button type="button" onClick={() => add('arc')}>
        One more arc
      </button>{' '}
      <button type="button" onClick={() => add('line')}>
        One more straight
      </button>
    </div>
  )
}

interface FieldShown {
  readonly says: string
  readonly id: string
  readonly value: string
  readonly fault: string | undefined
  readonly put: (value: string) => void
}

/** A field with its fault beside it, read out together. */
export function Field(props: FieldShown) {
  return (
    <span class="field">
      <label>
        {props.says}
        <input
          id={props.id}
          value={props.value}
          autocomplete="off"
          spellcheck={false}
          aria-invalid={props.fault !== undefined}
          aria-describedby={`${props.id}-fault`}
          onInput={(event) => props.put(event.currentTarget.value)}
        />
      </label>
      <span class="fault" id={`${props.id}-fault`}>
        {props.fault}
      </span>
    </span>
  )
}

/** Both sides, floor line and the places where pieces meet, to one scale. */
export function SectionPicture(props: { readonly shown: Pick<SectionShown, 'points' | 'joints' | 'says'> }) {
  const box = createMemo(() => {
    const [ys, zs] = [props.shown.points.map(([y]) => y), props.shown.points.map(([, z]) => z)]
    const [half, top, foot] = [Math.max(...ys), Math.max(...zs), Math.min(...zs, 0)]
    return { half, top, foot, room: 0.06 * (2 * half) }
  })
  const round = (m: number): string => (m * 1000).toFixed(1)
  return (
    <Show when={props.shown.points.length > 0} fallback={<p class="faint">The picture comes when every field reads.</p>}>
      <svg
        class="section-picture"
        role="img"
        aria-label={props.shown.says.join(' ') || 'The section as far as it can be drawn'}
        viewBox={`${round(-box().half - box().room)} ${round(-box().top - box().room)} ${round(2 * (box().half + box().room))} ${round(box().top - box().foot + 2 * box().room)}`}
      >
        <line class="floor-line" x1={round(-box().half - box().room)} x2={round(box().half + box().room)} y1="0" y2="0" />
        <polyline class="skin" points={props.shown.points.map(([y, z]) => `${round(y)},${round(-z)}`).join(' ')} />
        <For each={props.shown.joints}>{([y, z]) => <circle class="joint" cx={round(y)} cy={round(-z)} r="14" />}</For>
      </svg>
    </Show>
  )
}
