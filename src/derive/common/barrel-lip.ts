/** The lip a joint frame gives the barrel's lining, on the barrel's side: the frame itself stays open so that its rows can be bucked. */
import type { Definition } from '../../definition/types.js'

/** Distances from the joint into the barrel: both edges of the lip, and the lining's row half way between them. m */
export function barrelLip({ jointFrame, frame }: Pick<Definition['shell'], 'jointFrame' | 'frame'>): {
  readonly from: number
  readonly row: number
  readonly to: number
} {
  const from = jointFrame.flange / 2
  return { from, row: from + frame.rowOffset, to: from + 2 * frame.rowOffset }
}
