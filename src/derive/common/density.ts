/** Density of a sheet or profile by alloy, looked up once. */
import { findAlloy } from '../../tables/alloys.js'

/** kg/m3; the definition has already refused alloys that are not in the table. */
export function densityOf(alloy: string, thickness: number): number {
  const key = `${alloy} ${thickness}`
  const known = DENSITIES.get(key)
  if (known !== undefined) return known
  const found = findAlloy(alloy, thickness)
  if (!found.ok) throw new Error(found.says)
  DENSITIES.set(key, found.row.density.value)
  return found.row.density.value
}

/** The table never changes, so each look-up is done once. */
const DENSITIES = new Map<string, number>()
