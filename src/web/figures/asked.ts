/** Live figures asked of the worker: again after every edit, when the sheet has come, and whenever what is asked for changes. */
import { type Accessor, createEffect, createSignal, onCleanup } from 'solid-js'
import type { Figures } from '../../desk/figures/figures.js'
import { askFigure, setNotice, sheet } from '../desk.js'

export const figure = <K extends keyof Figures>(name: K, ...asked: Parameters<Figures[K]>): Promise<ReturnType<Figures[K]>> =>
  askFigure(name, asked) as Promise<ReturnType<Figures[K]>>

/** The last answer that came; null before the first. `ask` reads what it asks with at once. */
export function createAsked<T>(ask: () => Promise<T> | null): Accessor<T | null> {
  const [shown, setShown] = createSignal<T | null>(null)
  let latest = 0
  createEffect(() => {
    if (!sheet()) return
    const mine = ++latest
    ask()?.then(
      (found) => {
        if (mine === latest) setShown(() => found)
      },
      (reason) => setNotice(`This figure could not be drawn, which is a fault of the program: ${reason}`),
    )
  })
  onCleanup(() => latest++)
  return shown
}

/** What a figure could not be drawn for, in its sentence; null where it could. */
export const missing = (shown: object | null): string | null =>
  shown && 'notComputed' in shown ? String((shown as { readonly notComputed: string }).notComputed) : null

/** The figure itself, where there is one. */
export const drawn = <T extends object>(shown: T | { readonly notComputed: string } | null): T | null =>
  shown && !('notComputed' in shown) ? (shown as T) : null
