/** How a swing dies away against speed behind one tow car, a line for every load case. */
import type { Design } from '../../derive/design.js'
import { fixed } from '../../documents/drawing/units.js'
import type { UnitSystem } from '../../quantity/format.js'
import { swayCurves } from '../../studies/sway/study.js'
import type { OrNot, SwayFigure } from './nouns.js'

/** m/s in the reader's unit of speed. The mile is 1609.344 m by definition. */
const SPEED: Readonly<Record<UnitSystem, { readonly unit: string; readonly per: number; readonly tick: number }>> = {
  metric: { unit: 'km/h', per: 3.6, tick: 20 },
  inch: { unit: 'mph', per: 3600 / 1609.344, tick: 10 },
}

/** `car` by its id; the first one where it is null or gone. */
export function swayLines({ towing, checks }: Pick<Design, 'towing' | 'checks'>, car: string | null, units: UnitSystem): OrNot<SwayFigure> {
  if ('notComputed' in towing) return towing
  const sway = swayCurves(towing)
  const chosen = towing.cars.find(({ id }) => id === car) ?? towing.cars[0]
  if (!sway || !chosen) return { notComputed: 'No tow car is written, so there is nothing to tow it with.' }
  const { unit, per, tick } = SPEED[units]
  const curves = sway.curves.filter((each) => each.car === chosen.id)
  const [from, to] = [sway.speeds[0] * per, sway.speeds[sway.speeds.length - 1] * per]
  const worst = towing.moves.find((each) => each.car === chosen.id)?.case
  const share = (damping: number | null): string => (damping === null ? 'nothing swings' : `${fixed(damping * 100, 1)} %`)
  return {
    cars: towing.cars.map(({ id, says }) => ({ id, says })),
    car: chosen.id,
    verdict: checks.find(({ id }) => id === `towing.${chosen.id}`)?.verdict ?? null,
    speed: { unit, from, to, ticks: ticksBetween(from, to, tick) },
    damping: dampingAxis(curves.flatMap((each) => each.damping)),
    stated: { at: towing.at * per, says: units === 'metric' ? '100 km/h' : `${fixed(towing.at * per, 0)} mph (100 km/h)` },
    lines: curves.map(({ case: id, damping }) => {
      const steady = towing.steadiness.find((each) => each.case === id && each.car === chosen.id)
      return {
        case: id,
        says: towing.cases.find((each) => each.id === id)?.says ?? '',
        points: damping.map((each, i) => [sway.speeds[i] * per, each] as const),
        isWorst: id === worst,
        atStated: share(steady?.damping ?? null),
        limit: steady?.zeroDamping ? `${fixed(steady.zeroDamping * per, 0)} ${unit}` : `none to ${fixed(towing.fastest * per, 0)} ${unit}`,
        working: `towing.yaw-inertia.${id}`,
      }
    }),
  }
}

const ticksBetween = (from: number, to: number, step: number): readonly number[] =>
  Array.from(
    { length: Math.floor(to / step + 1e-9) - Math.ceil(from / step - 1e-9) + 1 },
    (_, i) => (Math.ceil(from / step - 1e-9) + i) * step,
  )

/** Whole tenths round everything drawn, and always a little below nothing, where a swing grows. */
function dampingAxis(dampings: readonly (number | null)[]): SwayFigure['damping'] {
  const known = dampings.flatMap((each) => (each === null ? [] : [each]))
  const [least, most] = [Math.min(0, ...known), Math.max(0.1, ...known)]
  const step = most - least > 0.8 ? 0.2 : 0.1
  const [low, high] = [Math.floor(least / step - 0.2), Math.ceil(most / step)]
  const ticks = Array.from({ length: high - low + 1 }, (_, i) => (low + i) * step)
  return { from: low * step, to: high * step, ticks }
}
