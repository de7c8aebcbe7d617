/** The geometric half of the axle window: where the group may stand without its tubes, wheels and openings meeting anything. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { finding, mm } from '../check.js'

export function axleWindow({ under }: Derived): Check[] {
  const { gear } = under
  if (!gear) return []
  const { window, mean, neighbours } = gear
  const told = {
    id: 'axle.window',
    source: 'rules.tube to cross-member of the definition, and geometry; loads are looked at with the weight',
    concerns: ['axles'],
    places: [{ side: 'centre' as const, station: mean, girth: 0, waterline: 0, buttock: 0 }],
  }
  const inside = window.find((w) => mean >= w.from - 1e-9 && mean <= w.to + 1e-9)
  if (inside)
    return [
      finding(
        {
          ...told,
          says: `The mean axle at STA ${mm(mean)} may stand from ${mm(inside.from)} to ${mm(inside.to)} with every tube and wheel clear. Before that ${inside.before} is in the way, behind it ${inside.after}.`,
        },
        'pass',
      ),
    ]
  const barring = neighbours.filter((n) => n.by !== null)
  const moved = barring.map((n) => `${n.what} by ${mm(n.by ?? 0)} mm`)
  const nearest = window
    .map((w) => ({ w, at: Math.min(w.to, Math.max(w.from, mean)) }))
    .sort((a, b) => Math.abs(a.at - mean) - Math.abs(b.at - mean))[0]
  return [
    finding(
      {
        ...told,
        says: `With the mean axle at STA ${mm(mean)} a tube or a wheel meets what stands beside it${nearest ? `: ${mean < nearest.at ? nearest.w.before : nearest.w.after} is in the way` : ''}.`,
        mend: nearest
          ? `The nearest clear place is a mean axle at STA ${mm(nearest.at)}, ${mm(Math.abs(nearest.at - mean))} mm ${nearest.at < mean ? 'forward' : 'aft'}; it is clear from ${mm(nearest.w.from)} to ${mm(nearest.w.to)}.${moved.length > 0 ? ` Or move ${moved.join(' and ')}.` : ''}`
          : 'No place on the barrel is clear: move a cross-member, or bring the axles together.',
      },
      'fail',
    ),
  ]
}
