/** Random edits through the commands the screen uses: nothing throws, nothing is not a number, and undo leads back to the first text. */
import { expect, it } from 'vitest'
import { count } from '../../tests/counts.js'
import { exampleFiles } from '../../tests/examples.js'
import { type Chance, chance } from '../../tests/random.js'
import { deskCoach } from './desk-coach.js'
import type { DeskCoach } from './desk-coach-nouns.js'
import type { Edit, Look } from './nouns.js'

const LOOKS: readonly Look[] = ['right', 'left', 'plan', 'nose', 'tail']

function opened(): DeskCoach {
  const coach = deskCoach(exampleFiles('sedge-4'))
  if ('faults' in coach) throw new Error(coach.faults[0]?.says)
  return coach
}

/** What a hand does: a small move, a great one, a figure typed, a word gone from the text. */
function anEdit(c: Chance, coach: DeskCoach): Edit {
  const { openings, frames, gear, shell, chassis, masses } = coach.design().definition
  const { text } = coach.state()
  const ids = [
    ...openings.map((each) => each.id),
    ...frames.map((each) => each.id),
    ...(gear?.spindles ?? []).map((_, i) => `axle-${i + 1}`),
    ...shell.seams.map((each) => each.id),
    ...(chassis?.bays ?? []).map((each) => each.id),
    ...masses.slice(0, 12).map((_, i) => `item-${5 * i + 1}`),
  ]
  const maybe = (from: number, to: number): number | null => (c.maybe(0.5) ? c.between(from, to) : null)
  const snap = { reach: c.between(0, 0.1), units: c.maybe(0.3) ? 'inch' : 'metric' } as const
  const size = (from: number, to: number): string => `${c.between(from, to).toFixed(1)} mm`
  return c.pick<() => Edit>([
    () => ({ kind: 'move', id: c.pick(ids), station: c.between(2, 7), waterline: c.maybe(0.5) ? c.between(-0.5, 2.5) : null }),
    () => ({ kind: 'move', id: c.pick(ids), station: c.between(4, 4.4), waterline: null, stroke: `stroke ${c.whole(1, 2)}` }),
    () => ({ kind: 'set', steps: ['openings', { id: c.pick(openings).id }, c.pick(['width', 'height', 'corner'])], value: size(-20, 900) }),
    () => ({ kind: 'nudge', id: c.pick(ids), along: c.between(-0.03, 0.03), up: c.between(-0.03, 0.03) }),
    () => ({ kind: 'set', steps: ['shell', 'seams'], value: 'none' }),
    () => ({ kind: 'move', id: c.pick(ids), station: maybe(2.5, 6), waterline: maybe(0, 2), across: maybe(-1, 1), snap, stroke: 'drawn' }),
    () => ({
      kind: 'size',
      id: c.pick(openings).id,
      fore: maybe(2, 7),
      aft: maybe(2, 7),
      low: maybe(-1, 2),
      high: maybe(-1, 2),
      snap,
      stroke: 'pulled',
    }),
    () => ({ kind: 'set', steps: ['openings', { id: c.pick(openings).id }, 'surface'], value: c.pick(['C', 'R', 'roof']) }),
    () => ({ kind: 'nudge', id: c.pick(ids), along: c.between(-0.03, 0.03), up: 0, across: c.between(-0.03, 0.03) }),
    () => ({ kind: 'text', text: text.replace(c.pick(['mm', 'kg', ':', 'id', ']']), c.pick(['', 'in', '  ', '#'])) }),
  ])()
}

it('never breaks the desk, and is undone to the last character', () => {
  const coach = opened()
  const first = coach.state()
  const sequences = Math.min(1000, count(200))
  let took = 0
  for (let seed = 1; seed <= sequences; seed++) {
    const c = chance(seed)
    for (let n = c.whole(1, 4); n > 0; n--) {
      const edit = anEdit(c, coach)
      const refused = (edit.kind === 'move' || edit.kind === 'size') && edit.stroke ? coach.preview(edit) : coach.edit(edit)
      if (refused === null) took++
      else expect(refused, `seed ${seed}`).toMatch(/[.?]$/)
    }
    // what reads is derived
    for (const { says } of coach.state().faults) expect(says, `seed ${seed}`).not.toContain('cannot be derived')
    const { drawn, rivets } = coach.elevation(c.pick(LOOKS))
    for (const { points } of drawn) for (const v of points) if (!Number.isFinite(v)) throw new Error(`seed ${seed} draws ${v}`)
    for (const v of rivets) if (!Number.isFinite(v)) throw new Error(`seed ${seed} draws a rivet at ${v}`)
    coach.settle()
    while (coach.state().undo > 0) coach.undo()
    expect(coach.state(), `seed ${seed}`).toMatchObject({ text: first.text, revision: first.revision, faults: [] })
  }
  expect(took).toBeGreaterThan(sequences / 2)
})
