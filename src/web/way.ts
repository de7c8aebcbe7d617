/** The way from the figure that was opened to the one that is read now: each stays open to go back to. */
import { createSignal } from 'solid-js'
import { openWorking, setWorking, working } from './desk.js'

interface Step {
  readonly id: string
  readonly says: string
}

interface Way {
  readonly root: string
  readonly steps: readonly Step[]
  /** what is read, and what was read while that is on its way */
  readonly ids: readonly string[]
}

const [way, setWay] = createSignal<Way | null>(null)

/** None where a figure was opened by itself since. */
function taken(): Way | null {
  const id = working()?.id
  const now = way()
  return now && id !== undefined && now.ids.includes(id) ? now : null
}

export const stepsBack = (): readonly Step[] => taken()?.steps ?? []

/** The figure the note stands beside. */
export const noteAt = (): string | null => taken()?.root ?? working()?.id ?? null

/** Opens a figure, or closes it where it is open. */
export function openNote(id: string): void {
  const isOpen = noteAt() === id
  setWay(null)
  if (isOpen) setWorking(null)
  else openWorking(id)
}

export async function follow(id: string): Promise<void> {
  const from = working()
  const root = noteAt()
  if (!from || root === null) return
  setWay({ root, steps: [...stepsBack(), { id: from.id, says: from.says }], ids: [from.id, id] })
  await openWorking(id)
}

export async function goBack(to: number): Promise<void> {
  const from = working()
  const root = noteAt()
  const steps = stepsBack()
  if (!from || root === null || !steps[to]) return
  setWay({ root, steps: steps.slice(0, to), ids: [from.id, steps[to].id] })
  await openWorking(steps[to].id)
}

export function closeNote(): void {
  setWay(null)
  setWorking(null)
}
