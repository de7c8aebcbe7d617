/** Side letters at the door: C is the curb side of the market's traffic, R the road side. Nothing but right and left is ever stored. */
import type { Market, Side } from './types.js'

type Flank = Exclude<Side, 'centre'>

/** Side of travel next to the curb: traffic keeps right in the first two markets, left in the others. */
const CURB: Readonly<Record<Market, Flank>> = Object.freeze({ us: 'right', eu: 'right', uk: 'left', au: 'left' })

export function sideOfLetter(letter: 'C' | 'R', market: Market): Flank {
  if (letter === 'C') return CURB[market]
  return CURB[market] === 'right' ? 'left' : 'right'
}

export function letterOfSide(side: Flank, market: Market): 'C' | 'R' {
  return side === CURB[market] ? 'C' : 'R'
}
