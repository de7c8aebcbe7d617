/** The half section of a coach, drawn and measured where what stands under it begins. */
import type { SectionDefinition } from '../../definition/types.js'
import { fitChain } from '../../maths/fit-chain.js'
import { at, buildChain, type ChainPiece, girthAtZ, type TangentChain } from '../../maths/tangent-chain.js'

/** Of the half section, to the floor's waterline and to its toe. */
export interface Outer {
  readonly crown: number
  readonly chain: TangentChain
  /** half width at the floor, m */
  readonly floorHalf: number
  readonly height: number
}

/** Null where it cannot be drawn or does not reach the floor. */
export function outerOf({ crown, chain: pieces, fit }: SectionDefinition): Outer | null {
  const start = { y: 0, z: crown, heading: 0 }
  const chain = fit ? fitChain(start, pieces, fit)?.chain : buildChain(start, pieces as readonly ChainPiece[])
  if (!chain) return null
  const floor = girthAtZ(chain, 0)
  return floor === null ? null : { crown, chain, floorHalf: at(chain, floor).y, height: crown - at(chain, chain.length).z }
}
