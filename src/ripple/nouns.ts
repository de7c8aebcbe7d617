/**
 * What changed between two designs: plain data, everything by the ids both share. Lists hold only what differs.
 * SI: lengths m, masses kg, forces N. `before` and `after` change places when the designs do, and so do added and removed.
 */
import type { Side } from '../definition/types.js'
import type { Place, Verdict } from '../derive/nouns.js'

export interface Both<T> {
  readonly before: T
  readonly after: T
}

/** What came and what went, by name. */
export interface Swap {
  readonly added: readonly string[]
  readonly removed: readonly string[]
}

/** One value of the written definition; null where it is not written. */
export interface WrittenChange extends Both<string | number | boolean | null> {
  readonly path: string
}

export interface PartTold {
  readonly id: string
  readonly says: string
  readonly kind: string
  readonly side: Side
  readonly place: Place
  readonly material: string
  /** as it is bought */
  readonly thickness: string
  /** kg */
  readonly mass: number
}

/** Holes of one row in one face. Matched within a span by nearest, then within the row by less than a pitch. */
export interface HolesChange {
  readonly row: string
  readonly added: number
  readonly removed: number
  readonly moved: number
  /** greatest distance a hole moved in the flat, m */
  readonly by: number
  /** holes that stay but change their diameter */
  readonly resized: number
}

export interface CutChange {
  readonly opening: string
  readonly status: 'added' | 'removed' | 'changed'
  /** greatest distance between the old edge and the new, m */
  readonly by: number | null
}

/** One developed face of a part that stays. */
export interface FaceChange {
  readonly face: string
  /** the blank: greatest distance between the old edge and the new, and its width and height, m; null where it stays */
  readonly outline: { readonly by: number; readonly width: Both<number>; readonly height: Both<number> } | null
  readonly cuts: readonly CutChange[]
  readonly holes: readonly HolesChange[]
  /** roll, bend, centre and lap lines differ */
  readonly marks: boolean
  /** how the pattern lies on the coach differs: its origin or its axes */
  readonly lies: boolean
}

export interface PartChange {
  readonly id: string
  readonly says: string
  readonly kind: string
  readonly side: Side
  readonly material: Both<string> | null
  /** as it is bought */
  readonly thickness: Both<string> | null
  readonly stock: Both<string | null> | null
  readonly pieces: Both<number> | null
  /** kg */
  readonly mass: Both<number> | null
  /** how far the centre of mass moved, m */
  readonly centre: number | null
  readonly place: Both<Place> | null
  readonly faces: readonly FaceChange[]
  readonly notes: Swap
  /** what it is called */
  readonly called: Both<string> | null
  /** the greatest distance any edge or hole of it moved in the flat, m */
  readonly most: number
}

/** Fasteners of one row through the same parts. A null is a stack the design does not have. */
export interface StackChange {
  readonly row: string
  readonly through: readonly string[]
  readonly count: Both<number>
  /** trade name of the length bought */
  readonly length: Both<string | null>
  /** m */
  readonly grip: Both<number | null>
}

export interface JointChange {
  readonly id: string
  readonly says: string
  readonly layers: readonly {
    readonly says: string
    readonly parts: Swap
    readonly material: Both<string | null> | null
    /** m */
    readonly thickness: Both<number | null> | null
  }[]
  readonly lap: Both<string | null> | null
  readonly rows: Swap
  readonly stacks: readonly StackChange[]
}

export interface RowChange {
  readonly id: string
  readonly says: string
  readonly kind: string
  readonly status: 'added' | 'removed' | 'changed'
  readonly fastener: Both<string | null>
  readonly solid: boolean
  readonly count: Both<number>
  /** spans between control points that are in one design only, those whose pitch was fitted anew, and by how much at most, m */
  readonly spans: Swap & { readonly refitted: readonly string[]; readonly by: number }
  /** strength of the weakest sheet under one fastener of the most usual stack, N; null where it stays or no table has it */
  readonly bearing: Both<number> | null
  /** lengths are bought by name: those in one design only */
  readonly lengths: Swap
}

