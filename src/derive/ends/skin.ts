/**
 * Where a fastener stands on the outer face of an end: by azimuth and level. A formed skin lies on the loft; a wrapped one
 * gives its own (see wrapped-skin.ts), and its mid ribs follow it.
 */
import { loftAt, pointInside } from '../../maths/loft.js'
import type { Vec3 } from '../../maths/vec.js'
import { alikeOnBothHands, type Ground } from './ground.js'
import { meridianGirth, sigmaAtMeridian } from './meridian.js'
import type { RibCurve } from './rib-curve.js'

/** A level down an end: the crown cap's row, the base row, the toe row, or a girth from the crown down that azimuth. */
export type Level =
  | { readonly at: 'cap' }
  | { readonly at: 'base' }
  | { readonly at: 'toe' }
  | { readonly at: 'girth'; readonly girth: number }

export const byGirth = (girth: number): Level => ({ at: 'girth', girth })

export interface Located {
  readonly point: Vec3
  readonly phi: number
  /** from the crown down the vertical plane at that azimuth, m */
  readonly girth: number
}

export interface EndSkin {
  readonly point: (phi: number, level: Level) => Vec3
  /** the same place `depth` m inside the outer face, along the skin's normal */
  readonly inside: (phi: number, level: Level, depth: number) => Vec3
  readonly locate: (phi: number, level: Level) => Located
  /** girth from the crown to the toe at an azimuth */
  readonly toeGirth: (phi: number) => number
}

export function formedSkin(ground: Ground): EndSkin {
  const { loft, input, toe } = ground
  // ribs are walked already; elsewhere a girth is summed up when it is asked for
  // a place over a rib comes to its azimuth by another sum than the rib does
  const near = (phi: number): number => Math.round(phi * 1e10)
  const walked = new Map([...ground.seamCurves, ...ground.midCurves].map((c) => [near(c.phi), c]))
  const over = (phi: number): RibCurve | undefined => walked.get(near(phi))
  const base = ground.base ?? ground.floor
  const summed = {
    toe: alikeOnBothHands((phi) => meridianGirth(loft, phi, toe)),
    base: alikeOnBothHands((phi) => meridianGirth(loft, phi, base)),
  }
  const girthTo = (phi: number, level: 'toe' | 'base'): number => over(phi)?.lengthAt(level === 'toe' ? toe : base) ?? summed[level](phi)
  const inside = (phi: number, level: Level, depth: number): Vec3 => {
    if (level.at === 'toe') return beyondToe(ground, phi, ground.handed.toeRow - toe, depth)
    if (level.at === 'base') {
      if (ground.base === null) throw new Error('an end without a floor has no base row')
      return pointInside(loft, phi, ground.base, depth)
    }
    if (level.at === 'cap') return pointInside(loft, phi, ground.capSigma(phi), depth)
    return pointInside(loft, phi, over(phi)?.sigmaAt(level.girth) ?? sigmaAtMeridian(loft, phi, level.girth), depth)
  }
  const point = (phi: number, level: Level): Vec3 => inside(phi, level, 0)
  const girth = (phi: number, level: Level): number => {
    if (level.at === 'toe') return girthTo(phi, 'toe') + ground.handed.toeRow - toe
    if (level.at === 'base') return girthTo(phi, 'base')
    return level.at === 'cap' ? input.ends.cap : level.girth
  }
  return {
    toeGirth: (phi) => girthTo(phi, 'toe'),
    point,
    inside,
    locate: (phi, level) => ({ point: point(phi, level), phi, girth: girth(phi, level) }),
  }
}

/** A point `off` m past the toe, straight on down the meridian, `depth` m inside the outer face. */
function beyondToe(ground: Ground, phi: number, off: number, depth: number): Vec3 {
  const p = loftAt(ground.loft, phi, ground.toe)
  const speed = Math.sqrt(p.rSigma * p.rSigma + p.zSigma * p.zSigma)
  const [x, y, z] = pointInside(ground.loft, phi, ground.toe, depth)
  const out = (off * p.rSigma) / speed
  return [x + out * Math.cos(phi), y + out * Math.sin(phi), z + (off * p.zSigma) / speed]
}
