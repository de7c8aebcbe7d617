/**
 * A wrapped skin: between the seams a fastener stands on its gore's sheet, so rows round the end run from rib to rib as the sheet
 * does, and mid ribs follow it. Over a seam both sheets are on the loft. A gore that cannot be wrapped is taken as formed.
 */

import { sigmaAtZ } from '../../maths/loft.js'
import { at } from '../../maths/tangent-chain.js'
import { scale, sub, type Vec3 } from '../../maths/vec.js'
import { type Ground, goreAt } from './ground.js'
import type { RibCurve } from './rib-curve.js'
import { type EndSkin, formedSkin, type Level, type Located } from './skin.js'
import { beyondFoot, type OnSheet, type SheetCut, sheetAtHeight, sheetCut, sheetTop } from './wrapped-cut.js'
import type { GoreSheet, WrappedGore } from './wrapped-strip.js'

/** A sheet cut at an azimuth, which is given on the sheet's own hand. Those down its middle, where its mid rib runs, are kept. */
export type Cuts = (sheet: GoreSheet, phi: number) => SheetCut

export function cutsOf(): Cuts {
  const middles = new Map<GoreSheet, SheetCut>()
  return (sheet, phi) => {
    if (phi !== (sheet.p.phi + sheet.q.phi) / 2) return sheetCut(sheet, phi)
    const cut = middles.get(sheet) ?? sheetCut(sheet, phi)
    middles.set(sheet, cut)
    return cut
  }
}

export const mirror = ([x, y, z]: Vec3): Vec3 => [x, -y, z]

/** A place of a gore as it stands on its own hand, and an azimuth as it is on its sheet's. */
export const onHand = ({ turned }: Pick<WrappedGore, 'turned'>, on: OnSheet): OnSheet =>
  turned ? { ...on, point: mirror(on.point), out: mirror(on.out) } : on
export const ownPhi = ({ turned }: Pick<WrappedGore, 'turned'>, phi: number): number => (turned ? -phi : phi)

/**
 * Nearer the joint the upright plane through the crown all but lies in the sheet, and their cut runs to and fro: over the last five
 * thousandths of a radian a girth is carried on as it came. It bends by a hundredth of a millimetre there on an end like the Sedge's.
 */
const TELLABLE = Math.PI / 2 - 5e-3
const STEP = 5e-3

interface Found {
  readonly gore: WrappedGore
  readonly sheet: GoreSheet
  /** the azimuth on the sheet's own hand */
  readonly phi: number
}

export function wrappedSkin(ground: Ground, gores: readonly WrappedGore[], cuts: Cuts): EndSkin {
  const formed = formedSkin(ground)
  const { cap } = ground.input.ends
  const off = ground.handed.toeRow - ground.toe
  const found = (phi: number): Found | null => {
    if (ground.edges.some((edge) => Math.abs(edge - phi) < 1e-9)) return null
    const gore = gores[goreAt(ground, phi) - 1]
    return gore.sheet && { gore, sheet: gore.sheet, phi: ownPhi(gore, phi) }
  }
  const baseHeight = (): number => {
    if (ground.base === null) throw new Error('an end without a floor has no base row')
    return at(ground.loft.section, ground.base).z
  }
  const on = ({ gore, sheet, phi }: Found, level: Level): OnSheet => {
    switch (level.at) {
      case 'cap':
        return onHand(gore, sheetTop(sheet, phi))
      case 'base':
        return onHand(gore, sheetAtHeight(sheet, phi, baseHeight()))
      case 'toe':
        return onHand(gore, beyondFoot(sheet, phi, off))
      case 'girth':
        return onHand(gore, cuts(sheet, phi).atAlong(level.girth - cap))
    }
  }
  const girth = ({ sheet, phi }: Found, level: Level): number => {
    if (level.at === 'cap') return cap
    if (level.at === 'girth') return level.girth
    const told = (azimuth: number): number => {
      const cut = cuts(sheet, Math.sign(phi) * azimuth)
      return cap + (level.at === 'toe' ? cut.length + off : cut.atHeight(baseHeight()).along)
    }
    const beyond = Math.abs(phi) - TELLABLE
    if (beyond <= 0) return told(Math.abs(phi))
    const last = told(TELLABLE)
    return last + ((last - told(TELLABLE - STEP)) / STEP) * beyond
  }
  const inside = (phi: number, level: Level, depth: number): Vec3 => {
    const one = found(phi)
    if (!one) return formed.inside(phi, level, depth)
    const { point, out } = on(one, level)
    return sub(point, scale(out, depth))
  }
  return {
    inside,
    point: (phi, level) => inside(phi, level, 0),
    locate: (phi, level): Located => {
      const one = found(phi)
      return one ? { point: on(one, level).point, phi, girth: girth(one, level) } : formed.locate(phi, level)
    },
    toeGirth: (phi) => {
      const one = found(phi)
      return one ? cap + cuts(one.sheet, one.phi).length : formed.toeGirth(phi)
    },
  }
}

/**
 * A mid rib's curve, `depth` inside the outer face of its sheet, walked as a rib on the loft is: by the section girth at the
 * height of the outer face. Above the cap's row it is not known and runs straight on.
 */
export function wrappedRib(
  ground: Ground,
  gore: WrappedGore & { readonly sheet: GoreSheet },
  cuts: Cuts,
  phi: number,
  depth: number,
): RibCurve {
  const { section } = ground.loft
  const { cap } = ground.input.ends
  const cut = cuts(gore.sheet, ownPhi(gore, phi))
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
