/** One formed panel as a patch of its mid surface, with the way from a place on the coach to the patch's u and v. */
import type { Patch } from '../../maths/blank/mesh.js'
import type { OnSheet } from './shape.js'

export interface Panel {
  /** gore-1 … or cap; its own left-hand twin goes by the same one */
  readonly id: string
  readonly kind: 'gore' | 'cap'
  /** of a gore, from the right joint */
  readonly number: number
  readonly patch: Patch
  readonly onSheet: (u: number, v: number) => OnSheet
  readonly locate: (on: OnSheet) => readonly [u: number, v: number]
  /** girth from the crown down the mid rib (of the cap: down the centre line) at v, past the toe straight on */
  readonly girthAt: (v: number) => number
}
