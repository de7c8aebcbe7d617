/** Where frames and axles stand clean: evenly spaced, off the openings, over a cross-member; in the axle window, its ends and its middle. m. */
import { mm } from '../checks/check.js'
import { groundOf, halfFlange } from '../checks/layout/ground.js'
import type { Derived } from '../derive/index.js'
import { type CleanPlace, down, up } from './clean-place.js'
import { axleOf, tenth } from './written-things.js'

export function cleanForFrame(derived: Derived, id: string): readonly CleanPlace[] {
  const ground = groundOf(derived)
  const { frames } = ground.input
  const i = frames.findIndex((each) => each.id === id)
  const own = frames[i]
  if (!own) return []
  const [before, after] = [frames[i - 1], frames[i + 1]]
  const place = (at: number, says: string): CleanPlace => ({ key: 'station', at, guide: at, says })
  const off = halfFlange(ground, own) + ground.line + ground.edge
  return [
    ...(before && after ? [place((before.station + after.station) / 2, `evenly between ${before.id} and ${after.id}`)] : []),
    ...(derived.definition.chassis?.crossMembers ?? []).map((at) => place(at, `over the cross-member at STA ${mm(at)}`)),
    ...ground.derived.shell.laid.shapes
      .filter((shape) => shape.surface !== 'wheel')
      .flatMap((shape) => {
        const says = `${mm(ground.edge)} mm clear of the rim rivets of ${shape.id}: least allowed`
        return [place(down(shape.x0 - off), says), place(up(shape.x1 + off), says)]
      }),
  ]
}

/** The whole window: where tubes and wheels are clear and every case the coach is designed for keeps to the band of its hitch. */
export function cleanForAxle(derived: Derived, id: string): readonly CleanPlace[] {
  const { under, definition } = derived
  const { gear } = under
  const which = axleOf(id)
  const spindle = which === null ? undefined : definition.gear?.spindles[which]
  if (!gear || spindle === undefined) return []
  const off = spindle - gear.mean
  const place = (mean: number, says: string): CleanPlace => ({ key: 'station', at: mean + off, guide: mean + off, says })
  const limits = [hitchEnds(derived), openingEnds(derived, gear.mean)]
  const [fores, afts] = [limits.flatMap((each) => each.fore), limits.flatMap((each) => each.aft)]
  return gear.window.flatMap(({ from, to, before, after }) => {
    const fore = [{ at: up(from), says: before }, ...fores].reduce((a, b) => (b.at > a.at ? b : a))
    const aft = [{ at: down(to), says: after }, ...afts].reduce((a, b) => (b.at < a.at ? b : a))
    if (fore.at > aft.at) return []
    return [
      place(fore.at, `as far forward as ${fore.says} lets the axles stand`),
      place(aft.at, `as far aft as ${aft.says} lets the axles stand`),
      place(tenth((fore.at + aft.at) / 2), `middle of the axle window, STA ${mm(fore.at)} to ${mm(aft.at)}`),
    ]
  })
}

/** A mean axle station beyond which something does not let the axles stand. */
interface End {
  readonly at: number
  readonly says: string
}

interface Ends {
  readonly fore: readonly End[]
  readonly aft: readonly End[]
}

/** Openings beside a wheel opening: their rims need their room. */
function openingEnds(derived: Derived, mean: number): Ends {
  const ground = groundOf(derived)
  const { shapes } = ground.derived.shell.laid
  const room = 2 * ground.reach
  const pairs = shapes
    .filter((wheel) => wheel.surface === 'wheel')
    .flatMap((wheel) =>
      shapes
        .filter((each) => each.surface !== 'wheel' && each.v0 < wheel.v1 + room && each.v1 > wheel.v0 - room)
        .map((each) => ({ wheel, each, isAft: each.x0 + each.x1 > wheel.x0 + wheel.x1 })),
    )
  return {
    fore: pairs
      .filter(({ isAft }) => !isAft)
      .map(({ wheel, each }) => ({ at: up(mean + each.x1 + room - wheel.x0), says: `the rim of ${each.id}` })),
    aft: pairs
      .filter(({ isAft }) => isAft)
      .map(({ wheel, each }) => ({ at: down(mean + each.x0 - room - wheel.x1), says: `the rim of ${each.id}` })),
  }
}

/** Between the least and the most of its band the hitch stays in every case the coach is designed for; to the millimetre inside. */
function hitchEnds({ weight, definition }: Derived): Ends {
  if ('notComputed' in weight) return { fore: [], aft: [] }
  const { ball: b, axle, hitchBand, cases } = weight
  const goesAlong = definition.masses.reduce((sum, each) => (each.station === null ? sum + each.mass : sum), 0)
  const ends = (p: number, round: (mm: number) => number): readonly End[] =>
    cases
      .filter((each) => each.design)
      .map(({ id, mass, centre }) => {
        // p (x_a - b) = x_a - x_c, where x_c moves by the share k of what stands at the axles
        const k = goesAlong / mass.value
        const at = (p * b - centre[0].value + k * axle) / (p - 1 + k)
        return { at: round(at * 1000) / 1000, says: `the hitch in case ${id}, ${Number((p * 100).toFixed(1))} %,` }
      })
  return { fore: ends(hitchBand[0], Math.ceil), aft: ends(hitchBand[1], Math.floor) }
}
