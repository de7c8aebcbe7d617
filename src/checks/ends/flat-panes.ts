/** Flat panes and plates on a curved skin: what the skin falls away by under the rim is what a frame or a plinth must make up. */
import type { OpeningDefinition } from '../../definition/types.js'
import type { Check, Place } from '../../derive/nouns.js'
import { at as pointAt } from '../../maths/tangent-chain.js'
import { capacityCheck, mm } from '../check.js'
import { type EndOpening, type EndsGround, placeOfCut } from './ground.js'

/** What a rim bedded in sealant takes up; our choice, no source. m */
const BEDDED = 0.003

export function paneOnEnd(ground: EndsGround, one: EndOpening): Check[] {
  const sag = one.opening.end?.sag
  if (sag === undefined) return []
  return [sayPane(one.cut.opening, sag, `the ${one.at.end}`, one.cut.upright, placeOfCut(ground, one.at, one.cut))]
}

/** Openings in the barrel's roof: flat along the coach, cambered across it. */
export function panesOnRoof({ derived, definition, reach }: EndsGround): Check[] {
  const { withFlange } = derived.shell.section
  return derived.shell.openings.flatMap((o) => {
    const written = definition.openings.find((each) => each.id === o.id)
    if (written?.surface !== 'roof') return []
    const middle = pointAt(withFlange, Math.abs(written.girth))
    const side = written.girth < 0 ? -1 : 1
    // how far the skin lies under the plane that touches it at the opening's middle
    const fall = (girth: number): number => {
      const p = pointAt(withFlange, Math.abs(girth))
      const y = girth < 0 ? -p.y : p.y
      return (y - side * middle.y) * -side * Math.sin(middle.heading) + (middle.z - p.z) * Math.cos(middle.heading)
    }
    const half = written.height / 2 + reach
    const sag = Math.max(fall(written.girth - half), fall(written.girth + half))
    return [sayPane(written, sag, 'the roof', false, o.place)]
  })
}

function sayPane(opening: OpeningDefinition, sag: number, where: string, upright: boolean, place: Place): Check {
  const glass = opening.kind === 'window' || opening.kind === 'door'
  const what =
    glass || upright
      ? `flat ${glass ? 'glass' : 'plate'} needs a formed frame ${mm(sag)} mm deep`
      : `it needs a plinth ${mm(sag)} mm high at its highest`
  const flat = sag <= BEDDED
  return capacityCheck(
    {
      id: `opening.${opening.id}.pane`,
      says: flat
        ? `The skin of ${where} falls away ${mm(sag)} mm under the rim of ${opening.id}; up to ${mm(BEDDED)} mm is bedded in sealant.`
        : `${opening.id} (${opening.says}) is flat and the skin of ${where} is not: it falls away ${mm(sag)} mm under its rim, so ${what}.`,
      source: 'geometry; 3 mm is what a rim bedded in sealant takes up: our choice, no source',
      places: [place],
      concerns: [opening.id],
    },
    sag,
    BEDDED,
    'm',
    'caution',
  )
}