export interface Tally extends Both<number> {
  readonly name: string
}

export interface OpeningChange {
  readonly id: string
  readonly says: string
  readonly status: 'added' | 'removed' | 'changed'
  readonly place: Both<Place | null>
  /** how far the place moved along station and girth, m; null where it came or went or stays */
  readonly moved: { readonly station: number; readonly girth: number; readonly waterline: number } | null
  /** width and height of its outline, m */
  readonly size: Both<readonly [number, number] | null> | null
  readonly cutsFrames: Swap
  readonly crossesSeams: Swap
  readonly framing: Swap
  readonly cutIn: Swap
  readonly lining: Swap
}

/** A finding: a check that does not pass. */
export interface FindingTold {
  readonly id: string
  readonly says: string
  readonly verdict: Verdict
  /** what it was in the other design; null where that has no such check */
  readonly other: Verdict | null
  readonly margin: number | null
  readonly places: readonly Place[]
  readonly concerns: readonly string[]
  readonly mend: string | null
}

export interface MarginChange {
  readonly id: string
  readonly says: string
  readonly verdict: Both<Verdict>
  readonly margin: Both<number | null>
  readonly mend: string | null
}

/** What a load case weighs and where it rests; null where a design does not have the case. kg, and the hitch's share of the weight. */
export interface LoadChange {
  readonly case: string
  readonly says: string
  /** one the coach is designed for */
  readonly design: boolean
  readonly mass: Both<number | null>
  readonly hitch: Both<number | null>
  readonly share: Both<number | null>
  /** the heaviest axle */
  readonly axle: Both<number | null>
}

export interface DocumentChange {
  /** in the packet */
  readonly path: string
  readonly says: string
  readonly status: 'reissue' | 'new' | 'withdraw'
  /** names of parts, rows, openings and checks that show differently on it, and words for what has no id */
  readonly because: readonly string[]
  /** nothing on it changed but the small figure that shows where it sits */
  readonly onlyFigure: boolean
}

export interface Ripple {
  readonly coach: Both<{ readonly name: string; readonly revision: string; readonly market: string }>
  /** the same revision: the same coach to the last figure */
  readonly equal: boolean
  readonly written: readonly WrittenChange[]
  readonly checks: {
    /** findings that are new or worse */
    readonly appeared: readonly FindingTold[]
    /** findings that went or are less */
    readonly gone: readonly FindingTold[]
    readonly margins: readonly MarginChange[]
    /** checks that pass and are asked in one design only, by id */
    readonly asked: Swap
  }
  readonly openings: readonly OpeningChange[]
  readonly parts: { readonly added: readonly PartTold[]; readonly removed: readonly PartTold[]; readonly changed: readonly PartChange[] }
  readonly joints: {
    readonly added: readonly { readonly id: string; readonly says: string }[]
    readonly removed: readonly { readonly id: string; readonly says: string }[]
    readonly changed: readonly JointChange[]
  }
  readonly counts: {
    readonly solid: Both<number>
    readonly blind: Both<number>
    readonly holes: Both<number>
    readonly parts: Both<number>
    /** by fastener type and bought length */
    readonly lengths: readonly Tally[]
    readonly rows: readonly RowChange[]
    /** fasteners by kind of row */
    readonly kinds: readonly Tally[]
    /** parts by kind */
    readonly made: readonly Tally[]
    readonly sheets: readonly Tally[]
  }
  /** kg */
  readonly masses: { readonly total: Both<number>; readonly kinds: readonly Tally[] }
  /** weight and balance; unloaded and what may still be carried, kg, null where they stay */
  readonly loads: {
    readonly unloaded: Both<number | null> | null
    readonly capacity: Both<number | null> | null
    readonly cases: readonly LoadChange[]
  }
  /** lengths, widths and girths of the whole coach, m */
  readonly overall: readonly Tally[]
  /** what lies deeper under the outer mould line than before, which stays; m, negative is outward */
  readonly inward: readonly { readonly what: string; readonly by: number }[]
  readonly documents: readonly DocumentChange[]
}
