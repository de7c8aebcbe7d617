/** Which clean place a raw one is drawn to: along each axis the nearest within reach that has a reason, else the next round figure. m. */
import type { UnitSystem } from '../quantity/format.js'
import type { CleanKey, CleanPlace } from './clean-place.js'
import type { MoveEdit, SizeEdit, SnapWish } from './nouns.js'

/** An edit at a place to be tried, and what it was drawn to. */
export interface Attempt<E extends MoveEdit | SizeEdit = MoveEdit | SizeEdit> {
  readonly edit: E
  readonly snaps: readonly CleanPlace[]
}

/** On a small drawing a few pixels are a hand's breadth: nobody means that. */
const MOST = 0.025

/** From the one drawn to most to the one drawn to nothing but round figures. `size` is what an edge is pulled away from, by key. */
export function attempts<E extends MoveEdit | SizeEdit>(edit: E, clean: readonly CleanPlace[], across: Across): readonly Attempt<E>[] {
  const { snap } = edit
  if (!snap) return [{ edit, snaps: [] }]
  const axes = KEYS.flatMap((key) => {
    const raw = (edit as Keys)[key]
    return typeof raw === 'number' ? [{ key, raw, named: nearest(key, raw, clean, snap), round: roundTo(raw, snap, across[key] ?? 0) }] : []
  })
  const ways = axes.reduce<readonly (readonly Choice[])[]>(
    (all, axis) =>
      all.flatMap((way) =>
        (axis.named
          ? [
              [...way, axis.named],
              [...way, axis.round],
            ]
          : [[...way, axis.round]]
        ).map((each) => each as readonly Choice[]),
      ),
    [[]],
  )
  return ways.map((way) => ({
    edit: { ...edit, ...Object.fromEntries(way.map(({ at }, i) => [axes[i].key, at])) },
    snaps: way.flatMap((choice) => ('key' in choice ? [choice] : [])),
  }))
}

type Keys = Readonly<Partial<Record<CleanKey, number | null>>>
type Choice = CleanPlace | { readonly at: number }
/** Where the edge across from a pulled one stands: then the size is made round, and not the place. */
export type Across = Readonly<Partial<Record<CleanKey, number>>>

const KEYS: readonly CleanKey[] = ['station', 'waterline', 'across', 'fore', 'aft', 'low', 'high']

/** A reason of its own goes before a pitch, of which one is always near; a pitch counts where it is nearer than the next round figure. */
function nearest(key: CleanKey, raw: number, clean: readonly CleanPlace[], { reach, units }: SnapWish): CleanPlace | null {
  // two reasons for one place are told by the one that comes first
  const off = ({ at }: CleanPlace): number => Math.round(Math.abs(at - raw) * 1e5) / 1e5
  const near = clean.filter((each) => each.key === key && off(each) <= Math.min(reach, MOST)).sort((a, b) => off(a) - off(b))
  const own = near.find((each) => !each.isPitch)
  if (own) return own
  const [pitch] = near
  return pitch && off(pitch) < stepOf(reach, units) / 4 ? pitch : null
}

/** The largest round figure that a hand would not feel: half a step is never more than it reaches. */
function stepOf(reach: number, units: UnitSystem): number {
  const steps = units === 'inch' ? [1, 1 / 2, 1 / 4, 1 / 8].map((inches) => inches * 0.0254) : [0.01, 0.005, 0.001]
  return steps.find((step) => step <= Math.min(reach, MOST)) ?? steps[steps.length - 1]
}

function roundTo(raw: number, { reach, units }: SnapWish, from: number): { readonly at: number } {
  const step = stepOf(reach, units)
  return { at: from + Math.round((raw - from) / step) * step }
}
