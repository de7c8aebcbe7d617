/** One line of a ripple: what it says, and what it is about, so that whoever reads it can go there. */
export type TargetKind = 'written' | 'check' | 'opening' | 'part' | 'row' | 'case' | 'document'

export interface Target {
  readonly kind: TargetKind
  /** of a written value its path, of a document its path in the packet */
  readonly id: string
}

export interface RippleLine {
  /** 0 for a heading */
  readonly indent: number
  readonly says: string
  /** the first is where one would look first */
  readonly about: readonly Target[]
}

export const line = (says: string, about: readonly Target[] = [], indent = 1): RippleLine => ({ indent, says, about })

export const targets = (kind: TargetKind, ids: readonly string[]): readonly Target[] => ids.map((id) => ({ kind, id }))
