/** Where a line of a ripple leads: what to choose or light up on the elevation, and the sheet, document, working or field to open. */
import { pathOf } from '../definition/set-in-text.js'
import { child, idOf, type Written } from '../definition/written.js'
import type { Design } from '../derive/design.js'
import type { FastenerRow, Place } from '../derive/nouns.js'
import type { PlannedDocument } from '../documents/packet/planned.js'
import type { Target } from '../ripple/line.js'
import { seenAt } from './answer.js'
import { fieldAt } from './field-shown.js'
import type { Go } from './nouns.js'
import { isUnder, SHEETS } from './sheets.js'

/** What is looked at now, what was before, and the papers and the text there are. */
export interface Ground {
  readonly now: Design
  readonly before: Design
  readonly plan: readonly PlannedDocument[]
  readonly merged: Written | null
}

const NOWHERE: Go = { says: null, at: null, select: null, sheet: null, document: null, working: null, field: null }

export function goOf(ground: Ground, target: Target): Go {
  const found = WAYS[target.kind](ground, target.id)
  const isNowhere = Object.values(found).every((each) => each === null)
  return isNowhere ? { ...found, says: `${target.id} is not on the coach as it is now.` } : found
}

const WAYS: Readonly<Record<Target['kind'], (ground: Ground, id: string) => Go>> = {
  opening: (ground, id) => {
    const [here, was] = both(ground, (design) => design.openings.find((each) => each.id === id))
    return { ...NOWHERE, at: placed(ground, (here ?? was)?.place), select: here ? id : null, sheet: 'Openings' }
  },
  part: (ground, id) => {
    const [here, was] = both(ground, (design) => design.parts.find((each) => each.id === id))
    const document = ground.plan.find(({ path }) => stemOf(path) === id)?.path ?? null
    return { ...NOWHERE, at: placed(ground, (here ?? was)?.place), document, sheet: document && sheetOfDocument(document) }
  },
  row: (ground, id) => {
    const [here, was] = both(ground, (design) => design.rows.find((each) => each.id === id))
    const row = here ?? was
    const place = row && middleOf(row)
    return { ...NOWHERE, at: placed(ground, place), sheet: 'Fasteners', working: here ? `row.${id}.length` : null }
  },
  check: (ground, id) => {
    const [here, was] = both(ground, (design) => design.checks.find((each) => each.id === id))
    return { ...NOWHERE, at: placed(ground, (here ?? was)?.places[0]), sheet: sheetOfCheck(id), working: here ? `check.${id}` : null }
  },
  case: (_, id) => ({ ...NOWHERE, sheet: 'Weight', working: `weight.case.${id}.share` }),
  document: ({ plan }, id) => {
    const isThere = plan.some(({ path }) => path === id)
    return isThere ? { ...NOWHERE, sheet: sheetOfDocument(id), document: id } : NOWHERE
  },
  written: ({ merged }, path) => {
    const field = merged && fieldNamed(merged, path)
    return { ...NOWHERE, field, select: field?.thing ?? null }
  },
}

/** The middle fastener of a row. */
function middleOf({ station, girth, waterline, end, buttock }: FastenerRow): Place {
  const i = Math.floor(station.length / 2)
  return {
    ...{ side: girth[i] < 0 ? 'left' : 'right', station: station[i], girth: Math.abs(girth[i]), waterline: waterline[i] },
    ...(end ? { end: { which: end.which, y: end.y[i] } } : {}),
    ...(buttock ? { buttock: buttock[i] } : {}),
  }
}

const both = <T>({ now, before }: Ground, find: (design: Design) => T | undefined) => [find(now), find(before)] as const

const placed = ({ now }: Ground, place: Place | undefined): Go['at'] => (place ? seenAt(now, place) : null)

const stemOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1, path.lastIndexOf('.'))

/** The sheet of its trade; the sheets of everything are for what belongs to none. */
const sheetOfCheck = (id: string): string => SHEETS.find(({ name, checks }) => name !== 'Checks' && isUnder(id, checks))?.name ?? 'Checks'
const sheetOfDocument = (path: string): string =>
  SHEETS.find(({ name, documents }) => name !== 'Packet' && isUnder(path, documents))?.name ?? 'Packet'

/** Keys of the form that are not spelled as the design calls them. */
const SPELLED: Readonly<Record<string, string>> = { waterline: 'wl', fore: 'from', aft: 'to', arealmass: 'mass', linearmass: 'mass' }
const plain = (key: string): string => key.toLowerCase().replace(/[^a-z0-9]/g, '')

/** The value a change is named after, `chassis crossMembers 3`, or the nearest thing round it that is written. */
function fieldNamed(merged: Written, path: string) {
  const steps: (string | number)[] = []
  let node: Written = merged
  for (const word of path.split(' ')) {
    const at = stepNamed(node, word)
    const next = at === null ? undefined : child(node, at)
    if (at === null || !next) break
    steps.push(at)
    node = next
  }
  const [group, item] = steps
  // an item that goes by an id is known by it on the elevation
  const named =
    typeof item === 'number' && pathOf(merged, [group, item]) ? idOf(child(child(merged, group) as Written, item) as Written) : null
  const field = steps.length === 0 ? null : fieldAt(merged, named === null ? steps : [group, { id: named }, ...steps.slice(2)])
  return field
}

function stepNamed(node: Written, word: string): string | number | null {
  if (node.kind === 'list') {
    const byId = node.items.findIndex((item) => idOf(item) === word)
    return byId >= 0 ? byId : /^\d+$/.test(word) ? Number(word) - 1 : null
  }
  if (node.kind !== 'map') return null
  const wanted = [plain(word), SPELLED[plain(word)]]
  return [...node.entries.keys()].find((key) => wanted.includes(plain(key))) ?? null
}
