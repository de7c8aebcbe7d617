/**
 * What jigs are set by and ends are drawn from: contours, locators, diagonals and lines of a surface. Plain frozen data, SI.
 * Axes of the end jig: origin at the joint plane, on the centre plane, at WL 0; x outward, y right of travel, z up. Nose and
 * tail are built on it alike. The roof-and-side jig keeps the coach's own axes.
 */
import type { Side } from '../definition/types.js'
import type { Outline } from './nouns.js'

export type Point3 = readonly [x: number, y: number, z: number]

/** A place of a contour: r outward from the crown's axis in the rib's plane, z the waterline. m, rad. */
export interface ContourMark {
  readonly says: string
  readonly kind: 'row' | 'level' | 'rib end' | 'waterline'
  readonly r: number
  readonly z: number
  /** outward normal of the contour in its plane, up from level */
  readonly rise: number
}

/** Where a rib bears on the jig, right-hand rib. m, rad. */
export interface RibLocator extends ContourMark {
  /** in the axes of the end jig */
  readonly point: Point3
  /** on the nose and on the tail, stations of the coach */
  readonly station: { readonly nose: number; readonly tail: number }
}

export interface Bevel {
  /** skin against square to the rib's plane; positive opens the flange on the rivets' side of the web */
  readonly angle: number
  readonly z: number
}

/** One right-hand or centre rib with its twin: the plane of its web, at the outer face of its flange. m, rad. */
export interface RibJig {
  /** as `EndRibFacts.id`: the right-hand rib and its left twin; one alone stands on the centre line */
  readonly ribs: readonly string[]
  readonly kind: 'seam' | 'mid'
  readonly azimuth: number
  /** of the outer face inside the mould line, along the normal */
  readonly depth: number
  /** of the web's plane beside the plane of the rivets, toward the joint on its own hand */
  readonly beside: number
  /** of the rib, outer face to inner face, in the web's plane */
  readonly height: number
  /** from the cap's row to the toe, points no farther apart than `spacing`, joined by arcs; r, z and the bulge of each arc */
  readonly outer: Outline
  readonly inner: Outline
  readonly spacing: number
  /** length along the outer contour from the cap's row, at each of its points */
  readonly run: readonly number[]
  readonly bevel: readonly number[]
  readonly leastBevel: Bevel
  readonly greatestBevel: Bevel
  /** outer flange at its own mid surface from the header ring to the base, no opening in the way */
  readonly flangeLength: number
  readonly marks: readonly ContourMark[]
  readonly locators: readonly RibLocator[]
}

/** A frame's bearing on a jig: right side; the left one mirrors it. m, rad. */
export interface FrameLocator {
  readonly id: string
  readonly says: string
  readonly y: number
  readonly z: number
  /** of the face inside the outer mould line */
  readonly depth: number
  /** outward normal up from level */
  readonly rise: number
}

/** A taped check: the same distance on both hands. m. */
export interface Diagonal {
  readonly id: string
  readonly from: string
  readonly to: string
  /** from the right-hand start to the left-hand finish, and the other way */
  readonly right: number
  readonly left: number
}

export interface JigTolerance {
  /** of a locator from the jig's datum, either way, m */
  readonly locator: number
  /** of a diagonal from its figure, and of one hand from the other, m */
  readonly diagonal: number
  readonly between: number
  readonly source: string
}

export interface EndJig {
  readonly ribs: readonly RibJig[]
  /** the joint frame's outer face, in the joint plane */
  readonly joint: readonly FrameLocator[]
  readonly jointStation: { readonly nose: number; readonly tail: number }
  readonly thickness: { readonly end: number; readonly barrel: number }
  readonly diagonals: readonly Diagonal[]
  readonly tolerance: JigTolerance
}

/** The jig the barrel's frames, roof and sides are riveted on. m. */
export interface SideJig {
  readonly frames: readonly { readonly id: string; readonly station: number; readonly fromFirst: number; readonly kind: 'hoop' | 'joint' }[]
  readonly hoop: readonly FrameLocator[]
  readonly joint: readonly FrameLocator[]
  readonly diagonals: readonly Diagonal[]
  readonly tolerance: JigTolerance
}

/** A line of an end's outer mould line in the axes of the end jig. */
export interface EndLine {
  readonly id: string
  readonly says: string
  /** edges of gores at the joints, seams, middles of gores (all from the cap's row to the toe, in equal shares), and lines round the end */
  readonly kind: 'joint' | 'seam' | 'mid' | 'cap' | 'floor' | 'toe'
  readonly side: Side
  readonly points: readonly Point3[]
}

/** What an end looks like: its lines, and its outlines square on. m. */
export interface EndDrawn {
  readonly lines: readonly EndLine[]
  /** from the side, crown to toe: x outward, z */
  readonly profile: readonly (readonly [number, number])[]
  /** from above, from the right joint round the tip to the left one: x outward, y */
  readonly plan: readonly (readonly [number, number])[]
}
