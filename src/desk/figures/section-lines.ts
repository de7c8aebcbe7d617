/** The lines of the barrel: section and profile, and the table of points a shop marks out from, on any surface and at any step. */
import type { Subject } from '../../checks/explain/entry.js'
import { barrelSurfaces } from '../../checks/explain/surfaces.js'
import { fixed, lengthNumber, lengthUnit, lengthWords } from '../../documents/drawing/units.js'
import { at, girthAtOffset } from '../../maths/tangent-chain.js'
import type { UnitSystem } from '../../quantity/format.js'
import type { LinesFigure, LinesRow } from './nouns.js'

/** Steps a person lays a tape by, m; the first is none: only the places that have names. */
const STEPS: Readonly<Record<UnitSystem, readonly (readonly [id: string, step: number])[]>> = {
  metric: [
    ['50 mm', 0.05],
    ['100 mm', 0.1],
    ['200 mm', 0.2],
  ],
  inch: [
    ['1 in', 0.0254],
    ['2 in', 0.0508],
    ['4 in', 0.1016],
    ['8 in', 0.2032],
  ],
}
const NAMED = 'named'
/** The curve is drawn through so many points. */
const DRAWN = 160

/** A surface or a step that is not one of those offered is the first of them. */
export function sectionLines({ derived }: Subject, surface: string, step: string, units: UnitSystem): LinesFigure {
  const { chain } = derived.shell.section
  const { points } = derived.section
  const surfaces = barrelSurfaces(derived)
  const chosen = surfaces.find(({ id }) => id === surface) ?? surfaces[0]
  const every = STEPS[units].find(([id]) => id === step)
  const curve = (depth: number): readonly number[] =>
    Array.from({ length: DRAWN + 1 }, (_, i) => at(chain, (chain.length * i) / DRAWN, depth)).flatMap(({ y, z }) => [y, z])
  const stops = every ? Array.from({ length: Math.floor(chain.length / every[1] + 1e-9) + 1 }, (_, i) => i * every[1]) : []
  const named = points.map(({ id, says, girth }) => ({ girth, name: says, id }))
  const between = stops.filter((girth) => named.every((each) => Math.abs(each.girth - girth) > 1e-9))
  const rows = [...named, ...between.map((girth) => ({ girth, name: null, id: null }))].sort((a, b) => a.girth - b.girth)
  const row = ({ girth, name, id }: (typeof rows)[number]): LinesRow => {
    const { y, z, heading } = at(chain, girth, chosen.depth)
    const own = girthAtOffset(chain, girth, chosen.depth)
    return {
      ...{ name, girth: lengthNumber(girth, units), own: lengthNumber(own, units) },
      ...{ buttock: lengthNumber(y, units), waterline: lengthNumber(z, units), y, z },
      // the normal leans as far from upright as the section has turned from level
      normal: fixed(90 - (heading * 180) / Math.PI, 2),
      out: [Math.sin(heading), Math.cos(heading)],
      working: id === null ? null : `section.girth-at.${id}`,
    }
  }
  return {
    unit: lengthUnit(units),
    surfaces: surfaces.map(({ id, says, depth }) => ({ id, says: depth === 0 ? says : `${says}, ${lengthWords(depth, units, 1)} in` })),
    surface: chosen.id,
    steps: [{ id: NAMED, says: 'named places only' }, ...STEPS[units].map(([id]) => ({ id, says: `every ${id} of girth` }))],
    step: every?.[0] ?? NAMED,
    mould: curve(0),
    inner: chosen.depth === 0 ? [] : curve(chosen.depth),
    profile: derived.ends.drawn.profile.flat(),
    rows: rows.map(row),
    sentence: `Half girth ${lengthWords(chain.length, units)} crown to toe on the mould line${chosen.depth === 0 ? '' : `, ${lengthWords(girthAtOffset(chain, chain.length, chosen.depth), units)} on the ${chosen.says}`}; ${lengthWords(derived.section.width, units)} wide; the ends reach ${lengthWords(derived.ends.reach, units)} past their joint frames.`,
  }
}
