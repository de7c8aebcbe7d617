/** The picture in words: what one part is, and what is shown, for whoever cannot see it. */
import { formatLength, formatMass, type UnitSystem } from '../../quantity/format.js'
import { margin as marginWords } from '../../ripple/words.js'
import type { SpaceLayer, SpacePart } from '../../studies/space/nouns.js'
import type { ColourBy } from './colour.js'
import type { CutWay } from './cut.js'

export function sayPart(
  { says, material, mass, margin }: Pick<SpacePart, 'says' | 'material' | 'mass' | 'margin'>,
  units: UnitSystem,
): string {
  return [
    says,
    ...(material === null ? [] : [material]),
    ...(mass === null ? [] : [formatMass(mass, units, { decimals: mass < 1 ? 3 : 2 })]),
    ...(margin === null ? [] : [`least margin ${marginWords(margin)}`]),
  ].join(', ')
}

const LINE: Readonly<Record<CutWay, string>> = { along: 'BL', across: 'STA', level: 'WL' }

/** `STA 4210.0 mm`: where a cut stands, as the trade says it. */
export const sayCut = (way: CutWay, at: number, units: UnitSystem): string =>
  `${LINE[way]} ${formatLength(at, units, { decimals: units === 'inch' ? 2 : 0 })}`

export interface Shown {
  readonly layers: ReadonlySet<SpaceLayer | 'rivets'>
  readonly parts: readonly Pick<SpacePart, 'layer'>[]
  readonly rivets: number
  /** share of the way apart */
  readonly apart: number
  readonly cut: { readonly way: CutWay; readonly at: number } | null
  readonly by: ColourBy
}

export function sayShown({ layers, parts, rivets, apart, cut, by }: Shown, units: UnitSystem): string {
  const seen = parts.filter(({ layer }) => layers.has(layer)).length
  const cutSays = cut ? `, cut ${cut.way} at ${sayCut(cut.way, cut.at, units)}` : ''
  const colour = by === 'plain' ? '' : `, coloured by ${by === 'distance' ? 'distance from the mould line' : by}`
  return `The coach in space: ${seen} ${seen === 1 ? 'part' : 'parts'}${layers.has('rivets') ? ` and ${rivets} rivets and bolts` : ''}${apart > 0 ? `, drawn apart ${Math.round(100 * apart)} %` : ''}${cutSays}${colour}.`
}
