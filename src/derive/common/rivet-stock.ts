/** The rivet that is bought for a stack: its length by the shop's rule and the name it is ordered by. */
import type { Q, Worked } from '../../quantity/formula.js'
import { RIVET_SIZES } from '../../tables/rivets.js'
import { blindGripBought, rivetLengthNeeded, stockLengthNearest, stockLengthNextUp } from './lengths.formulas.js'

const INCH = 0.0254

export interface StockRivet {
  /** `-4-5.5` for 1/8 in by 11/32 in; `-4 grip 2` for a blind rivet to 2/16 in; `3.2 x 8` for a metric one */
  readonly name: string
  /** length of a solid rivet under its head, or the upper end of a blind rivet's grip range, m */
  readonly length: Worked<'m'>
}

type Grip = Worked<'m'> | Q<'m'>

/** The solid rivet for a grip (m). Inch sizes step by 1/32 in (half sizes of 1/16); metric ones by 1 mm, common practice, no source. */
export function solidRivet(diameter: number, grip: Grip, rule: 'next up' | 'nearest'): StockRivet {
  const dash = dashOf(diameter)
  const step = dash === null ? 0.001 : INCH / 32
  const needed = rivetLengthNeeded({ G: grip, D: diameter })
  const length = (rule === 'next up' ? stockLengthNextUp : stockLengthNearest)({ L: needed, s: step })
  const steps = Math.round(length.value / step)
  return Object.freeze({ name: dash === null ? `${millimetres(diameter)} x ${steps}` : `-${dash}-${steps / 2}`, length })
}

/** The blind rivet for a grip (m): inch sizes in grip ranges of 1/16 in, metric ones of 1 mm (common practice, no source). */
export function blindRivet(diameter: number, grip: Grip): StockRivet {
  const dash = dashOf(diameter)
  const step = dash === null ? 0.001 : INCH / 16
  const length = blindGripBought({ G: grip, s: step, n: dash !== null && dash >= SHORTEST_IS_TWO ? 2 : 1 })
  const steps = Math.round(length.value / step)
  return Object.freeze({ name: dash === null ? `${millimetres(diameter)} grip to ${steps}` : `-${dash} grip ${steps}`, length })
}

/** From 5/32 in up the shortest grip range reaches 1/8 in; 1/8 in rivets come in 1/16 in too. IFI-114, from memory. */
const SHORTEST_IS_TWO = 5

function dashOf(diameter: number): number | null {
  return RIVET_SIZES.find((each) => Math.abs(each.diameter - diameter) < 1e-6)?.dash ?? null
}

function millimetres(value: number): string {
  return String(Number((value * 1000).toFixed(2)))
}
