/** A file the coach extends, at the line somebody asked for: to be read here, and overridden in the coach's own text. */
import { createEffect, createResource } from 'solid-js'
import type { FieldShown } from '../desk/nouns.js'
import { fileText, state } from './desk.js'
import { askForField } from './field-asked.js'

export function OtherFile(props: { readonly field: FieldShown }) {
  let area!: HTMLTextAreaElement
  const [text] = createResource(() => props.field.file, fileText)
  createEffect(() => {
    const { line, column, length } = props.field
    const whole = text()
    if (!whole) return
    const lines = whole.split('\n')
    const from = lines.slice(0, line - 1).reduce((sum, each) => sum + each.length + 1, 0) + column - 1
    area.value = whole
    area.focus()
    area.setSelectionRange(from, from + (length || (lines[line - 1]?.length ?? 0) - column + 1))
    area.scrollTop = Math.max(0, ((line - 6) * area.scrollHeight) / Math.max(1, lines.length))
  })
  return (
    <div class="other-file">
      <p>
        <label for="other-file">{props.field.file}</label>, line {props.field.line}: {props.field.says}. This coach extends that file. To
        change the figure for this coach alone, write it in {state()?.file}.{' '}
        <button type="button" onClick={() => askForField(null)}>
          Back to the text of the coach
        </button>
      </p>
      <textarea id="other-file" ref={area} readonly spellcheck={false} wrap="off" />
    </div>
  )
}
