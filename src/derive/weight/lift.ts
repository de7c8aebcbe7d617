/**
 * The bare body on two slings: what is in it, where its centre lies, and what each leg holds with the hook over the centre.
 *
 * Each frame hangs by two legs, one a side, over the ends of a beam that keeps them off the skin. From the hook to the beam they
 * spread along and across, which is where they hold most; below it they hold less. Does not cover the beam itself, strength of the frames, swing, wind, or a hook that is not over the centre: a lift is planned by a competent person.
 */

import type { LiftDefinition } from '../../definition/weight-types.js'
import { G } from '../../quantity/gravity.js'
import { massTotal } from '../common/mass.formulas.js'
import type { LiftDerived, MassLine, SlingLoad } from '../weight-nouns.js'
import { legAngle, legTension, pickLoad } from './lift.formulas.js'
import { middle } from './middle.js'

const LEGS_A_FRAME = 2
/** Rigging charts following ASME B30.9: below 30 degrees from level slings are not used. */
const FLATTEST = Math.PI / 6

export function liftOf(
  how: LiftDefinition,
  lines: readonly MassLine[],
  frames: readonly { readonly id: string; readonly station: number }[],
): LiftDerived {
  const own = lines.filter(({ group, says }) => how.groups.includes(group) && !how.without.includes(says))
  const mass = massTotal(Object.fromEntries(own.map((line) => [`${line.id} ${line.says}`, line.mass])))
  const centre = middle(own.flatMap((line) => line.points))
  const stationOf = (id: string): number => {
    const found = frames.find((frame) => frame.id === id)
    if (!found) throw new Error(`a sling goes round ${id}, which is no frame`)
    return found.station
  }
  const [fore, aft] = [stationOf(how.fore), stationOf(how.aft)]
  const [a, b] = [centre[0] - fore, aft - centre[0]]
  const told = {
    mass,
    centre,
    lines: own.map((line) => line.says),
    unknown: how.without.filter((item) => !lines.some((line) => line.says === item)),
    hook: how.hook,
    spreader: how.spreader,
    legRated: how.legRated,
  }
  if (a <= 0 || b <= 0) {
    const where = a <= 0 ? `ahead of the forward sling at ${how.fore}` : `behind the aft sling at ${how.aft}`
    return { ...told, slings: [], blocked: `The centre of the body lies ${where}: it would tip out of its slings.` }
  }
  const sling = (frame: string, station: number, near: number, far: number): SlingLoad => {
    const load = pickLoad({ m: mass, g: G, a: near, b: far })
    const runs = { a: near, e: how.spreader / 2, h: how.hook }
    const tension = legTension({ V: load, ...runs })
    return { frame, station, load, tension, leg: tension.value / LEGS_A_FRAME, angle: legAngle(runs) }
  }
  const slings = [sling(how.fore, fore, a, b), sling(how.aft, aft, b, a)]
  return { ...told, slings, blocked: blockedBy(slings, how.legRated) }
}

function blockedBy(slings: readonly SlingLoad[], legRated: number): string | null {
  const flat = slings.find((each) => each.angle.value < FLATTEST)
  if (flat) return `The legs at ${flat.frame} stand at less than 30 degrees from level: hang the hook higher.`
  const heavy = slings.find((each) => each.leg > legRated)
  return heavy ? `A leg at ${heavy.frame} would hold more than it is rated for: take stronger slings.` : null
}
