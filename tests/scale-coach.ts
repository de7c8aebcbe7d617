/** The same coach at another size, or standing elsewhere along the station line: for properties that must not care. */
import type { Definition } from '../src/definition/types.js'

/** Keys whose numbers are not lengths: angles, ratios, counts and masses. */
const NOT_LENGTHS: ReadonlySet<string> = new Set([
  'schema',
  'to',
  'turn',
  'kFactor',
  'linearMass',
  'across',
  'edgeDistance',
  'minPitch',
  'maxPitch',
  'transversePitch',
  'mass',
  'exponent',
  'drift',
  'sheetTempC',
  'jigTempC',
  'share',
  'arealMass',
  'density',
  'angle',
  'startAngle',
  'loadedAngle',
  'bumpAngle',
])

/** Every length of a definition times k. */
export function scaled(definition: Definition, k: number): Definition {
  const grow = (value: unknown, key: string): unknown => {
    if (typeof value === 'number') return NOT_LENGTHS.has(key) ? value : value * k
    if (Array.isArray(value)) return value.map((each) => grow(each, key))
    if (typeof value !== 'object' || value === null) return value
    // the seams of an end are azimuths, those of the barrel and the lining girths
    const angles = 'profile' in value
    return Object.fromEntries(Object.entries(value).map(([name, below]) => [name, angles && name === 'seams' ? below : grow(below, name)]))
  }
  return grow(definition, '') as Definition
}

/** The whole coach moved aft by a distance, m. */
export function shifted(definition: Definition, by: number): Definition {
  const { frames, openings, gear, chassis, floor, ends, masses } = definition
  const stood = <T extends { readonly station: number }>(list: readonly T[]): T[] => list.map((o) => ({ ...o, station: o.station + by }))
  return {
    ...definition,
    frames: stood(frames),
    openings: stood(openings),
    gear: gear && { ...gear, spindles: gear.spindles.map((s) => s + by) },
    chassis: chassis && {
      ...chassis,
      crossMembers: chassis.crossMembers.map((s) => s + by),
      aFrame: chassis.aFrame && { ...chassis.aFrame, apex: chassis.aFrame.apex + by },
      plates: stood(chassis.plates),
      bought: stood(chassis.bought),
      bays: chassis.bays.map((b) => ({ ...b, fore: b.fore + by, aft: b.aft + by })),
    },
    floor: floor && { ...floor, openings: stood(floor.openings) },
    ends: { ...ends, couplerFace: ends.couplerFace + by },
    masses: masses.map((m) => ({ ...m, station: m.station === null ? null : m.station + by })),
  }
}
