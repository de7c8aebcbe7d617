/** Hold-down bolts, and what cuts the panel. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { distanceCheck, finding, mm } from '../check.js'

export function holdDowns({ under, definition, bolts }: Derived): Check[] {
  const { floor } = under
  if (!floor || !definition.floor?.bolts)
    return [finding({ id: 'floor.hold-down', says: 'No hold-down bolts are written.', source: 'the definition' }, 'not-checked')]
  const rows = bolts.filter((r) => r.kind === 'bolt')
  return [
    finding(
      {
        id: 'floor.hold-down',
        says: `${floor.bolts} bolts of ${definition.floor.bolts.diameter.name} hold the floor and the body on the chassis. Whether they are enough is not checked: an engineer must approve.`,
        source: 'no rule yet',
        concerns: rows.map((r) => r.id),
      },
      'not-checked',
    ),
  ]
}

/** Half of a socket on a bolt of so many diameters: a ring of nut and socket wall. From memory. */
const SOCKET = 1.25

/** A rail's bolt must be reached from below beside the web of whatever ends at the rail. */
export function boltsAgainstWebs({ under, definition, bolts }: Derived): Check[] {
  const cross = definition.chassis?.crossMember
  const members = under.chassis?.members.filter((m) => m.kind === 'cross-member') ?? []
  if (!cross || members.length === 0) return []
  const rows = bolts.filter((r) => r.kind === 'bolt' && r.id.startsWith('bolts-rail'))
  return rows.map((row) => {
    let nearest = { room: Number.POSITIVE_INFINITY, i: 0, member: members[0] }
    row.station.forEach((station, i) => {
      for (const member of members) {
        const web = Math.min(...member.plan.map((p) => p[0]))
        const room = Math.max(web - station, station - web - cross.thickness.value)
        if (room < nearest.room) nearest = { room, i, member }
      }
    })
    const need = SOCKET * row.diameter
    const check = distanceCheck(
      {
        id: `floor.bolts.${row.id}`,
        says: `The bolt of ${row.says} at STA ${mm(row.station[nearest.i])} stands ${mm(nearest.room)} mm from the web of the ${nearest.member.says}; a socket needs ${mm(need)} mm.`,
        source: 'from memory: half of a socket is 1.25 diameters of its bolt',
        concerns: [row.id, nearest.member.part],
        places: [
          {
            side: row.id.endsWith('left') ? 'left' : 'right',
            station: row.station[nearest.i],
            girth: 0,
            waterline: 0,
            buttock: row.buttock?.[nearest.i] ?? 0,
          },
        ],
      },
      need,
      nearest.room,
      'caution',
    )
    return check.verdict === 'pass' ? check : { ...check, mend: 'Another pitch of the bolts, or leave this one out and add one beside it.' }
  })
}

/** An inner corner cannot be cut sharper than the cutter. */
export function cutterAgainstCorners({ definition }: Derived): Check[] {
  const cutter = definition.floor?.cutter
  const box = definition.gear?.wheelBox
  if (!cutter || !box) return []
  const check = distanceCheck(
    {
      id: 'floor.cutter',
      says: `The cut-outs of the wheel boxes have inner corners of ${mm(box.corner)} mm; the cutter of ${mm(cutter)} mm leaves ${mm(cutter / 2)} mm.`,
      source: "geometry: half of the cutter's diameter",
      concerns: ['floor-panel'],
    },
    cutter / 2,
    box.corner,
  )
  return [check.verdict === 'pass' ? check : { ...check, mend: 'A thinner cutter, or rounder corners.' }]
}
