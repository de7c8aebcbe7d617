/** How deep the surfaces of the barrel lie inside its mould line: those a tape or a template is laid on. */
import { liningDepth } from '../../derive/common/lining-depth.js'
import type { Derived } from '../../derive/index.js'

export interface Surface {
  readonly id: string
  readonly says: string
  /** along the normal, m */
  readonly depth: number
}

/** From the outside in. */
export function barrelSurfaces({ definition }: Pick<Derived, 'definition'>): readonly Surface[] {
  const { skin, frame } = definition.shell
  const t = skin.thickness.value
  return [
    { id: 'mould', says: 'outer mould line', depth: 0 },
    { id: 'skin', says: 'inside of the skin', depth: t },
    { id: 'frame', says: 'inside of the frames', depth: t + frame.height },
    { id: 'lining', says: 'outside of the lining', depth: liningDepth(definition) },
  ]
}
