/** One box for every question: a place by its address, a thing or a figure by words of its name. */
import { at, type Thing } from '../checks/at/at.js'
import type { Subject } from '../checks/explain/entry.js'
import { explainable } from '../checks/explain/working.js'
import { floorPlace } from '../checks/floor/openings.js'
import type { Design } from '../derive/design.js'
import type { Place } from '../derive/nouns.js'
import { project } from '../documents/drawing/coach-geometry.js'
import { placeWords } from '../documents/drawing/words.js'
import type { Answer } from './nouns.js'

export function answer(subject: Subject, question: string): Answer {
  const asked = question.trim()
  if (asked === '') return { says: 'Ask for a place, a thing or a figure.', at: null, lines: [] }
  const place = at(subject.derived, asked)
  if (!place.ok) return byWords(subject, asked, place.says)
  const { found } = place
  return {
    says: found.place.address,
    at: seenAt(subject.design, found.place),
    lines: [...under('Outside', found.outside), ...under('Through the skin', found.through), ...under('Inside', found.inside)],
  }
}

const under = (head: string, things: readonly Thing[]): readonly string[] => [head, ...things.map((each) => `  ${each.sentence}`)]

/** More than this is a list nobody reads. */
const FOUND = 12

function byWords(subject: Subject, asked: string, otherwise: string): Answer {
  const { design } = subject
  const { market } = design.definition.coach
  const words = asked.toLowerCase().split(/\s+/)
  const has = (text: string): boolean => words.every((word) => text.toLowerCase().includes(word))
  const where = (place: Place): string => placeWords(place, market)
  const floor = (design.under.floor?.openings ?? []).map((each) => ({ ...each, place: floorPlace(each) }))
  const things = [
    ...design.openings.filter((each) => has(`${each.id} ${each.says}`)).map((each) => `${each.id}, ${each.says}: ${where(each.place)}.`),
    ...floor.filter((each) => has(`${each.id} ${each.says}`)).map((each) => `${each.id}, ${each.says}: ${where(each.place)}.`),
    ...design.parts.filter((each) => has(`${each.id} ${each.says}`)).map((each) => `${each.says} (${each.id}): ${where(each.place)}.`),
    ...design.rows
      .filter((each) => has(`${each.id} ${each.says}`))
      .map((each) => `${each.says} (${each.id}): ${each.stacks.map((stack) => `${stack.count} of ${stack.name}`).join(', ')}.`),
    ...design.checks.filter((each) => has(each.says)).map((each) => each.says),
    // what is checked was said above
    ...explainable(subject)
      .filter((each) => !each.id.startsWith('check.') && has(`${each.id} ${each.says}`))
      .map((each) => `${each.says} (${each.id})`),
  ]
  if (things.length === 0) return { says: `Nothing is called "${asked}". ${otherwise}`, at: null, lines: [] }
  const named = [...design.openings, ...floor, ...design.parts].find(({ id }) => id.toLowerCase() === asked.toLowerCase())
  const more = things.length - FOUND
  return {
    says: `${things.length} found`,
    at: named ? seenAt(design, named.place) : null,
    lines: [...things.slice(0, FOUND), ...(more > 0 ? [`and ${more} more: add a word.`] : [])],
  }
}

/** From where a place is seen best, and where it lies on that drawing. */
export function seenAt(design: Design, { side, station, girth, waterline, end, buttock }: Place): Answer['at'] {
  if (end) return { look: end.which, x: end.y, y: waterline }
  if (buttock !== undefined) return { look: 'plan', x: station, y: buttock }
  const [x, y] = project(design, side === 'centre' ? 'plan' : side, station, side === 'left' ? -girth : girth)
  return { look: side === 'centre' ? 'plan' : side, x, y }
}
