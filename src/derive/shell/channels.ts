import { developAt, developed } from '../../maths/development.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import { barrelLip } from '../common/barrel-lip.js'
import { liningDepth } from '../common/lining-depth.js'
import { capPart, type End, goreCount, gorePart, liningPart } from '../end-names.js'
import { barrelOf, type ShellInput } from './input.js'
import { type Laid, memberStop, unrolledAt, zonesAt } from './members.js'
import { gapAtLength, type OpeningShape } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import type { Section } from './section.js'
import { ORDER } from './sheets.js'

/** Where the base row stands: the middle of the floor panel's edge; null without a floor. Unsigned girth, m. */
export function baseGirth(input: ShellInput, section: Section): number | null {
  return input.floor ? girthAtZ(section.chain, -input.floor.thickness / 2) : null
}

export function channelPlates(laid: Laid): Plate[] {
  const { input, section, skin } = laid
  const base = baseGirth(input, section)
  if (base === null) return []
  // the ends' own channels start inside the joint laps, where the joint rows stand
  const { first, last } = barrelOf(input)
  const clear = input.shell.joint.overlap / 2 + input.shell.memberGap
  const [x0, x1] = [first + clear, last - clear]
  const c = input.shell.edgeChannel
  const depth = input.shell.skin.thickness.value + c.thickness.value / 2
  const development = unrolledAt(laid, depth)
  return (['left', 'right'] as const).map((side) => {
    const centre = side === 'right' ? base : -base
    const [g0, g1] = [centre - c.height / 2, centre + c.height / 2]
    const v = developed(skin, centre)
    const crossing = laid.shapes.filter((s) => v > s.v0 && v < s.v1)
    return laid.memo.keep(`channel ${side}`, [laid.token, ...crossing], () => {
      const cuts = laid.shapes.flatMap((s): OpeningShape[] => {
        const free = gapAtLength(s, v, memberStop(input, s))
        if (!free) return []
        return [
          {
            ...s,
            x0: free[0],
            x1: free[1],
            v0: developed(skin, g0) - 1,
            v1: developed(skin, g1) + 1,
            corner: 0,
          },
        ]
      })
      return {
        part: `edge-channel-${side}`,
        face: 'outer leg',
        kind: 'edge-channel' as const,
        says: `floor edge channel, ${side} side`,
        material: c.alloy,
        thickness: c.thickness.value,
        x0,
        x1,
        g0,
        g1,
        order: ORDER.member,
        development,
        lie: lieOf(g0, g1),
        cuts: merged(cuts),
        ring: null,
        marks: [],
      }
    })
  })
}

/** Layers that other trades will make: their holes are placed here, their parts come with those trades. */
export function foreignPlates(laid: Laid): ForeignPlates {
  return laid.memo.keep('foreign', [laid.token], () => layForeign(laid))
}

export interface ForeignPlates {
  /** crown cap and the two gores that meet the barrel */
  readonly nose: readonly Plate[]
  readonly tail: readonly Plate[]
  readonly belly: readonly Plate[]
  /** an end's lining over the barrel's, on the lip of its joint frame: the panels inside and outside the header ring */
  readonly lining: Readonly<Record<End, readonly Plate[]>>
}

