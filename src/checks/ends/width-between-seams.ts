/** The widest an opening of this height can be and stay clear of the gore seams beside it, their laps and their ribs. */
import { clearance, seenOn } from '../../derive/ends/cuts.js'
import type { Vec3 } from '../../maths/vec.js'
import { mm } from '../check.js'
import type { EndOpening, EndsGround } from './ground.js'

/** Points a seam is looked at, from the crown down. */
const POINTS = 120
/** Less is no answer to somebody who asked for a window, m. */
const LEAST = 0.1

/** Null where nothing useful is left, as with a seam on the centre line. Seen square on the pane, which errs to the narrow side. */
export function widthBetweenSeams({ local, definition, line, edge }: EndsGround, { cut }: EndOpening): string | null {
  const { seamCurves, gores } = local.ground
  const need = Math.max(definition.ends.lap, definition.shell.frame.flange) / 2 + line + edge
  const seams: Vec3[] = []
  for (let k = 1; k < gores; k++)
    for (let i = 0; i <= POINTS; i++) {
      const p = seamCurves[k].atSigma(seamCurves[k].sigmaAt((seamCurves[k].length * i) / POINTS))
      // only what stands beside it, not above or below
      if (Math.abs(seenOn(cut, p)[1]) < cut.b + need) seams.push(p)
    }
  const clear = (a: number): boolean => {
    const one = { ...cut, a, corner: Math.min(cut.corner, a) }
    return seams.every((p) => clearance(one, p) >= need)
  }
  let [low, high] = [LEAST / 2, 3]
  if (!clear(low)) return null
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2
    if (clear(middle)) low = middle
    else high = middle
  }
  return `At this height an opening up to ${mm(Math.floor(2000 * low) / 1000)} mm wide stays between the seams.`
}
