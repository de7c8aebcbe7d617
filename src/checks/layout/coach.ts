/** Rules of the whole coach: floor against its board, laps against the order of assembly, flues, axles, lengths. */
import type { Check } from '../../derive/nouns.js'
import { capacityCheck, distanceCheck, finding, mm } from '../check.js'
import { type Ground, middleOf } from './ground.js'

export function floorAgainstBoard(ground: Ground): Check[] {
  const { floor, frames, stock } = ground.input
  if (!floor)
    return [
      finding({ id: 'floor.board', says: 'No floor is written, so its board was not checked.', source: 'the definition' }, 'not-checked'),
    ]
  const length = frames[frames.length - 1].station - frames[0].station + 2 * floor.endReach
  return [
    capacityCheck(
      {
        id: 'floor.length',
        says: `The one-piece floor is ${mm(length)} mm long; the board ${stock.board.name} is ${mm(stock.board.length)} mm.`,
        source: 'stock sizes of the definition',
        mend: length > stock.board.length ? 'A longer scarfed board, or one bay less.' : null,
      },
      length,
      stock.board.length,
      'm',
    ),
    capacityCheck(
      {
        id: 'floor.width',
        says: `The floor is ${mm(2 * floor.halfWidth)} mm wide; the board is ${mm(stock.board.width)} mm.`,
        source: 'stock sizes of the definition',
      },
      2 * floor.halfWidth,
      stock.board.width,
      'm',
    ),
  ]
}

export function lapsAgainstAssembly(ground: Ground): Check[] {
  const { shell } = ground.input
  const source = 'common practice, no source: laps shed water, and the sheet that goes on last lies on top'
  const checks: Check[] = []
  const barrelOver = shell.joint.over === 'barrel'
  const possible = barrelOver === (shell.assembly === 'ends first')
  checks.push(
    finding(
      {
        id: 'lap.assembly',
        source,
        concerns: ['joint'],
        says: possible
          ? `Assembled ${shell.assembly}: the ${shell.joint.over === 'barrel' ? 'barrel' : 'end skin'} goes on last and lies on top, as it can.`
          : `Assembled ${shell.assembly}, the ${shell.joint.over === 'barrel' ? 'barrel' : 'end'} skin cannot lie on top: it would have to be slipped under rivets already driven.`,
        mend: possible ? null : `Assemble ${barrelOver ? 'ends first' : 'barrel first'}, or lap the ${barrelOver ? 'end' : 'barrel'} over.`,
      },
      possible ? 'pass' : 'fail',
    ),
  )
  const frames = ground.input.frames
  const forward = barrelOver ? frames[0] : frames[frames.length - 1]
  checks.push(
    finding(
      {
        id: `lap.joint-${forward.id}`,
        source,
        concerns: [`joint-${forward.id}`],
        says: `The ${forward.joint} joint at ${forward.id} laps so that its edge faces forward, into driven rain: it needs a second bead and a batten over the edge.`,
      },
      'caution',
    ),
  )
  checks.push(
    finding(
      {
        id: 'lap.seams',
        source,
        says:
          shell.lapOrder === 'upper over lower'
            ? 'Every lengthwise seam laps upper over lower.'
            : 'The lengthwise seams lap lower over upper: water runs into every one.',
        mend: shell.lapOrder === 'upper over lower' ? null : 'Lap the upper sheet over the lower one.',
      },
      shell.lapOrder === 'upper over lower' ? 'pass' : 'fail',
    ),
  )
  checks.push(
    distanceCheck(
      {
        id: 'lap.width',
        says: `A lap of ${mm(shell.lap)} mm gives its middle row ${mm(shell.lap / 2)} mm of edge; the shop asks for ${mm(ground.input.rules.lapEdge)} mm in laps.`,
        source: 'rules.lap edge of the definition',
      },
      ground.input.rules.lapEdge,
      shell.lap / 2,
    ),
  )
  return checks
}

