/**
 * The coach in space as plain arrays: what the screen draws when a person would rather look than read.
 * Axes of the coach: x aft (station), y right of travel, z up (waterline). m, kg.
 */
export type SpaceLayer = 'skin' | 'panes' | 'frames' | 'lining' | 'floor' | 'chassis' | 'wheels' | 'tanks'

/** Triangles with their corners' normals, and the lines drawn in ink. */
export interface Mesh {
  /** x, y, z of each corner, m */
  readonly positions: Float32Array
  /** unit normal of each corner */
  readonly normals: Float32Array
  /** three corners a triangle */
  readonly index: Uint32Array
  /** x, y, z of both ends of each line, m */
  readonly lines: Float32Array
  /** of each corner and of each line's ends: 1 where a neighbour laps over it */
  readonly under: Uint8Array
  readonly linesUnder: Uint8Array
}

/** One thing to be looked at. */
export interface SpacePart {
  readonly id: string
  /** what chosen anywhere else means this: the frame of a frame's part, the opening of a pane */
  readonly thing: string
  readonly says: string
  readonly layer: SpaceLayer
  readonly material: string | null
  /** kg; null for what is drawn and is no part of the design: a pane, a wheel, a tank */
  readonly mass: number | null
  /** how many layers lie outside it: what lies a sheet's thickness behind another is told from it only so, at the scale of a coach */
  readonly under: number
  /** where it goes when the coach is drawn apart, m */
  readonly apart: readonly [number, number, number]
  /** the least margin of the checks that name it, as a share; null where none measures it */
  readonly margin: number | null
  readonly mesh: Mesh
}

/** Every rivet: place and outward normal, one after the other. m. */
export interface RivetsInSpace {
  readonly positions: Float32Array
  readonly normals: Float32Array
  /** of the head */
  readonly radius: Float32Array
  /** which of `parts` it goes with when the coach is drawn apart: the outermost sheet of its stack; -1 where that is not drawn */
  readonly part: Int32Array
}

/** The body as a rounded box: stations of the joints, how far the ends reach beyond them, half the width, the height of its middle and half of it. m */
export interface Body {
  readonly nose: number
  readonly tail: number
  readonly reach: number
  readonly half: number
  readonly middle: number
  readonly rise: number
}

export interface Space {
  readonly body: Body
  readonly parts: readonly SpacePart[]
  readonly rivets: RivetsInSpace
}
