/**
 * How far inside the mould line a gore lies where it is bent over its ribs and not stretched: as it is, where the ends are wrapped, and
 * as it would be, where they are formed. A gore that no flat sheet wraps has no such distance.
 */
import { gorePart } from '../../derive/end-names.js'
import type { LocalEnd } from '../../derive/ends/local.js'
import { sheetAtHeight, sheetTop } from '../../derive/ends/wrapped-cut.js'
import { ownPhi } from '../../derive/ends/wrapped-skin.js'
import { type WrappedGore, wrappedGores } from '../../derive/ends/wrapped-strip.js'
import type { Derived } from '../../derive/index.js'
import { depthInside } from '../../maths/loft.js'
import type { Mesh, Space } from './nouns.js'

const GORES = new WeakMap<LocalEnd, readonly WrappedGore[]>()

/** A formed end's gores as if they were wrapped take a fifth of a second: once for an end, and only when somebody asks. */
function goresOf(local: LocalEnd): readonly WrappedGore[] {
  const known = local.wrapped?.gores ?? GORES.get(local) ?? wrappedGores(local.ground)
  GORES.set(local, known)
  return known
}

const FIELDS = new WeakMap<Mesh, Float32Array>()

/** By part, at each corner of its mesh, m. */
export function gapsOf({ endSections, definition }: Derived, { parts }: Space): ReadonlyMap<string, Float32Array> {
  const { local } = endSections
  const gores = goresOf(local)
  const found = new Map<string, Float32Array>()
  for (const { joint, station } of definition.frames) {
    if (!joint) continue
    for (const gore of gores) {
      const part = parts.find(({ id }) => id === gorePart(joint, gore.number))
      if (!part || !gore.sheet) continue
      const field = FIELDS.get(part.mesh) ?? fieldOf(local, gore, part.mesh, joint === 'nose' ? -1 : 1, station)
      FIELDS.set(part.mesh, field)
      found.set(part.id, field)
    }
  }
  return found
}

function fieldOf({ ground }: LocalEnd, gore: WrappedGore, { positions }: Mesh, out: 1 | -1, joint: number): Float32Array {
  const { sheet } = gore
  const field = new Float32Array(positions.length / 3)
  if (!sheet) return field
  const [right, left] = [ground.edges[gore.number - 1], ground.edges[gore.number]]
  const foot = Math.max(...[sheet.strip.rulings[sheet.strip.rulings.length - 1]].flatMap(({ from, to }) => [from[2], to[2]]))
  for (let i = 0; i < field.length; i++) {
    const [x, y, z] = [out * (positions[3 * i] - joint), positions[3 * i + 1], positions[3 * i + 2]]
    // on its laps a sheet lies as at its edge
    const phi = ownPhi(gore, Math.min(right, Math.max(left, Math.atan2(y, x))))
    const height = Math.min(sheetTop(sheet, phi).point[2], Math.max(foot, z))
    field[i] = Math.max(0, depthInside(ground.loft, sheetAtHeight(sheet, phi, height).point))
  }
  return field
}
