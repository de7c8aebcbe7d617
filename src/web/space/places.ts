/** Places of what is shown, where drawing apart has put them: what a picture must hold. */

import type { Vec3 } from '../../maths/vec.js'
import type { SpaceLayer } from '../../studies/space/nouns.js'
import type { PartHeld } from './held.js'

/** Every so many corners are enough to find the edge of a coach by. */
const EVERY = 3

export function* placesOf(parts: readonly PartHeld[], layers: ReadonlySet<SpaceLayer | 'rivets'>, apart: number): Generator<Vec3> {
  for (const { layer, mesh, apart: to } of parts) {
    if (!layers.has(layer)) continue
    const { positions } = mesh
    for (let i = 0; i < positions.length; i += 3 * EVERY)
      yield [positions[i] + apart * to[0], positions[i + 1] + apart * to[1], positions[i + 2] + apart * to[2]]
  }
}
