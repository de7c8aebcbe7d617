/** Pressed sections: the blank with its bends, and what the section comes to. */
import type { ChannelDefinition } from '../../definition/under-types.js'
import { bendAllowance, bendDeduction, channelFlat, setback } from '../common/bending.formulas.js'
import type { MarkLine } from '../nouns.js'
import type { SectionFacts } from '../under-nouns.js'
import {
  channelArea,
  channelCentre,
  channelIx,
  channelIy,
  channelJ,
  channelShearCentre,
  netArea,
  netIx,
  pressedMass,
} from './section.formulas.js'

const RIGHT_ANGLE = Math.PI / 2

/** One right-angled bend: what it takes of the flat, and what of the outside sizes. */
export function bendOf(t: number, radius: number, K: number) {
  const allowance = bendAllowance({ R: radius, K, t, A: RIGHT_ANGLE })
  const deduction = bendDeduction({ SB: setback({ R: radius, t, A: RIGHT_ANGLE }), BA: allowance })
  return { allowance, deduction }
}

/** `holes` are lightening holes in the web, null for none. */
export function sectionFacts(
  of: string,
  says: string,
  c: ChannelDefinition,
  steel: { readonly density: number; readonly K: number },
  holes: { readonly diameter: number; readonly pitch: number } | null,
): SectionFacts {
  const [h, b, t] = [c.height, c.flange, c.thickness.value]
  const { allowance, deduction } = bendOf(t, c.bendRadius, steel.K)
  const blank = channelFlat({ h, b, BD: deduction })
  const area = channelArea({ h, b, t })
  const centre = channelCentre({ h, b, t, A: area })
  const Ix = channelIx({ h, b, t })
  return {
    of,
    says,
    blank,
    allowance,
    deduction,
    area,
    centre,
    Ix,
    Iy: channelIy({ h, b, t, A: area, x_c: centre }),
    J: channelJ({ h, b, t }),
    shearCentre: channelShearCentre({ h, b, t }),
    net: holes && { area: netArea({ A: area, d: holes.diameter, t }), Ix: netIx({ I: Ix, d: holes.diameter, t }) },
    linearMass: pressedMass({ rho: steel.density, t, W: blank, d: holes?.diameter ?? 0, p: holes?.pitch ?? 1 }),
  }
}

/** Bend lines of a channel's blank, its web's middle on y = 0: the middle of each bend. */
export function bendLines(x0: number, x1: number, height: number, deduction: number): MarkLine[] {
  const y = (height - deduction) / 2
  return [y, -y].map((at) => ({
    says: 'bend up',
    kind: 'bend' as const,
    from: [x0, at] as const,
    to: [x1, at] as const,
  }))
}

/** Where a place on a flange, so far from the web's outer face, comes to lie on the blank: distance from the web's middle. */
export const onFlange = (height: number, deduction: number, fromWeb: number): number => height / 2 - deduction + fromWeb
