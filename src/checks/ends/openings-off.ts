/** Openings that do not lie wholly on their end: nothing of them was derived, so nothing else about them can be checked. */
import type { EndCut } from '../../derive/ends/cuts.js'
import { liesOnEnd } from '../../derive/ends/openings.js'
import type { Check } from '../../derive/nouns.js'
import { finding, mm } from '../check.js'
import { cutsOn, type EndsGround, placeOfCut, type Standing } from './ground.js'

/** How far along the centre line and in what steps another place is looked for, m. */
const FAR = 0.6
const STEP = 0.01

export function openingsOffTheEnd(ground: EndsGround, at: Standing): Check[] {
  const cuts = cutsOn(ground, at).filter((cut) => ground.derived.endSections.astray.includes(cut.id))
  return cuts.map((cut) => {
    const { opening } = cut
    return finding(
      {
        id: `opening.${cut.id}.off-end`,
        says:
          `${cut.id} (${opening.says}) does not lie wholly on the ${at.end}: with its rim ring, ${mm(2 * (cut.a + ground.reach))} x ${mm(2 * (cut.b + ground.reach))} mm, ` +
          `it runs over the crown, the toe or the joint with the barrel. It was left out of the design.`,
        source: 'geometry: the rim ring must have skin in front of it all round',
        places: [placeOfCut(ground, at, cut)],
        concerns: [cut.id],
        mend: elsewhere(ground, at, cut) ?? smaller(ground, cut),
      },
      'fail',
    )
  })
}

/** The nearest place on the centre line where it would lie on the end, up or down, to a whole millimetre as it would be written. */
function elsewhere(ground: EndsGround, at: Standing, cut: EndCut): string | null {
  const put = (station: number, waterline: number): EndCut => {
    const openings = [{ ...cut.opening, station, waterline }]
    return cutsOn({ ...ground, definition: { ...ground.definition, openings } }, at)[0]
  }
  const whole = (m: number): number => Math.round(m * 1000) / 1000
  for (let step = 1; step * STEP <= FAR; step++)
    for (const sign of [1, -1]) {
      const near = put(cut.opening.station, cut.centre[2] + sign * step * STEP).centre
      const [station, waterline] = [whole(at.joint + (at.end === 'nose' ? -near[0] : near[0])), whole(near[2])]
      if (liesOnEnd(ground.local.ground, put(station, waterline))) return `It would lie on it at STA ${mm(station)} WL ${mm(waterline)}.`
    }
  return null
}

/** The same shape at the scale that lies on the end, halved down to. */
function smaller({ local }: EndsGround, cut: EndCut): string {
  for (let scale = 0.95; scale > 0.2; scale -= 0.05) {
    const [a, b] = [cut.a * scale, cut.b * scale]
    if (liesOnEnd(local.ground, { ...cut, a, b, corner: Math.min(cut.corner, a, b) }))
      return `Here about ${mm(Math.floor(2000 * a) / 1000)} x ${mm(Math.floor(2000 * b) / 1000)} mm would lie on it.`
  }
  return 'Move it well inside the end, or make it much smaller.'
}
