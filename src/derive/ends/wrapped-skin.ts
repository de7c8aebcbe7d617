/**
 * A wrapped skin: between the seams a fastener stands on its gore's sheet, so rows round the end run from rib to rib as the sheet
 * does, and mid ribs follow it. Over a seam both sheets are on the loft. A gore that cannot be wrapped is taken as formed.
 */

import { sigmaAtZ } from '../../maths/loft.js'
import { at } from '../../maths/tangent-chain.js'
import { add, cross, dot, scale, sub, type Vec3 } from '../../maths/vec.js'
import { type Ground, goreAt } from './ground.js'
import type { RibCurve } from './rib-curve.js'
import { type EndSkin, formedSkin, type Level, type Located } from './skin.js'
import { type OnCut, type SheetCut, sheetCut } from './wrapped-cut.js'
import type { GoreSheet, WrappedGore } from './wrapped-strip.js'

/** Cuts are taken once an azimuth; the other hand's are mirrored. */
export type Cuts = (gore: WrappedGore, phi: number) => SheetCut

export function cutsOf(): Cuts {
  const known = new Map<GoreSheet, Map<number, SheetCut>>()
  return ({ sheet, turned, number }, phi) => {
    if (!sheet) throw new Error(`gore ${number} has no sheet to cut`)
    const own = known.get(sheet) ?? new Map<number, SheetCut>()
    known.set(sheet, own)
    const cut = own.get(turned ? -phi : phi) ?? sheetCut(sheet, turned ? -phi : phi)
    own.set(cut.phi, cut)
    return cut
  }
}

export const mirror = ([x, y, z]: Vec3): Vec3 => [x, -y, z]

/** A place of a gore as it stands on its own hand. */
const onHand = ({ turned }: WrappedGore, on: OnCut): OnCut => (turned ? { ...on, point: mirror(on.point), out: mirror(on.out) } : on)

export function wrappedSkin(ground: Ground, gores: readonly WrappedGore[], cuts: Cuts): EndSkin {
  const formed = formedSkin(ground)
  const { cap } = ground.input.ends
  const off = ground.handed.toeRow - ground.toe
  const wrappedAt = (phi: number): WrappedGore | null => {
    if (ground.edges.some((edge) => Math.abs(edge - phi) < 1e-9)) return null
    const gore = gores[goreAt(ground, phi) - 1]
    return gore.sheet ? gore : null
  }
  const on = (gore: WrappedGore, phi: number, level: Level): OnCut => {
    const cut = cuts(gore, phi)
    switch (level.at) {
      case 'cap':
        return cut.atAlong(0)
      case 'base':
        if (ground.base === null) throw new Error('an end without a floor has no base row')
        return cut.atHeight(at(ground.loft.section, ground.base).z)
      case 'toe': {
        if (!gore.sheet) throw new Error(`gore ${gore.number} has no sheet`)
        return beyondFoot(gore.sheet, cut, off)
      }
      case 'girth':
        return cut.atAlong(level.girth - cap)
    }
  }
  const inside = (phi: number, level: Level, depth: number): Vec3 => {
    const gore = wrappedAt(phi)
    if (!gore) return formed.inside(phi, level, depth)
    const { point, out } = onHand(gore, on(gore, phi, level))
    return sub(point, scale(out, depth))
  }
  return {
    inside,
    point: (phi, level) => inside(phi, level, 0),
    locate: (phi, level): Located => {
      const gore = wrappedAt(phi)
      if (!gore) return formed.locate(phi, level)
      const place = onHand(gore, on(gore, phi, level))
      return { point: place.point, phi, girth: level.at === 'cap' ? cap : cap + place.along }
    },
    toeGirth: (phi) => {
      const gore = wrappedAt(phi)
      return gore ? cap + cuts(gore, phi).length : formed.toeGirth(phi)
    },
  }
}

/** A point `off` m past the sheet's foot, square to it and straight on, in the vertical plane of the cut. */
export function beyondFoot({ strip, out, flat, thickness }: GoreSheet, cut: SheetCut, off: number): OnCut {
  const last = strip.rulings.length - 1
  const { from, to, direction } = strip.rulings[last]
  const down = cross(out[last], direction)
  const start = add(add(from, scale(out[last], thickness / 2)), scale(down, off))
  const plane: Vec3 = [-Math.sin(cut.phi), Math.cos(cut.phi), 0]
  const v = -dot(plane, start) / dot(plane, sub(to, from))
  const h = flat.heading[last]
  return {
    point: add(start, scale(sub(to, from), v)),
    out: out[last],
    // square to the last ruling, away from the sheet: seen flat, clockwise from the ruling's own heading
    flat: [
      flat.px[last] + v * (flat.qx[last] - flat.px[last]) + off * Math.sin(h),
      flat.py[last] + v * (flat.qy[last] - flat.py[last]) - off * Math.cos(h),
    ],
    along: cut.length + off,
  }
}

/**
 * A mid rib's curve, `depth` inside the outer face of its sheet, walked as a rib on the loft is: by the section girth at the
 * height of the outer face. Above the cap's row it is not known and runs straight on.
 */
export function wrappedRib(ground: Ground, gore: WrappedGore, cuts: Cuts, phi: number, depth: number): RibCurve {
  const { section } = ground.loft
  const { cap } = ground.input.ends
  const cut = cuts(gore, phi)
  const own = (along: number): number => (along < 0 || along > cut.length ? along : cut.inside(along, depth))
  const outer = (length: number): number => {
    if (depth === 0 || length < 0 || length > cut.length) return length
    let a = length
    // the two lengths differ by parts in a thousand
    for (let i = 0; i < 8; i++) a = Math.min(cut.length, Math.max(0, a + length - own(a)))
    return a
  }
  return {
    phi,
    depth,
    length: cap + own(cut.length),
    lengthAt: (sigma) => cap + own(cut.atHeight(at(section, sigma).z).along),
    sigmaAt: (length) => {
      const { point } = cut.atAlong(outer(length - cap))
      return sigmaAtZ(section, point[2]) ?? (point[2] > 0 ? 0 : section.length)
    },
    atSigma: (sigma) => {
      const { point, out } = onHand(gore, cut.atHeight(at(section, sigma).z))
      return sub(point, scale(out, depth))
    },
  }
}
