/** What closes the openings: each a pane on the mould line with its outline; a wheel opening has none. */
import type { Design } from '../../derive/design.js'
import type { OpeningDerived } from '../../derive/nouns.js'
import type { Shell } from '../../derive/shell/index.js'
import type { Vec3 } from '../../maths/vec.js'
import { bendsBetween, onChain } from './barrel-sheets.js'
import { lay, meshOf, newDraft } from './build.js'
import type { Mesh } from './nouns.js'
import { regionOf, ringOf } from './region.js'

/** Null for what stands open. */
export function paneMesh({ section }: Shell, opening: OpeningDerived): Mesh | null {
  const draft = newDraft()
  if (opening.end) {
    const { loop } = opening.end
    const sum = loop.reduce<Vec3>((s, p) => [s[0] + p[0], s[1] + p[1], s[2] + p[2]], [0, 0, 0])
    const middle: Vec3 = [sum[0] / loop.length, sum[1] / loop.length, sum[2] / loop.length]
    draft.points.push(middle, ...loop)
    loop.forEach((p, i) => {
      const next = (i + 1) % loop.length
      draft.triangles.push(0, i + 1, next + 1)
      draft.lines.push(p, loop[next])
    })
    const mesh = meshOf(draft)
    // a pane is flat, and looks one way all over
    for (let i = 3; i < mesh.normals.length; i++) mesh.normals[i] = mesh.normals[i % 3]
    return mesh
  }
  if (opening.open || opening.outline.length === 0) return null
  const ring = ringOf(opening.outline, 8)
  const girths = ring.map(([, girth]) => girth)
  const bends = bendsBetween(section.withFlange, Math.min(...girths), Math.max(...girths))
  lay(draft, regionOf([ring], bends, []), (station, girth) => onChain(section.withFlange, station, girth, 0))
  return meshOf(draft)
}

/** Where an opening stands for drawing apart: the middle of its outline, m. */
export function paneCentre({ section }: Shell, { place, end, side }: Design['openings'][number]): Vec3 {
  if (end) return [place.station, place.end?.y ?? 0, place.waterline]
  return onChain(section.withFlange, place.station, (side === 'left' ? -1 : 1) * place.girth, 0)
}
