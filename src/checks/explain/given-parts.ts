/** Parts and rows of a working, and where their thickness, mass a metre and diameter are written. */
import type { Step } from '../../definition/set-in-text.js'
import type { FastenerRow, Part } from '../../derive/nouns.js'
import { type Given, type GivenAt, lastOf, told, writtenAt } from './given-nouns.js'

const THICKNESS: Readonly<Record<string, readonly Step[]>> = {
  strake: ['shell', 'skin'],
  frame: ['shell', 'frame'],
  'joint-frame': ['shell', 'joint frame'],
  'end-rib': ['shell', 'frame'],
  'header-ring': ['shell', 'frame'],
  'edge-channel': ['shell', 'edge channel'],
  'end-base': ['shell', 'edge channel'],
  stringer: ['shell', 'stringer'],
  header: ['shell', 'post'],
  post: ['shell', 'post'],
  rim: ['shell', 'rim'],
  'trim-ring': ['shell', 'rim'],
  underbelly: ['shell', 'underbelly'],
  lining: ['lining'],
  'end-lining': ['lining'],
  gore: ['ends', 'skin'],
  'crown-cap': ['ends', 'skin'],
  rail: ['chassis', 'rail'],
  'cross-member': ['chassis', 'cross-member'],
  'wheel-box-header': ['chassis', 'cross-member'],
  'bay-bearer': ['chassis', 'cross-member'],
  outrigger: ['chassis', 'outrigger'],
  'a-frame': ['chassis', 'A-frame'],
  'wheel-box': ['gear', 'wheel box'],
}

/** The group of the definition a part is described in. */
function groupOfPart({ kind, id }: Part): readonly Step[] | null {
  return kind === 'chassis-plate' ? ['chassis', 'plates', { id }] : (THICKNESS[kind] ?? null)
}

export function partWritten(part: Part | null, key: string, otherwise: string): Given {
  const group = part && groupOfPart(part)
  return group ? writtenAt([...group, key], otherwise) : told(otherwise)
}

/** Named by the number that is asked for, or by a term on the way. */
export function partOf(at: GivenAt): Part | null {
  const asked = /^part\.(.+)\.mass$/.exec(at.root)?.[1] ?? /^weight\.line\.(.+)$/.exec(at.root)?.[1]
  return partNamed(at, at.path.length === 0 && asked ? asked : lastOf(at)) ?? (asked ? partNamed(at, asked) : null)
}

/** The thickness of a layer; the underbelly is one layer whatever pieces it is cut from. */
export function layerWritten(at: GivenAt, name: string): Given {
  const otherwise = 'thickness of the layer'
  return name.startsWith('underbelly')
    ? writtenAt(['shell', 'underbelly', 'thickness'], otherwise)
    : partWritten(partNamed(at, name), 'thickness', otherwise)
}

function partNamed({ subject }: GivenAt, name: string): Part | null {
  const plain = name.replace(/ \(layer \d+\)$/, '')
  return subject.design.parts.find(({ id }) => id === plain) ?? null
}

const rowsById = (at: GivenAt): ReadonlyMap<string, FastenerRow> => new Map(at.subject.design.rows.map((row) => [row.id, row]))

/** `row.hoop-F3.grip` is of the row hoop-F3, `rivets-hoop-F3` too. */
export function rowOf(at: GivenAt): FastenerRow | null {
  const rows = rowsById(at)
  const asked = /^row\.([^.]+)\./.exec(at.root)?.[1]
  const rivets = [...at.path, at.root.replace(/^weight\.line\./, '')].map((name) => /^rivets-(.+)$/.exec(name)?.[1])
  return [asked, ...rivets].flatMap((id) => (id === undefined ? [] : (rows.get(id) ?? [])))[0] ?? null
}

/** A check's rows are those it names; where their fasteners differ nobody can say which one is meant. */
export function diameterOf(at: GivenAt): Given {
  const row = rowOf(at)
  const otherwise = 'diameter of the fastener'
  if (row) return writtenAt(['fasteners', row.fastener, 'diameter'], otherwise)
  const check = at.subject.design.checks.find(({ id }) => `check.${id}` === at.root)
  const rows = rowsById(at)
  const named = new Set((check?.concerns ?? []).flatMap((id) => rows.get(id)?.fastener ?? []))
  const [only] = named
  return named.size === 1 ? writtenAt(['fasteners', only, 'diameter'], otherwise) : told(otherwise)
}

/** The layer of the row's usual stack that is so thick. */
export function layerOf(at: GivenAt): Given {
  const stack = rowOf(at)?.stacks.reduce((best, each) => (each.count > best.count ? each : best))
  const i = stack?.thickness.indexOf(at.value) ?? -1
  return layerWritten(at, stack && i >= 0 ? stack.parts[i] : '')
}
