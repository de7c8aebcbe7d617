/** Side letters at the door: C is the curb side of the market's traffic, R the road side. */
import type { Market, Side } from '../../definition/types.js'

type Flank = Exclude<Side, 'centre'>

/** Traffic keeps left in the United Kingdom and Australia, so the curb is on the left of travel there. */
export function sideOfLetter(letter: 'C' | 'R', market: Market): Flank {
  const keepsLeft = market === 'uk' || market === 'au'
  return (letter === 'C') === keepsLeft ? 'left' : 'right'
}

export function letterOfSide(side: Flank, market: Market): 'C' | 'R' {
  return sideOfLetter('C', market) === side ? 'C' : 'R'
}