function layForeign(laid: Laid): ForeignPlates {
  const { input, section } = laid
  const { x0, x1, first, last } = barrelOf(input)
  const t = input.shell.skin.thickness.value
  const { skin: sheet, cap, lap, seams } = input.ends
  const metal = sheet.thickness.value
  const over = input.shell.joint.over === 'barrel'
  // the cap laps over the gores; an end skin that lies outside the barrel builds up outward
  const depthOf = { cap: over ? t + metal / 2 : -1.5 * metal, gore: over ? t + metal / 2 : -metal / 2 }
  const skin = (part: string, says: string, from: number, to: number, g0: number, g1: number): Plate => {
    const capped = part.endsWith('-cap')
    const depth = capped ? depthOf.cap : depthOf.gore
    return {
      part,
      face: 'sheet',
      kind: capped ? 'crown-cap' : 'gore',
      says,
      material: sheet.alloy,
      thickness: metal,
      x0: from,
      x1: to,
      g0,
      g1,
      order: (over ? ORDER.end : -1) + (capped ? 0 : 0.5),
      development: developAt(section.withFlange, depth, over ? zonesAt(input, depth, t, capped ? 0 : metal) : []),
      lie: lieOf(g0, g1),
      cuts: [],
      ring: null,
      marks: [],
    }
  }
  const half = input.shell.joint.overlap / 2
  const ofEnd = (end: End, from: number, to: number): Plate[] => {
    const count = goreCount(seams)
    const top = cap - lap / 2
    return [
      skin(capPart(end), `${end} crown cap`, from, to, -cap - lap / 2, cap + lap / 2),
      skin(gorePart(end, 1), `${end} gore 1`, from, to, top, section.sheetEdge),
      skin(gorePart(end, count), `${end} gore ${count}`, from, to, -section.sheetEdge, -top),
    ]
  }
  const u = input.shell.underbelly
  return {
    lining: { nose: endLining(laid, 'nose'), tail: endLining(laid, 'tail') },
    nose: ofEnd('nose', first - half, first + half),
    tail: ofEnd('tail', last - half, last + half),
    belly: (['left', 'right'] as const).map((side) => ({
      part: 'underbelly',
      face: 'sheet',
      kind: 'not-derived' as const,
      says: 'underbelly sheet',
      material: u.alloy,
      thickness: u.thickness.value,
      x0,
      x1,
      g0: side === 'right' ? section.toe : -section.sheetEdge,
      g1: side === 'right' ? section.sheetEdge : -section.toe,
      order: ORDER.belly,
      development: developAt(section.withFlange, t + u.thickness.value / 2),
      lie: side === 'right' ? ('right-hand' as const) : ('left-hand' as const),
      cuts: [],
      ring: null,
      marks: [],
    })),
  }
}

function endLining(laid: Laid, end: End): Plate[] {
  const { input, section } = laid
  const { lining, shell, ends } = input
  const { thickness, lap, alloy } = lining
  const joint = barrelOf(input)[end === 'nose' ? 'first' : 'last']
  const { row } = barrelLip(shell)
  const reach = row + lap / 2
  const low = girthAtZ(section.chain, lining.floorGap) ?? section.floor
  // the ring's row of the lining stands across the ring's web from the skin's
  const ring = ends.cap - 2 * shell.frame.rowOffset
  const panel = (name: number | 'crown', g0: number, g1: number): Plate => ({
    part: liningPart(end, name),
    face: 'sheet',
    kind: 'end-lining',
    says: `${end} lining`,
    material: alloy,
    thickness: thickness.value,
    x0: end === 'nose' ? joint : joint - reach,
    x1: end === 'nose' ? joint + reach : joint,
    g0,
    g1,
    // the crown panel is hung last
    order: ORDER.lining + (name === 'crown' ? 1.5 : 1),
    development: unrolledAt(laid, liningDepth(input) + 1.5 * thickness.value),
    lie: lieOf(g0, g1),
    cuts: [],
    ring: null,
    marks: [],
  })
  const half = lap / 2
  return [panel('crown', -ring - half, ring + half), panel(1, ring - half, low), panel(2 * goreCount(ends.seams), -low, half - ring)]
}

/** Gaps that run into each other are one gap: a leg cannot be cut away twice. */
function merged(cuts: readonly OpeningShape[]): OpeningShape[] {
  const out: OpeningShape[] = []
  for (const cut of [...cuts].sort((a, b) => a.x0 - b.x0)) {
    const last = out[out.length - 1]
    if (last && cut.x0 <= last.x1) out[out.length - 1] = { ...last, x1: Math.max(last.x1, cut.x1) }
    else out.push(cut)
  }
  return out
}
