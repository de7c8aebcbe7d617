/** Where tank bays and stated masses stand clean: against a cross-member, on the centre line, over the axles. m. */
import { mm } from '../checks/check.js'
import type { Derived } from '../derive/index.js'
import { type CleanPlace, down, up } from './clean-place.js'

export function cleanForBay({ under, definition }: Derived, id: string): readonly CleanPlace[] {
  const bay = definition.chassis?.bays.find((each) => each.id === id)
  if (!bay) return []
  const half = (bay.aft - bay.fore) / 2
  const members = (under.chassis?.members ?? []).filter(({ kind }) => kind === 'cross-member')
  const spans = members
    .map(({ plan }) => plan.map(([x]) => x))
    .map((x) => ({ from: Math.min(...x), to: Math.max(...x) }))
    .sort((a, b) => a.from - b.from)
  const against = spans.flatMap(({ from, to }): readonly CleanPlace[] => {
    const says = `against the cross-member at STA ${mm((from + to) / 2)}`
    return [
      { key: 'station', at: up(to + half), guide: to, says },
      { key: 'station', at: down(from - half), guide: from, says },
    ]
  })
  const between = spans.slice(1).flatMap(({ from }, i): readonly CleanPlace[] => {
    const middle = (spans[i].to + from) / 2
    if (from - spans[i].to < 2 * half) return []
    return [{ key: 'station', at: middle, guide: middle, says: 'midway between two cross-members' }]
  })
  return [...against, ...between, CENTRE_LINE]
}

export function cleanForMass({ under }: Derived): readonly CleanPlace[] {
  const { gear } = under
  return [CENTRE_LINE, ...(gear ? [{ key: 'station' as const, at: gear.mean, guide: gear.mean, says: 'over the mean axle' }] : [])]
}

const CENTRE_LINE: CleanPlace = { key: 'across', at: 0, guide: 0, says: 'on the centre line' }
