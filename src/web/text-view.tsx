/** The written definition, edited in place; faults stand under it with their line, and lead there. */
import { createEffect, createSignal, For, on } from 'solid-js'
import type { FaultShown } from '../desk/nouns.js'
import { edit, state } from './desk.js'

export function TextView() {
  return (
    <TextEditor
      file={state()?.file ?? ''}
      text={state()?.text}
      faults={state()?.faults ?? []}
      write={(text) => edit({ kind: 'text', text, stroke: 'typing' })}
    />
  )
}

interface Edited {
  readonly file: string
  readonly text: string | undefined
  readonly faults: readonly FaultShown[]
  readonly write: (text: string) => void
}

/** Writes a little after the last key. */
export function TextEditor(props: Edited) {
  let area!: HTMLTextAreaElement
  const [typed, setTyped] = createSignal(props.text ?? '')
  let later: ReturnType<typeof setTimeout> | undefined
  // what comes from elsewhere, a drag or an undo, replaces the text; what was typed comes back the same
  createEffect(
    on(
      () => props.text,
      (text) => {
        if (text !== undefined && document.activeElement !== area) setTyped(text)
      },
    ),
  )
  const write = (text: string): void => {
    setTyped(text)
    clearTimeout(later)
    later = setTimeout(() => props.write(text), 250)
  }
  const goTo = ({ file, line, column }: FaultShown): void => {
    if (file !== props.file) return
    const lines = typed().split('\n')
    const at = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + column - 1
    area.focus()
    area.setSelectionRange(at, at + (lines[line - 1]?.length ?? 0) - column + 1)
    area.scrollTop = Math.max(0, ((line - 8) * area.scrollHeight) / Math.max(1, lines.length))
  }
  return (
    <section class="text" aria-label="Text of the definition">
      <label for="definition">{props.file}</label>
      <textarea
        id="definition"
        ref={area}
        spellcheck={false}
        wrap="off"
        value={typed()}
        onInput={(event) => write(event.currentTarget.value)}
      />
      <ul class="faults" aria-live="polite">
        <For each={props.faults}>
          {(fault) => (
            <li>
              <button type="button" class="link" onClick={() => goTo(fault)}>
                {fault.file === props.file ? '' : `${fault.file} `}line {fault.line}: {fault.says}
              </button>
            </li>
          )}
        </For>
      </ul>
    </section>
  )
}
