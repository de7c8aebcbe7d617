/** Every part of the shell, in the order a shop makes them, with what it is cut from. */
import { type Development, developed, undeveloped } from '../../maths/development.js'
import { girthAtOffset } from '../../maths/tangent-chain.js'
import { densityOf } from '../common/density.js'
import { angleMass } from '../common/mass.formulas.js'
import type { Part, SheetUse } from '../nouns.js'
import { type FramePlates, fastenerOf, type Laid, rimReach } from './members.js'
import { grown, type OpeningShape } from './opening-shape.js'
import { type PartHead, partOf } from './parts.js'
import type { Through } from './patterns.js'
import { lieOf, type Plate } from './plates.js'
import type { Rim } from './rows-rim.js'
import { ORDER } from './sheets.js'
import type { ResolvedRow } from './stacks.js'
import { sheetsFor, stripNeed } from './stock-use.js'
import type { StringerPlate } from './stringers.js'

export interface Made {
  readonly laid: Laid
  readonly skins: readonly Plate[]
  readonly frames: readonly FramePlates[]
  readonly stringers: readonly StringerPlate[]
  readonly channels: readonly Plate[]
  readonly rims: readonly Rim[]
  readonly lining: readonly Plate[]
  readonly trims: readonly { readonly shape: OpeningShape; readonly plate: Plate }[]
  readonly resolved: readonly ResolvedRow[]
}

export function buildParts(made: Made): { parts: Part[]; plates: Plate[]; sheets: SheetUse[] } {
  const { laid, skins } = made
  const { input, section, skin } = laid
  const chain = section.withFlange
  const through = throughOf(made)
  const plates: Plate[] = []
  const parts: Part[] = []
  const add = (list: readonly Plate[], makeHead: () => PartHead, on: readonly unknown[] = []): Part => {
    plates.push(...list)
    const holes = list.flatMap((p) => through.get(p) ?? [])
    const part = laid.memo.keep(`part ${list[0].part}`, [laid.token, ...list, ...on, ...holes.map((h) => h.index)], () =>
      partOf(chain, skin, list, through, makeHead()),
    )
    parts.push(part)
    return part
  }
  const sheet = (head: Partial<PartHead> & Pick<PartHead, 'kind' | 'thickness'>): PartHead => ({
    stock: null,
    notes: [],
    member: null,
    ...head,
  })

  const needs = skins.map((plate) => {
    const stock = input.shell.strakes.find((s) => plate.part === `strake-${s.id}` || plate.part.startsWith(`strake-${s.id}-`))?.stock
    if (!stock) throw new Error(`no stock for ${plate.part}`)
    const part = add([plate], () =>
      sheet({ kind: 'strake', thickness: input.shell.skin.thickness, stock: stock.name, notes: splitNotes(plate) }),
    )
    return stripNeed(part, stock, plate.g1 - plate.g0)
  })
  for (const f of made.frames) {
    const member = f.frame.joint ? input.shell.jointFrame : input.shell.frame
    const neutral = input.shell.skin.thickness.value + member.height / 2
    const length = (): number => f.stretches.reduce((sum, s) => sum + along(made, s.to, neutral) - along(made, s.from, neutral), 0)
    add([f.outer, f.inner], () => ({
      kind: f.frame.joint ? 'joint-frame' : 'frame',
      thickness: member.thickness,
      stock: null,
      notes:
        f.cutBy.length > 0
          ? [
              `Cut by ${f.cutBy.join(' and ')}: ${f.stretches.length === 1 ? 'one piece is left' : `${f.stretches.length} pieces are left`}.`,
            ]
          : [],
      member: { linearMass: member.linearMass, length: length() },
    }))
  }
  for (const s of made.stringers) add([s.plate], () => angle(s.plate, input.shell.stringer, s.plate.x1 - s.plate.x0, 'stringer', []))
  for (const c of made.channels) {
    const length = c.cuts.reduce((sum, cut) => sum - (Math.min(cut.x1, c.x1) - Math.max(cut.x0, c.x0)), c.x1 - c.x0)
    // an opening may take away the whole of one
    if (length < 1e-9) continue
    add([c], () => ({
      kind: 'edge-channel',
      thickness: input.shell.edgeChannel.thickness,
      stock: null,
      notes: [],
      member: { linearMass: input.shell.edgeChannel.linearMass, length },
    }))
  }
  for (const rim of made.rims) {
    add([rim.plate], () => sheet({ kind: 'rim', thickness: input.shell.rim.thickness }))
    for (const plate of rim.framing.plates) {
      add(
        [plate],
        () => angle(plate, input.shell.post, rim.framing.lengths[plate.part], plate.kind === 'post' ? 'post' : 'header', rim.framing.notes),
        [rim.framing],
      )
    }
  }
  for (const plate of made.lining)
    add([plate], () => sheet({ kind: 'lining', thickness: input.lining.thickness, stock: input.lining.stock.name }))
  for (const trim of made.trims) add([trim.plate], () => sheet({ kind: 'trim-ring', thickness: input.shell.rim.thickness }))
  return { parts, plates, sheets: sheetsFor(needs, input.stock) }
}

