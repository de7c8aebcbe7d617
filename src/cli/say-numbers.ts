/** Numbers and lists in the sentences commands print. */
export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`

export const mm = (m: number, decimals = 1): string => `${(Math.round(m * 1e9) / 1e6 + 0).toFixed(decimals)} mm`

export const kg = (value: number): string => `${value.toFixed(1)} kg`

/** `a, b and c`. */
export const list = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`

/** `+12 %`, `-3 %`, or blank where nothing is measured. */
export function marginText(margin: number | null): string {
  if (margin === null) return ''
  const percent = margin * 100
  if (percent >= 1000) return `x${Math.round(margin + 1)}`
  return `${percent < 0 ? '-' : '+'}${Math.abs(percent).toFixed(Math.abs(percent) < 10 ? 1 : 0)} %`
}
