/**
 * The nouns every trade shares: places, parts, flat patterns, rows, joints, openings, checks.
 * All are plain frozen data in SI. Axes x aft, y right of travel, z up. Signed girth is positive on the right.
 */
import type { Bought, RowKind, Side, Surface } from '../definition/types.js'
import type { Worked } from '../quantity/formula.js'
import type { End } from './end-names.js'
import type { EndDrawn, EndJig, SideJig } from './jig-nouns.js'

/** Where something is. `girth` is unsigned, from the crown along the outer mould line; `point` is in space. m. */
export interface Place {
  readonly side: Side
  readonly station: number
  readonly girth: number
  readonly waterline: number
  /** on an end section: which, and the buttock line, right positive; girth is then from the crown down the vertical plane through it */
  readonly end?: { readonly which: End; readonly y: number }
  /** in the floor or under it: the buttock line, right positive. Nothing there lies on the mould line, and girth is 0 */
  readonly buttock?: number
}

/** A closed outline, the last point joining the first; bulge = tan(angle/4), positive anticlockwise. m. */
export type Outline = readonly (readonly [x: number, y: number, bulge: number])[]

/** How a flat pattern lies: what one sees, which way its axes run, and where its origin is on the coach. */
export interface FlatFrame {
  readonly view: 'outside' | 'inside'
  readonly x: 'aft' | 'forward' | 'right' | 'left' | 'down'
  readonly y: 'up' | 'down' | 'right' | 'left' | 'forward' | 'aft'
  /** the pattern's 0,0 on the coach: station and signed girth on the outer mould line, in the floor and under it the buttock line; m */
  readonly origin: { readonly station: number; readonly girth: number; readonly says: string }
}

/** What a hole is punched as. */
export type HoleRole = 'full' | 'pilot' | 'drill'

/** Holes of one pattern as parallel arrays: hole i is fastener `index[i]` of the row `rows[row[i]]`. m. */
export interface HoleSet {
  readonly rows: readonly string[]
  readonly row: readonly number[]
  readonly index: readonly number[]
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly diameter: readonly number[]
  /** what all of them are punched as; full size where nothing is said */
  readonly role?: HoleRole
}

/** A line drawn on a pattern that is neither cut nor hole. */
export interface MarkLine {
  readonly says: string
  readonly kind: 'roll' | 'bend' | 'centre' | 'lap'
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}

/** One developed face at its mid surface. A sheet has one, an I-section has an outer and an inner flange. */
export interface Pattern {
  readonly face: string
  readonly flat: FlatFrame
  readonly thickness: number
  /** the blank as sheared */
  readonly outline: Outline
  /** what is cut out of it, clipped to the outline; a cut that reaches the edge is a notch */
  readonly cuts: readonly { readonly opening: string; readonly outline: Outline }[]
  readonly marks: readonly MarkLine[]
  readonly holes: HoleSet
}

export type PartKind =
  | 'strake'
  | 'frame'
  | 'joint-frame'
  | 'stringer'
  | 'rim'
  | 'header'
  | 'post'
  | 'edge-channel'
  | 'lining'
  | 'trim-ring'
  | 'gore'
  | 'crown-cap'
  | 'end-rib'
  | 'header-ring'
  | 'end-base'
  | 'end-lining'
  | 'floor-panel'
  | 'rail'
  | 'cross-member'
  | 'outrigger'
  | 'wheel-box-header'
  | 'a-frame'
  | 'chassis-plate'
  | 'bay-bearer'
  | 'wheel-box'
  | 'underbelly'

