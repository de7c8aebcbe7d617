/** The shell trade's door: slice of a definition in, parts, rows, joints and openings out. */

import type { Development } from '../../maths/development.js'
import { liningDepth } from '../common/lining-depth.js'
import { FORGETFUL, type Memo } from '../memo.js'
import type { FastenerRow, Joint, OpeningDerived, Part, SectionPoint, SheetUse } from '../nouns.js'
import { channelPlates, foreignPlates } from './channels.js'
import type { ShellInput } from './input.js'
import { jointsOf } from './joints.js'
import { liningOf } from './lining.js'
import { fastenerOf, framePlates, type Laid, unrolledAt } from './members.js'
import { openingShapes } from './opening-shape.js'
import { openingsOf } from './openings.js'
import { buildParts, trimRings } from './part-list.js'
import type { Plate } from './plates.js'
import { type Rim, rimOf } from './rows-rim.js'
import { baseRows, hoopRows, jointRows, seamRows, toeRows } from './rows-skin.js'
import { pointTable, type Section, sectionOf } from './section.js'
import { skinDevelopment, strakesOf } from './sheets.js'
import { type ResolvedRow, resolveRow } from './stacks.js'
import { stringerPlates } from './stringers.js'

export interface Shell {
  readonly section: Section
  readonly points: readonly SectionPoint[]
  readonly parts: readonly Part[]
  readonly rows: readonly FastenerRow[]
  readonly joints: readonly Joint[]
  readonly openings: readonly OpeningDerived[]
  readonly sheets: readonly SheetUse[]
  /** what the checks look at: the geometry before it became parts */
  readonly laid: Laid
  readonly plates: readonly Plate[]
  readonly rims: readonly Rim[]
  readonly resolved: readonly ResolvedRow[]
}

export type { ShellInput } from './input.js'

export function deriveShell(input: ShellInput, memo: Memo = FORGETFUL): Shell {
  const section = memo.keep('section', [input.section, input.shell], () => sectionOf(input))
  const skin = memo.keep('skin', [section, input.shell], () => skinDevelopment(input, section))
  const token = memo.keep(
    'all but openings',
    [
      section,
      skin,
      input.shell,
      input.frames,
      input.lining,
      input.rules,
      input.rows,
      input.fasteners,
      input.ends,
      input.floor,
      input.stock,
    ],
    () => Object.freeze({}),
  )
  const shapes = openingShapes(input, section, skin, memo)
  const unrolled = memo.keep('unrolled', [token], () => new Map<string, Development>())
  const laid: Laid = { input, section, skin, shapes, memo, unrolled, token }
  const skins = strakesOf(input, section, shapes, skin, memo, token)
  const frames = framePlates(laid)
  const stringers = stringerPlates(laid)
  const channels = channelPlates(laid)
  const foreign = foreignPlates(laid)
  const rims = shapes.map((shape) => rimOf(laid, shape))
  const lining = liningOf(laid, frames)
  const drafts = [
    ...seamRows(laid, stringers),
    ...hoopRows(laid, frames),
    ...jointRows(laid, frames),
    ...baseRows(laid, channels),
    ...toeRows(laid),
    ...rims.map((r) => r.row),
    ...lining.rows,
  ]
  const behind = layersBehind({ frames, stringers, channels, foreign, rims })
  const at = { skin, chain: section.withFlange, rules: input.rules, sizes: new Map() }
  const resolved = drafts
    .filter((d) => d.station.length > 0)
    .map((d) => {
      const candidates =
        d.kind === 'lining' ? [...lining.plates, ...(behind.get(d.joint) ?? [])] : [...skins, ...(behind.get(d.joint) ?? [])]
      return resolveRow(memo, token, d, candidates, { ...at, fastener: fastenerOf(input, d.fastener) })
    })
  const trims = trimRings(laid, unrolledAt(laid, liningDepth(input) + input.lining.thickness.value + input.shell.rim.thickness.value / 2))
  const built = buildParts({ laid, skins, frames, stringers, channels, rims, lining: lining.plates, trims, resolved })
  const rows = new Map(resolved.map((r) => [r.row.id, r]))
  return {
    section,
    points: memo.keep('points', [token, input.openings], () => pointTable(input, section)),
    parts: built.parts,
    rows: resolved.map((r) => r.row),
    joints: jointsOf(input, memo, token, resolved),
    openings: openingsOf(laid, rims, rows, skins, lining.plates, new Map(trims.map((t) => [t.shape.id, t.plate.part]))),
    sheets: built.sheets,
    laid,
    plates: built.plates,
    rims,
    resolved,
  }
}

interface Members {
  readonly frames: ReturnType<typeof framePlates>
  readonly stringers: ReturnType<typeof stringerPlates>
  readonly channels: readonly Plate[]
  readonly foreign: ReturnType<typeof foreignPlates>
  readonly rims: readonly Rim[]
}

/** What each joint's fasteners may pass through behind the skin or the lining. Anything else they meet there is a finding. */
function layersBehind({ frames, stringers, channels, foreign, rims }: Members): Map<string, Plate[]> {
  const map = new Map<string, Plate[]>()
  for (const f of frames) {
    const end = f.frame.joint ? foreign[f.frame.joint] : []
    map.set(f.frame.joint ? `joint-${f.frame.id}` : `hoop-${f.frame.id}`, [...end, f.outer])
    map.set(`joint-lining-${f.frame.id}`, [f.inner, ...(f.frame.joint ? foreign.lining[f.frame.joint] : [])])
  }
  for (const s of stringers) {
    const key = `joint-${s.seam}-${s.side}`
    map.set(key, [...(map.get(key) ?? []), s.plate])
  }
  ;(['left', 'right'] as const).forEach((side, i) => {
    if (channels[i]) map.set(`joint-base-${side}`, [...foreign.nose, ...foreign.tail, channels[i]])
    map.set(`joint-toe-${side}`, [...foreign.nose, ...foreign.tail, foreign.belly[i]])
  })
  for (const r of rims) map.set(r.row.joint, [r.plate, ...r.framing.plates])
  return map
}
