/** Whether a formed panel can be had: its peak stretch against the alloy, its least thickness against the shop, its blank against the stock. */
import { capacityCheck, distanceCheck, finding, HAIR, mm } from '../../checks/check.js'
import type { Definition } from '../../definition/types.js'
import type { Check, Outline } from '../../derive/nouns.js'
import { distanceToOutline } from '../../maths/outline.js'
import { findAlloy } from '../../tables/alloys.js'
import type { PanelBlank } from './compute.js'
import type { BlankPart, FormedBlank } from './nouns.js'

/** Share of the least elongation that forming may use. No public table of limits was found; half is a judgement. */
const SHARE = 0.5

export function blankChecks(
  made: Omit<FormedBlank, 'checks'>,
  definition: Definition,
  { converged, coarsePeak }: Pick<PanelBlank, 'converged' | 'coarsePeak'>,
): readonly Check[] {
  const { ends, stock } = definition
  const { alloy, thickness } = ends.skin
  const found = findAlloy(alloy, thickness.value)
  if (!found.ok) throw new Error(found.says)
  const { elongation } = found.row
  const limit = SHARE * elongation.value
  const concerns = made.parts.map((p) => p.part)
  const places = [made.stretch.place]
  const percent = (x: number): string => `${(100 * x).toFixed(1)} %`
  const checks = [
    capacityCheck(
      {
        id: `blank.${made.panel}.stretch`,
        says: `Forming stretches ${made.says} by ${percent(made.stretch.peak)} at most, at ${made.stretch.says}; half the least elongation of ${alloy} is ${percent(limit)}.`,
        source: `least elongation ${percent(elongation.value)}: ${elongation.source}; half of it is a working limit by judgement, no source`,
        places,
        concerns,
        mend: made.stretch.peak > limit ? 'More gores, a softer temper, or forming in two steps with annealing between them.' : null,
      },
      made.stretch.peak,
      limit,
      '1',
    ),
    distanceCheck(
      {
        id: `blank.${made.panel}.thickness`,
        says: `Forming leaves ${made.says} ${(made.leastThickness * 1000).toFixed(3)} mm thick at its thinnest, of ${thickness.name}; the shop wants ${(ends.minThickness * 1000).toFixed(2)} mm.`,
        source: 'ends.minThickness of the definition; thickness by constant volume',
        places,
        concerns,
        mend: made.leastThickness < ends.minThickness ? 'A thicker sheet, or more gores.' : null,
      },
      ends.minThickness,
      made.leastThickness,
    ),
    finding(
      {
        id: `blank.${made.panel}.stock`,
        says:
          made.stock === null
            ? `The blank of ${made.says}, ${mm(made.length)} by ${mm(made.width)} mm, comes out of no stock sheet.`
            : `The blank of ${made.says}, ${mm(made.length)} by ${mm(made.width)} mm, comes out of ${made.stock}.`,
        source: `stock of the definition, ${mm(stock.trim)} mm trimmed off each edge`,
        concerns,
        mend: made.stock === null ? 'A larger stock sheet, or more gores.' : null,
      },
      made.stock === null ? 'fail' : 'pass',
    ),
  ]
  checks.push(meshCheck(made, coarsePeak, concerns))
  checks.push(...made.parts.flatMap((own) => edgeCheck(own, definition)))
  if (converged) return checks
  const says = `The search for the blank of ${made.says} did not come to an end: its figures are not to be used.`
  return [...checks, finding({ id: `blank.${made.panel}.search`, says, source: 'residual of the search', concerns }, 'fail')]
}

/** Share of the peak, and strain, that halving the mesh may still move it by: a tenth of a percent of strain decides nothing. */
const SETTLED = { share: 0.05, strain: 0.001 }

/** Each halving of the cells moves the peak half as far as the one before, so the last one tells of the next. */
function meshCheck(
  { panel, says, stretch: { peak } }: Pick<FormedBlank, 'panel' | 'says' | 'stretch'>,
  coarsePeak: number,
  concerns: readonly string[],
): Check {
  const next = Math.abs(peak - coarsePeak) / 2
  const percent = (x: number): string => `${(100 * x).toFixed(2)} %`
  return capacityCheck(
    {
      id: `blank.${panel}.mesh`,
      says: `On cells twice the size the peak stretch of ${says} comes out at ${percent(coarsePeak)}, on these at ${percent(peak)}: halving them again would move it by about ${percent(next)}.`,
      source:
        'halving the mesh is to move the peak by less than 5 %, or by less than 0.1 % of strain; the change halves with the cells, as measured',
      concerns,
    },
    next,
    Math.max(SETTLED.share * peak, SETTLED.strain),
    '1',
    'caution',
  )
}

/** A pilot so near the edge of its own sheet that the rivet would tear out: a row crosses a lap's edge there. Nothing is said where all is well. */
function edgeCheck({ part, outline, holes }: BlankPart, { fasteners, rules, rows }: Definition): readonly Check[] {
  const least = Math.min(
    ...Object.values(rows).map((r) => fasteners.find((f) => f.id === r.fastener)?.diameter.value ?? Number.POSITIVE_INFINITY),
  )
  const need = rules.edgeDistance * least
  const isNear = nearEdge(outline, need)
  const tight = holes.x.flatMap((x, i) => {
    const d = isNear(x, holes.y[i]) ? distanceToOutline(outline, x, holes.y[i]) : need
    return d < need - HAIR ? [{ d, row: holes.rows[holes.row[i]] }] : []
  })
  if (tight.length === 0) return []
  const worst = Math.min(...tight.map((t) => t.d))
  const of = [...new Set(tight.map((t) => t.row))].join(', ')
  return [
    distanceCheck(
      {
        id: `blank.${part}.edge`,
        says: `${tight.length} of the pilots of ${of} in ${part} stand within ${mm(need)} mm of its edge, the nearest at ${mm(worst)} mm: leave them out of the blank and set these rivets clear of the lap.`,
        source: 'rules.edgeDistance of the definition',
        concerns: [part],
        mend: 'Move what the row belongs to, so that it crosses no lap there.',
      },
      need,
      worst,
      'caution',
    ),
  ]
}

/** Whether a point may be within `reach` of an outline's edge: by boxes round its pieces, which spares the true distance for most holes. */
function nearEdge(outline: Outline, reach: number): (x: number, y: number) => boolean {
  const boxes = outline.map(([ax, ay, bulge], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]
    const room = reach + Math.abs(bulge) * Math.hypot(bx - ax, by - ay)
    return [Math.min(ax, bx) - room, Math.min(ay, by) - room, Math.max(ax, bx) + room, Math.max(ay, by) + room] as const
  })
  return (x, y) => boxes.some(([x0, y0, x1, y1]) => x > x0 && x < x1 && y > y0 && y < y1)
}
