/** Dark or light: as the machine has it until somebody chooses. */
import { createSignal } from 'solid-js'

const asked = matchMedia('(prefers-color-scheme: dark)')
const kept = localStorage.getItem('theme')
const [isDark, setDark] = createSignal(kept === null ? asked.matches : kept === 'dark')

export const dark = isDark

function turn(toDark: boolean): void {
  // the inks are read off the page by whoever paints when this is told
  document.documentElement.dataset.theme = toDark ? 'dark' : 'light'
  setDark(toDark)
}

export function choose(toDark: boolean): void {
  localStorage.setItem('theme', toDark ? 'dark' : 'light')
  turn(toDark)
}

turn(isDark())
asked.addEventListener('change', ({ matches }) => {
  if (localStorage.getItem('theme') === null) turn(matches)
})