/** A flue beside or under a window that opens sends its gas indoors. The maker's figure governs. */
export function fluesAgainstWindows(ground: Ground): Check[] {
  const shapes = ground.derived.shell.laid.shapes
  const need = ground.input.rules.flueToWindow
  const source = "common practice, no source: 300 mm from an opening window, measured sideways; the appliance maker's figure governs"
  return shapes
    .filter((f) => f.definition?.kind === 'flue')
    .map((flue) => {
      const above = shapes
        .filter((w) => {
          const o = w.definition
          return (
            o !== null &&
            (o.kind === 'window' || o.kind === 'door') &&
            o.opens &&
            w.side === flue.side &&
            (o.waterline ?? 0) + o.height / 2 > (flue.definition?.waterline ?? 0)
          )
        })
        .map((w) => ({ w, room: Math.max(0, w.x0 - flue.x1, flue.x0 - w.x1) }))
        .sort((a, b) => a.room - b.room)[0]
      const told = { id: `flue.${flue.id}`, source, places: [middleOf(ground, flue)], concerns: [flue.id, ...(above ? [above.w.id] : [])] }
      if (!above) return finding({ ...told, says: `No window or door that opens stands over or beside the flue ${flue.id}.` }, 'pass')
      const says =
        above.room === 0
          ? `The flue ${flue.id} stands under ${above.w.id}, which opens: its gas would rise into the coach.`
          : `The flue ${flue.id} is ${mm(above.room)} mm to the side of ${above.w.id}, which opens; ${mm(need)} mm are asked for.`
      const check = distanceCheck({ ...told, says }, need, above.room)
      return check.verdict === 'pass'
        ? check
        : { ...check, mend: `Make ${above.w.id} fixed, or move the flue. A licensed fitter must approve any flue.` }
    })
}

/** Axle tubes against cross-members: room for the bracket, the wrench and the weld that must stay off the rubber. */
export function axlesAgainstCrossMembers(ground: Ground): Check[] {
  const { gear, chassis } = ground.derived.definition
  if (!gear || gear.spindles.length === 0)
    return [
      finding(
        { id: 'axle.tubes', says: 'No axle is written, so nothing was checked against it.', source: 'the definition' },
        'not-checked',
      ),
    ]
  if (!chassis || chassis.crossMembers.length === 0) {
    return [
      finding(
        {
          id: 'axle.tubes',
          says: 'No cross-members are written, so the axle tubes were not checked against them.',
          source: 'the definition',
        },
        'not-checked',
      ),
    ]
  }
  const need = ground.input.rules.tubeToCrossMember
  return gear.spindles.map((spindle) => {
    const tube = spindle - gear.arm
    const nearest = [...chassis.crossMembers].sort((a, b) => Math.abs(a - tube) - Math.abs(b - tube))[0]
    const room = Math.abs(nearest - tube)
    const check = distanceCheck(
      {
        id: `axle.${mm(spindle)}`,
        says: `The axle at STA ${mm(spindle)} has its tube at STA ${mm(tube)}, ${mm(room)} mm from the cross-member at STA ${mm(nearest)}; ${mm(need)} mm are asked for.`,
        source: 'rules.tube to cross-member of the definition',
        places: [{ side: 'centre', station: tube, girth: 0, waterline: 0 }],
        concerns: ['axles'],
      },
      need,
      room,
    )
    return check.verdict === 'pass' ? check : { ...check, mend: tubeWindow(chassis.crossMembers, tube, need, gear.arm) }
  })
}

function tubeWindow(members: readonly number[], tube: number, need: number, arm: number): string {
  const sorted = [...members].sort((a, b) => a - b)
  const places = sorted
    .slice(1)
    .flatMap((m, i) => (m - sorted[i] >= 2 * need ? [Math.min(m - need, Math.max(sorted[i] + need, tube))] : []))
  const best = places.sort((a, b) => Math.abs(a - tube) - Math.abs(b - tube))[0]
  return best === undefined
    ? 'No bay of the chassis has room for the tube.'
    : `The nearest clear place is a tube at STA ${mm(best)}, spindle STA ${mm(best + arm)}.`
}

/** Overall sizes that bring further duties; the law in force governs. */
export function overallSizes(ground: Ground): Check[] {
  const { totals, definition } = ground.derived
  const us = definition.coach.market === 'us'
  const wide = us ? 2.5908 : 2.55
  const checks = [
    capacityCheck(
      {
        id: 'overall.width',
        says: `The body is ${mm(totals.overallWidth)} mm wide; ${mm(wide)} mm are allowed on the road.`,
        source: us
          ? '23 CFR 658.15: 102 in (from memory; the law in force governs)'
          : 'Directive 96/53/EC, annex I: 2.55 m (from memory; the law in force governs)',
      },
      totals.overallWidth,
      wide,
      'm',
    ),
  ]
  if (us) {
    checks.push(
      capacityCheck(
        {
          id: 'overall.length',
          says: `Overall length ${mm(totals.overallLength)} mm from the coupler face; from 9144 mm (30 ft) further side lamps are required.`,
          source: '49 CFR 571.108, intermediate side markers (from memory; the law in force governs)',
        },
        totals.overallLength,
        9.144,
        'm',
        'caution',
      ),
    )
  }
  return checks
}
