/**
 * Exact fractions for what is written on a tape, so that 0.032 in becomes the double nearest 0.0008128
 * and not whatever two rounded products give.
 */

export interface Fraction {
  readonly top: bigint
  readonly bottom: bigint
}

/** A plain decimal text (`0.032`, `.5`, `6100`, `1.2e-6`) as an exact fraction. */
export function fromDecimal(text: string): Fraction {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e')
  const [whole = '', part = ''] = mantissa.split('.')
  const power = Number(exponent) - part.length
  const digits = BigInt(whole + part)
  return power >= 0 ? { top: digits * 10n ** BigInt(power), bottom: 1n } : { top: digits, bottom: 10n ** BigInt(-power) }
}

export function add(a: Fraction, b: Fraction): Fraction {
  return { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom }
}

export function times(a: Fraction, b: Fraction): Fraction {
  return { top: a.top * b.top, bottom: a.bottom * b.bottom }
}

export function over(a: Fraction, b: Fraction): Fraction {
  return { top: a.top * b.bottom, bottom: a.bottom * b.top }
}

const DIGITS = 40

/** The double nearest the fraction (exact when its decimals end within 40 figures, which every tape size does). */
export function toNumber({ top, bottom }: Fraction): number {
  if (top === 0n) return 0
  const size = String(top < 0n ? -top : top).length - String(bottom).length
  const shift = DIGITS - size
  const scaled = shift >= 0 ? (top * 10n ** BigInt(shift)) / bottom : top / (bottom * 10n ** BigInt(-shift))
  return Number(`${scaled}e${-shift}`)
}
