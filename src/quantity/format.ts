/** The door out of SI: lengths, masses and angles as text, metric or inch. A bought size is printed by its name instead. */
export type UnitSystem = 'metric' | 'inch'

export interface LengthFormat {
  /** decimals of a millimetre (1 unless told) or of an inch (3 unless told) */
  readonly decimals?: number
  /** print inches as a fraction to the nearest of these instead of decimals */
  readonly fraction?: 8 | 16 | 32 | 64
  /** leave the unit off, for a column whose heading says it */
  readonly bare?: boolean
}

/** A length in m as `2392.0 mm`, `0.032 in` or `22 1/2 in`. Throws on a number that is not finite. */
export function formatLength(value: number, units: UnitSystem, opts: LengthFormat = {}): string {
  if (units === 'metric') return withUnit(fixed(value * 1000, opts.decimals ?? 1), 'mm', opts.bare)
  const inches = value / 0.0254
  return withUnit(opts.fraction ? fraction(inches, opts.fraction) : fixed(inches, opts.decimals ?? 3), 'in', opts.bare)
}

/** A mass in kg as `24.0 kg` or `52.9 lb`. */
export function formatMass(value: number, units: UnitSystem, opts: { readonly decimals?: number; readonly bare?: boolean } = {}): string {
  return units === 'metric'
    ? withUnit(fixed(value, opts.decimals ?? 1), 'kg', opts.bare)
    : withUnit(fixed(value / 0.45359237, opts.decimals ?? 1), 'lb', opts.bare)
}

/** An angle in rad as `13.5 deg`; the same in both systems. */
export function formatAngle(value: number, opts: { readonly decimals?: number; readonly bare?: boolean } = {}): string {
  return withUnit(fixed((value * 180) / Math.PI, opts.decimals ?? 1), 'deg', opts.bare)
}

function withUnit(text: string, unit: string, bare = false): string {
  return bare ? text : `${text} ${unit}`
}

/** Fixed decimals, a half rounded away from zero as a person does, never -0. */
function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new Error(`cannot print ${value} as a figure`)
  // nine decimals first, so that 0.25 written as 0.24999999999 by the last bit still rounds up
  const nudged = Number(Math.abs(value).toFixed(9)) + 1e-10
  const text = nudged.toFixed(decimals)
  return value < 0 && Number(text) !== 0 ? `-${text}` : text
}

function fraction(inches: number, parts: number): string {
  if (!Number.isFinite(inches)) throw new Error(`cannot print ${inches} as a figure`)
  const count = Math.round(Math.abs(inches) * parts)
  const whole = Math.floor(count / parts)
  let top = count % parts
  let bottom = parts
  while (top > 0 && top % 2 === 0) {
    top /= 2
    bottom /= 2
  }
  const text = top === 0 ? String(whole) : whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`
  return inches < 0 && count > 0 ? `-${text}` : text
}