/** Anything made or bought. kg, m, m2. */
export interface Part {
  readonly id: string
  readonly says: string
  readonly trade: 'shell' | 'ends' | 'floor' | 'chassis'
  readonly kind: PartKind
  readonly material: string
  readonly thickness: Bought
  readonly side: Side
  readonly place: Place
  readonly patterns: readonly Pattern[]
  /** net area of the first pattern, m2 */
  readonly area: number
  readonly mass: Worked<'kg'>
  /** centre of mass x, y, z, m */
  readonly centre: readonly [number, number, number]
  /** bought size it is cut from, by name; null where it is not a sheet */
  readonly stock: string | null
  /** separate pieces the cuts leave */
  readonly pieces: number
  readonly notes: readonly string[]
  /** why there is no flat pattern yet: what has to be worked out first, in a sentence */
  readonly notComputed?: string
  /** of a flat sheet bent over curved ribs: how far it stands inside their own shape between them, at its most, m */
  readonly sag?: number
}

/** A stack a fastener goes through, outside to inside. m. */
export interface Stack {
  readonly parts: readonly string[]
  readonly thickness: readonly number[]
  readonly grip: number
  /** bought length and its trade name, e.g. -4-5.5 */
  readonly length: number
  readonly name: string
  readonly count: number
}

/** A stretch of a row between two permanent control points. */
export interface Span {
  readonly from: string
  readonly to: string
  readonly first: number
  readonly count: number
  /** whole spaces between the control points; times the pitch it is the span's length */
  readonly spaces: number
  /** fitted pitch, m */
  readonly pitch: number
}

/** Fasteners of one row as parallel arrays; every fastener is owned by exactly one row. */
export interface FastenerRow {
  readonly id: string
  readonly says: string
  readonly kind: RowKind | 'cap' | 'rib' | 'bolt' | 'screw'
  readonly joint: string
  /** key of the fastener type in the definition */
  readonly fastener: string
  readonly diameter: number
  readonly pitch: number
  readonly spans: readonly Span[]
  /** span index and number within the span of each fastener: the id is row/from-to/number */
  readonly span: readonly number[]
  readonly number: readonly number[]
  readonly station: readonly number[]
  /** signed, right positive, on the outer mould line */
  readonly girth: readonly number[]
  readonly waterline: readonly number[]
  readonly stack: readonly number[]
  readonly stacks: readonly Stack[]
  /** other rows that run through a fastener of this one: fastener index -> row ids */
  readonly shared: Readonly<Record<number, readonly string[]>>
  readonly source: string
  /** rows on an end section: which, and each fastener's azimuth and buttock line */
  readonly end?: { readonly which: End; readonly azimuth: readonly number[]; readonly y: readonly number[] }
  /** rows in the floor and under it: each fastener's buttock line */
  readonly buttock?: readonly number[]
}

export interface Joint {
  readonly id: string
  readonly says: string
  /** layers outside to inside; a layer lists every part it is made of along the joint */
  readonly layers: readonly {
    readonly says: string
    readonly parts: readonly string[]
    readonly material: string
    readonly thickness: number
  }[]
  readonly rows: readonly string[]
  /** lap direction and what it means for water, or null */
  readonly lap: string | null
}

export interface OpeningDerived {
  readonly id: string
  readonly says: string
  readonly surface: Surface | 'wheel'
  readonly side: Side
  readonly place: Place
  /** outline on the developed outer mould line: x station, y signed girth */
  readonly outline: Outline
  readonly open: boolean
  /** where it appears: part ids */
  readonly cutIn: readonly string[]
  readonly rim: { readonly part: string | null; readonly row: string | null; readonly count: number; readonly pitch: number }
  readonly lining: readonly string[]
  readonly trimRing: string | null
  readonly framing: readonly string[]
  readonly cutsFrames: readonly string[]
  readonly crossesSeams: readonly string[]
  /** gap in the blanket by bay, m */
  readonly blanket: readonly { readonly bay: string; readonly from: readonly [number, number]; readonly to: readonly [number, number] }[]
  /** in an end: whether its pane stands rather than lies, what the skin falls away from a flat pane, and its edge in coach axes */
  readonly end?: {
    readonly upright: boolean
    readonly sag: number
    readonly loop: readonly (readonly [number, number, number])[]
  }
}

