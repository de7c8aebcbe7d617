/** All rules of nose and tail. What hangs on an end alone is kept as long as the end and its openings are the same. */
import type { Derived } from '../../derive/index.js'
import type { Check } from '../../derive/nouns.js'
import { accessToBuckEnds } from './buck-ends.js'
import { endEdges, endLaps, nearestEdges } from './edge-distance.js'
import { paneOnEnd, panesOnRoof } from './flat-panes.js'
import { goresAgainstStock } from './gore-stock.js'
import { type EndsGround, endsGroundOf, openingsOn, type Standing } from './ground.js'
import { jointEdges } from './joint-edge.js'
import { endsNotChecked } from './not-checked.js'
import { openingsOffTheEnd } from './openings-off.js'
import { openingBetweenRings, openingsApart } from './openings-room.js'
import { openingAgainstRibs, openingAgainstSeams } from './openings-seams.js'
import { endPitches, nearPairs, rowsNear, spacingOf } from './spacing.js'
import { wrappedGores } from './wrapped-gores.js'

export function endChecks(derived: Derived): Check[] {
  const ground = endsGroundOf(derived)
  const { definition, local } = ground
  const { memo } = derived.shell.laid
  const near = ground.ends.flatMap((at) => {
    return (['skin', 'lining'] as const).flatMap((layer) => {
      const rows = rowsNear(ground, at, layer)
      return memo.keep(`end spacing ${at.end} ${layer}`, [...rows, definition.rules], () => nearPairs(ground, at, rows))
    })
  })
  const edges = ground.ends.flatMap((at) =>
    memo.keep(`end edges ${at.end}`, [...openingsWritten(ground, at), local, at.joint, definition.rules], () => nearestEdges(ground, at)),
  )
  return [
    ...ground.ends.flatMap((at) =>
      memo.keep(`end openings ${at.end}`, [...openingsWritten(ground, at), local, at.joint, definition.rules], () =>
        openingRules(ground, at),
      ),
    ),
    ...panesOnRoof(ground),
    ...endEdges(edges),
    ...endLaps(ground),
    ...spacingOf(ground, near),
    ...endPitches(ground),
    ...memo.keep('end stock', [local, definition.stock], () => goresAgainstStock(ground)),
    ...jointEdges(ground),
    ...accessToBuckEnds(ground),
    ...wrappedGores(ground),
    ...endsNotChecked(ground),
  ]
}

const openingsWritten = ({ definition }: EndsGround, at: Standing) => definition.openings.filter((o) => o.surface === at.end)

function openingRules(ground: EndsGround, at: Standing): Check[] {
  const all = openingsOn(ground, at)
  return [
    ...openingsOffTheEnd(ground, at),
    ...all.flatMap((one) => [
      ...openingAgainstSeams(ground, one),
      ...openingAgainstRibs(ground, one),
      ...openingBetweenRings(ground, one),
      ...paneOnEnd(ground, one),
    ]),
    ...openingsApart(ground, all),
  ]
}
