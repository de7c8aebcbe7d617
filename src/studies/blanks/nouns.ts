/** What the study of formed blanks says: plain data. Lengths m, strains and shares as plain numbers, stretch positive. */
import type { Check, FlatFrame, HoleSet, MarkLine, Outline, Place } from '../../derive/nouns.js'

/** A part made from a blank, with its own pattern: turned over, with its own rows and openings. */
export interface BlankPart {
  readonly part: string
  /** the blank as drawn is turned over for it */
  readonly turned: boolean
  readonly flat: FlatFrame
  readonly outline: Outline
  /** all pilots: drilled out where they lie when the panel is on the jig */
  readonly holes: HoleSet
  readonly marks: readonly MarkLine[]
}

/** Strain at the nodes of the blank, for a picture: node j (across + 1) + i, as drawn for the first part. */
export interface StrainField {
  readonly across: number
  readonly along: number
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly major: readonly number[]
  readonly minor: readonly number[]
}

export interface FormedBlank {
  /** gore-1 … or cap */
  readonly panel: string
  readonly says: string
  readonly parts: readonly BlankPart[]
  /** of the rectangle round the blank */
  readonly length: number
  readonly width: number
  /** the least stock sheet it is cut from, null where none is large enough */
  readonly stock: string | null
  readonly thickness: number
  readonly areaFlat: number
  readonly areaFormed: number
  readonly stretch: {
    readonly peak: number
    readonly mean: number
    /** of the first part; `girth` down the mid rib, `aside` from it across the blank */
    readonly place: Place
    readonly girth: number
    readonly aside: number
    /** on the blank as drawn for the first part */
    readonly at: readonly [x: number, y: number]
    readonly says: string
  }
  readonly shrink: number
  readonly leastThickness: number
  /** strain the sheet gives back when the press lets go, and the share of the blank that is stretched less than that */
  readonly springback: { readonly elastic: number; readonly share: number; readonly says: string }
  readonly field: StrainField
  readonly checks: readonly Check[]
}

export interface BlankStudy {
  readonly blanks: readonly FormedBlank[]
  /** panels that have no blank, and why */
  readonly waiting: readonly { readonly part: string; readonly says: string }[]
  readonly says: readonly string[]
}