/** One rib of an end, nose and tail alike. m, rad. */
export interface EndRibFacts {
  readonly id: string
  readonly kind: 'seam' | 'mid'
  /** from the centre line, right positive */
  readonly azimuth: number
  /** outer mould line, crown to toe */
  readonly length: number
  /** of which from the cap's row to the base row */
  readonly capToBase: number
}

/** A gore bent over its ribs without stretching: what that costs. Nulls where it cannot be. m, rad. */
export interface WrappedGoreFacts {
  readonly gore: number
  /** why it cannot be wrapped, where and by how much; null where it can */
  readonly refused: string | null
  /** most that a bending line falls from one edge to the other */
  readonly drop: { readonly most: number; readonly waterline: number } | null
  /** least radius along the bending lines, the corners' fans left out; null where it is flat */
  readonly bend: { readonly radius: number; readonly waterline: number } | null
  /** how far the fans at the cap's and the toe's corners turn the sheet */
  readonly crease: { readonly top: number; readonly foot: number } | null
  /** the radius below which it must be rolled first */
  readonly elastic: Worked<'m'>
  /** how far it lies inside the lofted surface, along the normal, at its deepest */
  readonly inside: { readonly depth: number; readonly azimuth: number; readonly waterline: number } | null
  /** angles at which it meets its neighbours or the barrel, each at its largest */
  readonly kinks: Readonly<Record<'right' | 'left', { readonly angle: number; readonly waterline: number } | null>>
}

/** An end section as lofted, nose and tail alike. m, m2, rad. */
export interface EndsDerived {
  /** tip beyond the joint frame */
  readonly reach: number
  readonly make: 'formed' | 'wrapped'
  /** gores from the right joint to the left one, where they are wrapped */
  readonly wrapped?: readonly WrappedGoreFacts[]
  /** azimuths of the gores' edges from the right joint to the left one */
  readonly edges: readonly number[]
  /** of the whole lofted surface of one end */
  readonly area: number
  readonly centroid: { readonly out: number; readonly waterline: number }
  /** round the outline at WL 0 from joint to joint */
  readonly floorPerimeter: number
  /** outside of the end's own edge at the joint, toe to toe */
  readonly jointEdge: number
  readonly ribs: readonly EndRibFacts[]
  readonly drawn: EndDrawn
  readonly jig: EndJig
  /** the jig of the barrel between the ends */
  readonly sideJig: SideJig
}

export type Verdict = 'pass' | 'fail' | 'caution' | 'not-checked'

/** Demand against capacity. margin = capacity/demand - 1, for a distance available/required - 1, null if unmeasured. */
export interface Check {
  readonly id: string
  readonly says: string
  readonly demand: number | null
  readonly capacity: number | null
  readonly unit: string | null
  readonly margin: number | null
  readonly verdict: Verdict
  readonly source: string
  readonly places: readonly Place[]
  readonly concerns: readonly string[]
  /** what would mend it, or null */
  readonly mend: string | null
  readonly worked: readonly Worked[]
}

export interface SectionPoint {
  readonly id: string
  readonly says: string
  readonly girth: number
  readonly y: number
  readonly z: number
  readonly heading: number
  readonly liningGirth: number
}

/** One sheet of stock and the strakes sheared from it. */
export interface SheetUse {
  readonly stock: string
  readonly parts: readonly string[]
  readonly used: number
  readonly available: number
}

export interface Totals {
  readonly mass: Worked<'kg'>
  readonly masses: Readonly<Record<string, Worked<'kg'>>>
  readonly fasteners: { readonly solid: number; readonly blind: number; readonly byLength: Readonly<Record<string, number>> }
  readonly holes: number
  readonly sheets: readonly SheetUse[]
  readonly overallLength: number
  readonly bodyLength: number
  readonly overallWidth: number
}
