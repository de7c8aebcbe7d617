/**
 * Which documents must be issued again. Nothing is drawn to find out: every planned document says what it is made from, and one
 * whose things all show the same is the same sheet but for the revision, unit and date in its heading. Nor is a study made:
 * what hangs on one is told by what the study is made from, so that a blank or a chance may come out as it was after all.
 */
import type { Design } from '../derive/design.js'
import { endDocuments, WAITING } from '../documents/packet/end-documents.js'
import { type ExpectedDocument, expectedDocuments, formedPanels, linedPanels } from '../documents/packet/expected-documents.js'
import { KEY_FIGURE } from '../documents/packet/made-from-parts.js'
import { type PacketOptions, packetPlan } from '../documents/packet/plan.js'
import type { MadeFrom } from '../documents/packet/planned.js'
import { same } from '../quantity/same.js'
import type { DocumentChange } from './nouns.js'

/** Options of the packet in the shop; its studies are told apart by design, so none is handed over. */
export type RippleOptions = Omit<PacketOptions, 'blanks' | 'gores' | 'fit'>

export function documentChanges(before: Design, after: Design, options: RippleOptions): readonly DocumentChange[] {
  const [old, now] = [packetOf(before, options), packetOf(after, options)]
  const isSame = comparer()
  const changes: DocumentChange[] = []
  for (const { document, of } of now.values()) {
    const was = old.get(document.path)
    if (!was) {
      changes.push(told(document, 'new', []))
      continue
    }
    const because = differences(was.of, of, isSame)
    if (was.document.says !== document.says) because.push('what it is called')
    if (because.length > 0) changes.push(told(document, 'reissue', because))
  }
  for (const [path, { document }] of old) if (!now.has(path)) changes.push(told(document, 'withdraw', []))
  return changes
}

/** A planned document and what it is made from, by path in reading order. */
type Packet = ReadonlyMap<string, { readonly document: ExpectedDocument; readonly of: readonly MadeFrom[] }>

const PACKETS = new WeakMap<Design, { readonly options: RippleOptions; readonly packet: Packet }>()

/** Kept with its design: whoever drags a window holds one design against a hundred. */
function packetOf(design: Design, options: RippleOptions): Packet {
  const known = PACKETS.get(design)
  if (known?.options === options) return known.packet
  const packet: Packet = new Map(plannedFor(design, options).map((document) => [document.path, { document, of: document.of() }]))
  PACKETS.set(design, { options, packet })
  return packet
}

const SHOWN = new WeakMap<MadeFrom, { readonly value: unknown }>()

/** What a thing shows, worked out when it is first asked for: most are of the very same objects, and nobody asks. */
function shownBy(made: MadeFrom): unknown {
  const known = SHOWN.get(made)
  if (known) return known.value
  const value = made.shows ? made.shows() : made.from
  SHOWN.set(made, { value })
  return value
}

/** The plan as it will be when the studies are done: their documents, and what others are then made from besides. */
function plannedFor(design: Design, options: RippleOptions): readonly ExpectedDocument[] {
  const { documents, besides } = expectedDocuments(design)
  const plan: readonly ExpectedDocument[] = [...withoutStudied(design, packetPlan(design, options), options), ...documents]
  return plan.map((document) => {
    const also = besides.get(document.path)
    return also ? { ...document, of: () => [...document.of(), ...also] } : document
  })
}

/** Formed panels and end lining have their patterns by the time the packet is written, so only others wait for one. */
function withoutStudied(design: Design, plan: readonly ExpectedDocument[], options: RippleOptions): readonly ExpectedDocument[] {
  const formed = new Set([...formedPanels(design), ...linedPanels(design)])
  if (formed.size === 0) return plan
  const others = endDocuments({ ...design, parts: design.parts.filter((p) => !formed.has(p)) }, options).filter((d) => d.path === WAITING)
  return plan.flatMap((document) => (document.path === WAITING ? others : [document]))
}

const told = ({ path, says }: ExpectedDocument, status: DocumentChange['status'], because: readonly string[]): DocumentChange => ({
  path,
  says,
  status,
  because,
  onlyFigure: because.length === 1 && because[0] === KEY_FIGURE,
})

type Comparer = (a: MadeFrom, b: MadeFrom) => boolean

/** Compares a thing once, though many documents are made from it. */
function comparer(): Comparer {
  const found = new Map<MadeFrom, readonly [twin: MadeFrom, is: boolean]>()
  return (a, b) => {
    if (areIdentical(a.from, b.from)) return true
    const known = found.get(a)
    if (known?.[0] === b) return known[1]
    const is = same(shownBy(a), shownBy(b))
    found.set(a, [b, is])
    return is
  }
}

function areIdentical(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length || a.length === 0) return false
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false
  return true
}

/** Names of what shows differently, or is in one only. Things of one name are taken in turn. */
function differences(old: readonly MadeFrom[], now: readonly MadeFrom[], isSame: Comparer): string[] {
  // nearly always the same things in the same order
  const inTurn = old.length === now.length ? differentInTurn(old, now, isSame) : null
  if (inTurn) return unique(inTurn)
  const waiting = new Map<string, MadeFrom[]>()
  for (const each of old) {
    const list = waiting.get(each.name)
    if (list) list.push(each)
    else waiting.set(each.name, [each])
  }
  const different = now.filter((each) => {
    const twin = waiting.get(each.name)?.shift()
    return !twin || !isSame(twin, each)
  })
  return unique([...different, ...[...waiting.values()].flat()])
}

/** Null where the things are not the same ones in the same order. */
function differentInTurn(old: readonly MadeFrom[], now: readonly MadeFrom[], isSame: Comparer): readonly MadeFrom[] | null {
  const different: MadeFrom[] = []
  for (let i = 0; i < now.length; i++) {
    if (old[i].name !== now[i].name) return null
    if (!isSame(old[i], now[i])) different.push(now[i])
  }
  return different
}

const unique = (things: readonly MadeFrom[]): string[] => (things.length === 0 ? [] : [...new Set(things.map((each) => each.name))])
