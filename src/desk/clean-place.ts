/** A clean place, and rounding to one. m. */
export type CleanKey = 'station' | 'waterline' | 'across' | 'fore' | 'aft' | 'low' | 'high'

export interface CleanPlace {
  readonly key: CleanKey
  /** what the edit gets for its key */
  readonly at: number
  /** where the guide lies along the same axis */
  readonly guide: number
  readonly says: string
  /** a pitch gives way to what has a reason of its own */
  readonly isPitch?: boolean
}

/** Rounded away from what stands in the way, so that what is printed is clean when it is typed. */
export const up = (m: number): number => Math.ceil(m * 1e4 - 1e-5) / 1e4
export const down = (m: number): number => Math.floor(m * 1e4 + 1e-5) / 1e4
