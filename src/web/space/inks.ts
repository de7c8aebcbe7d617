/** The inks of the sheet as numbers, and the washes a picture is coloured with: muted, in one accent, for paper and for the dark. */
export type Ink = readonly [number, number, number]

export interface SpaceInks {
  readonly ink: Ink
  readonly faint: Ink
  readonly accent: Ink
  readonly sheet: Ink
  /** what shade makes of a tone */
  readonly shade: Ink
  readonly pane: Ink
  /** pale, middle, full */
  readonly ramp: readonly [Ink, Ink, Ink]
  readonly kinds: readonly Ink[]
}

const inkOf = (hex: string): Ink => [0, 2, 4].map((i) => Number.parseInt(hex.slice(1 + i, 3 + i), 16) / 255) as unknown as Ink
export const cssOf = ([r, g, b]: Ink): string => `rgb(${[r, g, b].map((v) => Math.round(255 * v)).join(' ')})`

const LIGHT: SpaceInks = {
  ink: inkOf('#1d1c1a'),
  faint: inkOf('#6d6a64'),
  accent: inkOf('#a3341a'),
  sheet: inkOf('#fdfcf9'),
  shade: [0.79, 0.785, 0.77],
  pane: inkOf('#e6ebec'),
  ramp: [inkOf('#f7efe4'), inkOf('#e0a184'), inkOf('#a3341a')],
  kinds: ['#cfdbe0', '#e6d9b8', '#c9d6bd', '#dcc7c0', '#b9b4cc', '#d8cfc4', '#a9c2b9', '#d9b98c', '#b0b0ac'].map(inkOf),
}

const DARK: SpaceInks = {
  ink: inkOf('#ebe8e1'),
  faint: inkOf('#a29e95'),
  accent: inkOf('#ff9470'),
  sheet: inkOf('#3a3e42'),
  shade: [0.62, 0.63, 0.65],
  pane: inkOf('#2b3a40'),
  ramp: [inkOf('#34373a'), inkOf('#8d5040'), inkOf('#ff9470')],
  kinds: ['#45606c', '#6e6040', '#4b6042', '#6c4c44', '#54507a', '#5e564c', '#3d6357', '#7a5a2e', '#5a5c5e'].map(inkOf),
}

export const spaceInks = (isDark: boolean): SpaceInks => (isDark ? DARK : LIGHT)

export function onRamp({ ramp }: SpaceInks, t: number): Ink {
  const [from, to, share] = t < 0.5 ? [ramp[0], ramp[1], 2 * t] : [ramp[1], ramp[2], 2 * t - 1]
  return [0, 1, 2].map((i) => from[i] + (to[i] - from[i]) * share) as unknown as Ink
}