/** Developed length to a signed girth at a depth, m from the crown. */
function along(made: Made, girth: number, depth: number): number {
  return Math.sign(girth) * girthAtOffset(made.laid.section.withFlange, Math.abs(girth), depth)
}

/** An angle weighs as two legs less the shared corner. */
function angle(
  plate: Plate,
  section: Laid['input']['shell']['stringer'],
  length: number,
  kind: 'stringer' | 'post' | 'header',
  notes: readonly string[],
): PartHead {
  const linearMass = angleMass({ l: section.leg, t: section.thickness.value, rho: densityOf(plate.material, plate.thickness) })
  return {
    kind,
    thickness: section.thickness,
    stock: null,
    notes,
    member: { linearMass, length },
  }
}

function splitNotes(plate: Plate): string[] {
  const whole = plate.cuts.filter((c) => c.x0 > plate.x0 && c.x1 < plate.x1)
  return whole.flatMap((c) =>
    plateSpans(plate, c)
      ? [`The cut for ${c.id} divides this sheet: punch it whole and leave two tabs of 5 mm a side to be parted last.`]
      : [],
  )
}

/** Whether a cut runs from edge to edge of a plate. */
function plateSpans(plate: Plate, cut: OpeningShape): boolean {
  const d = plate.development
  return cut.v0 < developed(d, plate.g0) && cut.v1 > developed(d, plate.g1)
}

function throughOf(made: Made): Map<Plate, Through[]> {
  const map = new Map<Plate, Through[]>()
  for (const { row, through } of made.resolved) {
    const hole = fastenerOf(made.laid.input, row.fastener).hole
    for (const entry of through) {
      const list = map.get(entry.plate)
      const one = { row, index: entry.index, hole }
      if (list) list.push(one)
      else map.set(entry.plate, [one])
    }
  }
  return map
}

/** The inner trim ring of each opening: from the cut to the rim's reach, on the lining's inner face. */
export function trimRings(laid: Laid, development: Development): { shape: OpeningShape; plate: Plate }[] {
  const { input, skin } = laid
  const reach = rimReach(input)
  return laid.shapes
    .filter((s) => s.surface !== 'wheel')
    .map((shape) =>
      laid.memo.keep(`trim ${shape.id}`, [laid.token, shape], () => {
        const outer = grown(shape, reach)
        const [g0, g1] = [undeveloped(skin, outer.v0), undeveloped(skin, outer.v1)]
        const plate: Plate = {
          part: `trim-${shape.id}`,
          face: 'flange',
          kind: 'trim-ring',
          says: `inner trim ring of ${shape.id}, ${shape.says}`,
          material: input.shell.rim.alloy,
          thickness: input.shell.rim.thickness.value,
          x0: outer.x0,
          x1: outer.x1,
          g0,
          g1,
          order: ORDER.lining + 1,
          development,
          lie: lieOf(g0, g1),
          cuts: [],
          ring: { inner: shape, outer },
          marks: [],
        }
        return { shape, plate }
      }),
    )
}
