/** Where the axle group may stand: mean stations at which every tube, wheel and opening is clear, as stretches with their neighbours. */
import type { AxleNeighbour, ClearStretch } from '../under-nouns.js'
import type { GearInput } from './index.js'

interface Barred {
  readonly from: number
  readonly to: number
  /** what of the axles meets it, and the thing itself */
  readonly who: string
  readonly what: string
}

const mm = (m: number): string => (Math.round(m * 1e4) / 10).toString()

/** The group is moved as one: what bars one of its tubes bars the mean station by so much less. In order, m. */
function barredBy(input: GearInput, mean: number): Barred[] {
  return [...fromMembers(input, mean), ...fromBays(input, mean), ...fromFrames(input, mean)].sort((a, b) => a.from - b.from)
}

export function clearStretches(input: GearInput, mean: number): ClearStretch[] {
  return between(input, mean, barredBy(input, mean))
}

function between({ frames, gear }: GearInput, mean: number, barred: readonly Barred[]): ClearStretch[] {
  const { half } = gear.wheelOpening
  const [first, last] = [gear.spindles[0] - mean, gear.spindles[gear.spindles.length - 1] - mean]
  const end = frames[frames.length - 1]
  let at = { x: frames[0].station + half - first, who: `the wheel opening at joint frame ${frames[0].id}` }
  const close = { from: end.station - half - last, to: Number.POSITIVE_INFINITY, who: `the wheel opening at joint frame ${end.id}` }
  const out: ClearStretch[] = []
  for (const bar of [...barred, close]) {
    if (bar.from > at.x && at.x < close.from)
      out.push({ from: at.x, to: Math.min(bar.from, close.from), before: at.who, after: bar.from <= close.from ? bar.who : close.who })
    if (bar.to > at.x) at = { x: bar.to, who: bar.who }
  }
  // a stretch that nothing fits into is none
  return out.filter((s) => s.to - s.from > 1e-6)
}

/** The stretch the mean station stands in, or the nearest; null where there is none. */
function nearestTo(stretches: readonly ClearStretch[], mean: number): ClearStretch | null {
  const off = (s: ClearStretch): number => Math.max(0, s.from - mean, mean - s.to)
  return stretches.length === 0 ? null : stretches.reduce((a, b) => (off(b) < off(a) ? b : a))
}

/**
 * What each neighbour costs: the stretch round the mean station if this one thing stood out of the way, and how far it would
 * have to move if it bars the place as written. Only neighbours that cost something, the dearest first.
 */
export function neighbours(input: GearInput, mean: number): AxleNeighbour[] {
  const barred = barredBy(input, mean)
  const now = nearestTo(between(input, mean, barred), mean)
  const length = now ? now.to - now.from : 0
  return [...new Set(barred.map((b) => b.what))]
    .flatMap((what): AxleNeighbour[] => {
      const without = nearestTo(
        between(
          input,
          mean,
          barred.filter((b) => b.what !== what),
        ),
        mean,
      )
      if (!without) return []
      const gains = without.to - without.from - length
      const inTheWay = barred.filter((b) => b.what === what && b.from < mean - 1e-9 && b.to > mean + 1e-9)
      const by = inTheWay.length === 0 ? null : Math.max(...inTheWay.map((b) => Math.min(mean - b.from, b.to - mean)))
      return gains > 1e-6 || by !== null ? [{ what, from: without.from, to: without.to, gains, by }] : []
    })
    .sort((a, b) => b.gains - a.gains)
}

function fromMembers({ gear, crossMembers, tubeRoom }: GearInput, mean: number): Barred[] {
  return gear.spindles.flatMap((spindle, i) => {
    const offset = spindle - gear.arm - mean
    return crossMembers.map((c) => ({
      from: c - tubeRoom - offset,
      to: c + tubeRoom - offset,
      who: `tube ${i + 1} at cross-member ${mm(c)}`,
      what: `cross-member ${mm(c)}`,
    }))
  })
}

/** A tube runs across the coach: a bay at its height bars it over the whole of its length. */
function fromBays({ gear, bays, floor }: GearInput, mean: number): Barred[] {
  const tube = gear.tube
  if (!tube || !floor) return []
  const top = tube.waterline + tube.size / 2
  return bays
    .filter((b) => -floor.thickness - b.depth < top)
    .flatMap((b) =>
      gear.spindles.map((spindle, i) => {
        const offset = spindle - gear.arm - mean
        return {
          from: b.fore - tube.size / 2 - offset,
          to: b.aft + tube.size / 2 - offset,
          who: `tube ${i + 1} at the bay ${b.id}`,
          what: `bay ${b.id}`,
        }
      }),
    )
}

/** A frame just outside an edge of a wheel opening leaves its rim ring nowhere to lie; one inside it is cut and out of the way. */
function fromFrames({ gear, frames, frameRoom }: GearInput, mean: number): Barred[] {
  const { half } = gear.wheelOpening
  return gear.spindles.flatMap((spindle, i) =>
    ([-half, half] as const).flatMap((edge) =>
      frames.map((f) => ({
        from: f.station - (edge > 0 ? frameRoom : 0) - (spindle + edge - mean),
        to: f.station + (edge > 0 ? 0 : frameRoom) - (spindle + edge - mean),
        who: `wheel opening ${i + 1} at frame ${f.id}`,
        what: `frame ${f.id}`,
      })),
    ),
  )
}
