/** The live figures of the sheets as plain data: SI numbers to draw by, and the words that stand beside them in the units asked for. */
import type { Verdict } from '../../derive/nouns.js'
import type { NotComputed } from '../../derive/road-nouns.js'
import type { BlanksInput } from '../../studies/blanks/shape.js'
import type { Answer } from '../nouns.js'

export type At = Answer['at']
/** What cannot be drawn says why. */
export type OrNot<T> = T | NotComputed

/** One bar: `value` on its axis, words at its end; `working` is the id of the figure it opens. */
export interface Bar {
  readonly says: string
  readonly value: number
  readonly words: string
  readonly verdict: Verdict | null
  readonly working: string
}

export interface CaseBars {
  readonly id: string
  readonly says: string
  /** a case the coach is designed for; the others are ways it may not be stowed */
  readonly isDesign: boolean
  /** of the whole weight */
  readonly share: Bar
  /** load over rating, one of axles that are loaded and rated alike */
  readonly axles: readonly Bar[]
}

export interface WeightBars {
  readonly band: { readonly least: number; readonly most: number; readonly says: string }
  /** where the axes end: a share of the weight, a share of the rating */
  readonly ends: { readonly share: number; readonly axle: number }
  readonly cases: readonly CaseBars[]
}

/** The room at a place, in a sentence. m, kg. */
export interface RoomHere {
  readonly x: number
  readonly y: number
  /** null where nothing stops it */
  readonly mass: number | null
  readonly says: string
  readonly at: At
}

export interface RoomMap {
  /** x, y, x, y …: what is walked on, and the body round it. m */
  readonly floor: readonly number[]
  readonly body: readonly (readonly number[])[]
  /** side of a square, m */
  readonly cell: number
  /** from the least room to the most; `squares` are middles x, y, x, y … */
  readonly bands: readonly { readonly says: string; readonly squares: readonly number[] }[]
  /** the figure itself at places far enough apart to be read */
  readonly soundings: readonly { readonly x: number; readonly y: number; readonly words: string }[]
  /** along the centre line, what stops it */
  readonly stops: readonly { readonly from: number; readonly to: number; readonly says: string }[]
  /** places the definition names */
  readonly places: readonly { readonly x: number; readonly y: number; readonly says: string; readonly words: string }[]
  /** the middle of the floor, where a point stands first */
  readonly start: readonly [x: number, y: number]
}

export interface SwayLine {
  readonly case: string
  readonly says: string
  /** km/h or mph, and share of critical; null where nothing swings */
  readonly points: readonly (readonly [speed: number, damping: number | null])[]
  readonly isWorst: boolean
  readonly atStated: string
  readonly limit: string
  readonly working: string
}

export interface SwayFigure {
  readonly cars: readonly { readonly id: string; readonly says: string }[]
  readonly car: string
  readonly verdict: Verdict | null
  readonly speed: { readonly unit: string; readonly from: number; readonly to: number; readonly ticks: readonly number[] }
  readonly damping: { readonly from: number; readonly to: number; readonly ticks: readonly number[] }
  /** the speed dampings are stated at, on the axis and in words */
  readonly stated: { readonly at: number; readonly says: string }
  readonly lines: readonly SwayLine[]
}

/** A gore laid flat, x down and y across as its pattern is drawn. m. */
export interface GoreFlat {
  readonly part: string
  readonly says: string
  readonly outline: readonly number[]
  readonly holes: readonly number[]
  /** for each level, from the least, what lies above it: x, y of four corners, one after the other */
  readonly above: readonly (readonly number[])[]
  readonly figures: readonly { readonly says: string; readonly words: string }[]
  /** why there is nothing to colour; null where there is */
  readonly why: string | null
  readonly at: At
}

export interface GoresFigure {
  readonly end: 'nose' | 'tail'
  readonly make: 'formed' | 'wrapped'
  /** what the colour is of */
  readonly measure: string
  /** words of each band between levels, the least first; none before anything is worked out */
  readonly bands: readonly string[]
  readonly gores: readonly GoreFlat[]
  /** what has to be worked out first, and what it hangs on; null where nothing has to */
  readonly needs: { readonly key: string; readonly input: BlanksInput } | null
}

export interface FlatNamed {
  readonly part: string
  readonly face: string
  readonly says: string
  readonly holes: number
}

/** A flat pattern with its holes. m, in the pattern's own axes. */
export interface FlatShown extends FlatNamed {
  readonly frame: string
  readonly box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number }
  readonly contours: readonly (readonly number[])[]
  readonly windows: readonly { readonly says: string; readonly outline: readonly number[] }[]
  /** x0, y0, x1, y1 … of lines that are neither cut nor hole */
  readonly marks: readonly number[]
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly diameter: readonly number[]
}

/** The same fastener in another sheet; `hole` is null where that sheet has no flat pattern yet. */
export interface Mate {
  readonly part: string
  readonly says: string
  readonly face: string | null
  readonly hole: number | null
  readonly words: string
}

export interface HoleShown {
  readonly hole: number
  readonly id: string
  readonly address: string
  readonly says: string
  readonly mates: readonly Mate[]
  readonly at: At
}

export interface LinesRow {
  /** a place that has a name; null at a step */
  readonly name: string | null
  readonly girth: string
  readonly own: string
  readonly buttock: string
  readonly waterline: string
  readonly normal: string
  /** on the surface that was asked for, m */
  readonly y: number
  readonly z: number
  /** unit normal, outward */
  readonly out: readonly [y: number, z: number]
  readonly working: string | null
}

export interface LinesFigure {
  readonly unit: string
  readonly surfaces: readonly { readonly id: string; readonly says: string }[]
  readonly surface: string
  readonly steps: readonly { readonly id: string; readonly says: string }[]
  readonly step: string
  /** half sections y, z, y, z …: on the mould line and on the surface asked for. m */
  readonly mould: readonly number[]
  readonly inner: readonly number[]
  /** x outward from the joint, z; and the reach */
  readonly profile: readonly number[]
  readonly rows: readonly LinesRow[]
  readonly sentence: string
}
