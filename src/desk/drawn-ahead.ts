/** The drawing a coach is opened with, as plain data that goes over as text; made by first-drawing.ts. */
import type { Elevation, State } from './nouns.js'

export interface FirstDrawing {
  readonly state: State
  /** m, to a tenth of a millimetre: a screen shows no more, and the whole drawing follows */
  readonly elevation: Omit<Elevation, 'rivets'> & { readonly rivets: readonly number[] }
}

export const asElevation = ({ elevation }: FirstDrawing): Elevation => ({ ...elevation, rivets: Float32Array.from(elevation.rivets) })
