import { developed } from '../../maths/development.js'
import { flangeHalf, type Laid, leastPiece, memberStop, unrolledAt } from './members.js'
import { gapAtLength } from './opening-shape.js'
import { lieOf, type Plate } from './plates.js'
import { lapsOf, ORDER } from './sheets.js'
import { lessGaps, type Stretch } from './stretches.js'

export interface StringerPlate {
  readonly plate: Plate
  readonly seam: string
  readonly side: 'left' | 'right'
  readonly girth: number
  readonly fromMark: string
  readonly toMark: string
}

/** Stringer legs behind each seam, bay by bay, stopping at frames and at the rims of openings that cross the seam. */
export function stringerPlates(laid: Laid): StringerPlate[] {
  const { input, skin } = laid
  const t = input.shell.skin.thickness.value
  const { leg, thickness, alloy } = input.shell.stringer
  const gap = input.shell.memberGap
  const depth = 2 * t + thickness.value / 2
  const development = unrolledAt(laid, depth)
  return lapsOf(input).flatMap((lap) => {
    const v = developed(skin, lap.girth)
    const crossing = laid.shapes.filter((s) => v > s.v0 && v < s.v1)
    return laid.memo.keep(`stringers ${lap.seam} ${lap.side}`, [laid.token, ...crossing], () => {
      const out: StringerPlate[] = []
      const gaps = laid.shapes.flatMap((s) => {
        const free = gapAtLength(s, v, memberStop(input, s))
        return free ? [{ from: free[0], to: free[1], id: s.id }] : []
      })
      gaps.sort((a, b) => a.from - b.from)
      for (let i = 0; i + 1 < input.frames.length; i++) {
        const a = input.frames[i]
        const b = input.frames[i + 1]
        const bay: Stretch = {
          from: a.station + flangeHalf(input, a) + gap,
          to: b.station - flangeHalf(input, b) - gap,
          fromMark: a.id,
          toMark: b.id,
        }
        for (const s of lessGaps(bay, gaps, leastPiece(input, input.shell.rim.minStub / 2, input.rows.seam.fastener))) {
          const g0 = lap.girth - leg / 2
          const g1 = lap.girth + leg / 2
          out.push({
            seam: lap.seam,
            side: lap.side,
            girth: lap.girth,
            fromMark: s.fromMark,
            toMark: s.toMark,
            plate: {
              part: `stringer-${lap.seam}-${lap.side}-${s.fromMark}-${s.toMark}`,
              face: 'skin leg',
              kind: 'stringer',
              says: `stringer behind ${lap.seam} ${lap.side}, ${s.fromMark} to ${s.toMark}`,
              material: alloy,
              thickness: thickness.value,
              x0: s.from,
              x1: s.to,
              g0,
              g1,
              order: ORDER.member,
              development,
              lie: lieOf(g0, g1),
              cuts: [],
              ring: null,
              marks: [],
            },
          })
        }
      }
      return out
    })
  })
}
