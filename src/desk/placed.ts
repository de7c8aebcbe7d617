/**
 * Things that are put somewhere else or made another size: what a drag, a nudge or a typed station comes to, and the same in
 * the text and in the definition. In a drag only the definition is changed; where it ends the text is, and what is read from
 * that counts.
 */
import { setInText } from '../definition/set-in-text.js'
import type { Definition, OpeningDefinition } from '../definition/types.js'
import type { MoveEdit, NudgeEdit, SizeEdit } from './nouns.js'
import { type IsWritten, type Place, tenth, type Value, writtenThing } from './written-things.js'

export interface Placed {
  readonly values: readonly Value[]
  readonly definition: Definition
}

export type HandEdit = MoveEdit | NudgeEdit | SizeEdit

/** Null for what cannot be moved, or has no size of its own. To the tenth of a millimetre, as a tape says it. */
export function placedBy(definition: Definition, edit: HandEdit, isWritten: IsWritten = () => false): Placed | null {
  if (edit.kind === 'size') return sizedBy(definition, edit)
  const thing = writtenThing(definition, edit.id)
  if (!thing) return null
  const to = edit.kind === 'nudge' ? nudged(thing.place, edit) : moved(thing.place, edit)
  return { values: thing.values(to, isWritten), definition: thing.moved(to, isWritten) }
}

const moved = (was: Place, { station, waterline, across = null }: MoveEdit): Place => ({
  station: to(was.station, station),
  waterline: to(was.waterline, waterline),
  across: to(was.across, across),
})

const nudged = (was: Place, { along, up, across = 0 }: NudgeEdit): Place => ({
  station: was.station && tenth(was.station + along),
  waterline: was.waterline === null ? null : tenth(was.waterline + up),
  across: was.across === null ? null : tenth(was.across + across),
})

/** What a thing has none of it gets none of; what is not said stays. */
const to = (was: number | null, is: number | null): number | null => (was === null || is === null ? was : onTape(is))

/** Smaller than this nobody cuts, m. */
const LEAST = 0.02

/** An edge pulled leaves the one across from it where it is. No smaller than its own corners leave room for. */
function sizedBy(definition: Definition, { id, fore, aft, low, high }: SizeEdit): Placed | null {
  const opening = definition.openings.find((each) => each.id === id)
  if (!opening) return null
  const least = Math.max(LEAST, 2 * opening.corner)
  const isRoof = opening.surface === 'roof'
  const along = pulled(opening.station, opening.width, fore, aft, least)
  const up = pulled((isRoof ? opening.girth : opening.waterline) ?? 0, opening.height, low, high, least)
  const next: OpeningDefinition = {
    ...opening,
    ...{ station: along.middle, width: along.size, height: up.size },
    ...(isRoof ? { girth: up.middle } : { waterline: up.middle }),
  }
  const keys = { station: 'station', width: 'width', waterline: 'wl', girth: 'girth', height: 'height' } as const
  const values = (Object.keys(keys) as (keyof typeof keys)[]).flatMap((key): Value[] => {
    const [was, is] = [opening[key], next[key]]
    return is !== null && was !== null && Math.abs(is - was) > 1e-9 ? [{ steps: ['openings', { id }, keys[key]], metres: is }] : []
  })
  return { values, definition: { ...definition, openings: definition.openings.map((each) => (each === opening ? next : each)) } }
}

function pulled(
  middle: number,
  size: number,
  first: number | null,
  last: number | null,
  least: number,
): { readonly middle: number; readonly size: number } {
  if (first === null && last === null) return { middle, size }
  const [a, b] = [middle - size / 2, middle + size / 2]
  const [from, until] = first === null ? [a, Math.max(last ?? b, a + least)] : [Math.min(first, (last ?? b) - least), last ?? b]
  // a whole tenth for the size, so that the middle, half of it away from the edge that stays, is what a tape can say as well
  const whole = 2 * tenth((until - from) / 2)
  return { middle: tenth(first === null ? a + whole / 2 : b - whole / 2), size: tenth(whole) }
}

const EIGHTH = 0.0254 / 8

/** Whole eighths of an inch stay what they are; everything else is a tenth of a millimetre. */
const onTape = (m: number): number => (isEighth(m) ? m : tenth(m))
const isEighth = (m: number): boolean => Math.abs(m / EIGHTH - Math.round(m / EIGHTH)) < 1e-6

/** The text with those values; throws a sentence's beginning where it cannot be written there. */
export const inText = (text: string, { values }: Placed): string =>
  values.reduce((now, { steps, metres }) => setInText(now, steps, onPaper(metres)), text)

function onPaper(m: number): string {
  if (Math.abs(m - tenth(m)) < 1e-9 || !isEighth(m)) return `${Number((m * 1000).toFixed(1))} mm`
  const [sign, eighths] = [m < 0 ? '-' : '', Math.abs(Math.round(m / EIGHTH))]
  const [whole, left] = [Math.floor(eighths / 8), eighths % 8]
  const by = left % 4 === 0 ? 4 : left % 2 === 0 ? 2 : 1
  return left === 0 ? `${sign}${whole} in` : `${sign}${whole === 0 ? '' : `${whole} `}${left / by}/${8 / by} in`
}
