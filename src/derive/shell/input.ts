/**
 * The shell: section, barrel sheets, frames, openings, lining, and every fastener that joins them.
 *
 * Axes x aft (station), y right of travel, z up. Signed girth: positive on the right, on the outer mould line (OML).
 * Covers the barrel between the nose and tail joint frames. Does NOT cover: the doubly curved end sections, bonding,
 * sealant, drip and rub rails, or any strength of the whole body.
 */
import type { Definition } from '../../definition/types.js'

/** The slice of a definition that the shell depends on. */
export type ShellInput = Pick<
  Definition,
  'section' | 'frames' | 'shell' | 'lining' | 'fasteners' | 'rows' | 'rules' | 'openings' | 'gear' | 'floor' | 'ends' | 'stock'
>

/** The barrel as stations, m. */
export interface Barrel {
  readonly first: number
  readonly last: number
  /** strake edges beyond the joint frames' centre lines */
  readonly x0: number
  readonly x1: number
}

export function barrelOf(input: ShellInput): Barrel {
  const first = input.frames[0].station
  const last = input.frames[input.frames.length - 1].station
  const half = input.shell.joint.overlap / 2
  return { first, last, x0: first - half, x1: last + half }
}
