/**
 * What a picture is coloured by: a share from 0 to 1 for each thing (or each corner of it), and the figures that stand beside the scale.
 * Which inks these shares become is the screen's affair.
 */
import { formatLength, formatMass, type UnitSystem } from '../../quantity/format.js'
import type { SpacePart } from '../../studies/space/nouns.js'

export type ColourBy = 'plain' | 'material' | 'mass' | 'margin' | 'distance'

export interface Mark {
  /** from 0 to 1 along the scale */
  readonly at: number
  readonly says: string
}

/** What it says under the picture: the thing measured with its unit, and figures along a scale or a name for each kind. */
export interface Legend {
  readonly says: string
  readonly marks: readonly Mark[]
  readonly kinds: readonly string[]
  /** what has no such figure */
  readonly none: string | null
}

export interface Colouring {
  /** by part: its share of the scale, or the number of its kind; null where it has none */
  readonly values: readonly (number | null)[]
  readonly legend: Legend | null
}

/** What of a part is asked. */
type Told = Pick<SpacePart, 'material' | 'mass' | 'margin'>

export function colouring(parts: readonly Told[], by: ColourBy, units: UnitSystem, deepest: number): Colouring {
  const none = parts.map(() => null)
  if (by === 'plain') return { values: none, legend: null }
  if (by === 'material') return byMaterial(parts, units)
  if (by === 'mass') return byMass(parts, units)
  if (by === 'margin') return byMargin(parts)
  return {
    values: none,
    legend: {
      says: `Inside the mould line where gores are bent and not stretched, ${units === 'inch' ? 'in' : 'mm'}`,
      marks: FIVE.map((at) => ({ at, says: formatLength(at * deepest, units, { decimals: units === 'inch' ? 2 : 0, bare: true }) })),
      kinds: [],
      none: 'no gore, or none that can be bent so',
    },
  }
}

function byMaterial(parts: readonly Told[], units: UnitSystem): Colouring {
  // most of it first, so that what one looks for is at the head of the list
  const sums = new Map<string, number>()
  for (const { material, mass } of parts) if (material !== null) sums.set(material, (sums.get(material) ?? 0) + (mass ?? 0))
  const kinds = [...sums].sort((a, b) => b[1] - a[1]).map(([name]) => name)
  return {
    values: parts.map(({ material }) => (material === null ? null : kinds.indexOf(material))),
    legend: {
      says: 'Material',
      marks: [],
      kinds: kinds.map((name) => `${name}, ${formatMass(sums.get(name) ?? 0, units)}`),
      none: 'bought',
    },
  }
}

/** Sheets weigh from grams to a hundredweight: equal steps of the scale are equal ratios. */
function byMass(parts: readonly Told[], units: UnitSystem): Colouring {
  const masses = parts.flatMap(({ mass }) => (mass !== null && mass > 0 ? [mass] : []))
  if (masses.length === 0) return { values: parts.map(() => null), legend: null }
  const [least, most] = [Math.min(...masses), Math.max(...masses)]
  const span = Math.log(most / least)
  return {
    values: parts.map(({ mass }) => (mass === null || mass <= 0 ? null : span === 0 ? 1 : Math.log(mass / least) / span)),
    legend: {
      says: `Mass of a part, ${units === 'inch' ? 'lb' : 'kg'}`,
      marks: FIVE.map((at) => ({ at, says: bareMass(least * Math.exp(at * span), units) })),
      kinds: [],
      none: 'bought',
    },
  }
}

/** A margin of its own size again is plenty, and the scale ends there; what fails is below nothing. */
function byMargin(parts: readonly Told[]): Colouring {
  return {
    values: parts.map(({ margin }) => (margin === null ? null : 1 - Math.min(1, Math.max(0, margin)))),
    legend: {
      says: 'Least margin of the checks that name it, %',
      marks: [
        { at: 0, says: '100 or more' },
        { at: 0.5, says: '50' },
        { at: 1, says: '0 or less' },
      ],
      kinds: [],
      none: 'no check measures it',
    },
  }
}

/** Grams matter below a kilogram. */
const bareMass = (kg: number, units: UnitSystem): string => formatMass(kg, units, { decimals: kg < 1 ? 2 : 1, bare: true })

const FIVE = [0, 0.25, 0.5, 0.75, 1] as const
