/** What a wrapped gore comes to: how its rulings fall, how tightly it bends, how far inside the loft it lies, how it meets its neighbours. */
import { depthInside, loftAt, normalOf } from '../../maths/loft.js'
import { stripFacts } from '../../maths/strip/facts.js'
import { distanceInside, edgeNormal, kink } from '../../maths/strip/fit.js'
import { dot, scale, type Vec3 } from '../../maths/vec.js'
import { findAlloy } from '../../tables/alloys.js'
import type { WrappedGoreFacts } from '../nouns.js'
import type { Ground } from './ground.js'
import { wrapRadius } from './wrap.formulas.js'
import { mirror } from './wrapped-skin.js'
import type { GoreSheet, WrappedGore } from './wrapped-strip.js'

type Kink = WrappedGoreFacts['kinks']['right']

/** Places along a seam at which the kink is looked for. */
const LOOKS = 48

export function wrappedFacts(ground: Ground, gores: readonly WrappedGore[]): WrappedGoreFacts[] {
  const { skin } = ground.input.ends
  const alloy = findAlloy(skin.alloy, skin.thickness.value)
  if (!alloy.ok) throw new Error(alloy.says)
  const elastic = wrapRadius({ E: alloy.row.E.value, t: skin.thickness.value, F_ty: alloy.row.Fty.value })
  const kinks: Kink[] = []
  ground.edges.forEach((_, edge) => {
    // an edge whose left-hand gore mirrors one of the right half is itself the mirror of one
    const alike = gores[Math.min(edge, ground.gores - 1)].turned
    kinks.push(alike ? kinks[ground.gores - edge] : kinkAt(ground, gores, edge))
  })
  const own = new Map<GoreSheet, Pick<WrappedGoreFacts, 'drop' | 'bend' | 'crease' | 'inside'>>()
  return gores.map(({ number, sheet, refused, turned }) => {
    const head = { gore: number, elastic, kinks: { right: kinks[number - 1], left: kinks[number] } }
    if (!sheet) return { ...head, refused: refused?.says ?? null, drop: null, bend: null, crease: null, inside: null }
    const facts = own.get(sheet) ?? sheetFacts(ground, sheet)
    own.set(sheet, facts)
    const { inside } = facts
    return { ...head, refused: null, ...facts, inside: inside && turned ? { ...inside, azimuth: -inside.azimuth } : inside }
  })
}

function sheetFacts({ loft }: Ground, { strip, flat }: GoreSheet): Pick<WrappedGoreFacts, 'drop' | 'bend' | 'crease' | 'inside'> {
  const { rulings } = strip
  const { drop, bend } = stripFacts({ ...strip, rulings: rulings.filter((r) => r.fan === 'none') }, flat)
  const deepest = distanceInside(strip, (point) => depthInside(loft, point))
  const at = (s: number, t: number): number => (strip.p.at(s)[2] + strip.q.at(t)[2]) / 2
  const whole = rulings.flatMap((r, k) => (r.fan === 'none' ? [k] : []))
  const [first, last] = [whole[0], whole[whole.length - 1]]
  const turn = (a: number, b: number): number => Math.acos(Math.min(1, dot(rulings[a].normal, rulings[b].normal)))
  return {
    drop: { most: drop.most, waterline: at(drop.s, drop.t) },
    bend: bend && { radius: bend.radius, waterline: at(bend.s, bend.t) },
    crease: { top: turn(0, first), foot: turn(last, rulings.length - 1) },
    inside: { depth: deepest.depth, azimuth: Math.atan2(deepest.point[1], deepest.point[0]), waterline: deepest.point[2] },
  }
}

/** Outward normals of a gore's sheet along one of its edges, at section girths; null where it has no sheet. */
function normalsAlong({ sheet, turned }: WrappedGore, side: 'right' | 'left', sigmas: readonly number[]): Vec3[] | null {
  if (!sheet) return null
  const hand = (side === 'right') === turned ? 'q' : 'p'
  const { curve, from } = sheet[hand]
  return sigmas.map((sigma) => {
    const length = sheet.strip[hand].length
    const n = scale(edgeNormal(sheet.strip, hand, Math.min(length, Math.max(0, curve.lengthAt(sigma) - from))), -1)
    return turned ? mirror(n) : n
  })
}

/** Angle at which what lies right and left of an edge meet, at its most, and where; null where either is not to be had. */
function kinkAt(ground: Ground, gores: readonly WrappedGore[], edge: number): Kink {
  const phi = ground.edges[edge]
  const top = ground.capSigma(phi)
  const sigmas = Array.from({ length: LOOKS + 1 }, (_, i) => top + ((ground.toe - top) * i) / LOOKS)
  const onBarrel = (): Vec3[] => sigmas.map((sigma) => normalOf(loftAt(ground.loft, phi, sigma), phi))
  const right = edge === 0 ? onBarrel() : normalsAlong(gores[edge - 1], 'left', sigmas)
  const left = edge === ground.gores ? onBarrel() : normalsAlong(gores[edge], 'right', sigmas)
  if (!right || !left) return null
  const { most, place } = kink(right, left)
  return { angle: most, waterline: loftAt(ground.loft, phi, sigmas[place]).z }
}
