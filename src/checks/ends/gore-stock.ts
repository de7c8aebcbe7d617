/**
 * Gores and cap against the sheets they are cut from. The blank of a formed panel is worked out apart; here its size is
 * estimated from the finished panel: down its middle, and across by way of its mid rib where it is widest.
 */
import type { StockRules, StockSize } from '../../definition/types.js'
import { capPart, gorePart } from '../../derive/end-names.js'
import type { Check } from '../../derive/nouns.js'
import { usable } from '../../derive/shell/stock-use.js'
import { length, sub } from '../../maths/vec.js'
import { capacityCheck, HAIR, mm } from '../check.js'
import type { EndsGround } from './ground.js'

const SOURCE =
  'stock sizes and trim of the definition; the blank is estimated from the finished panel with its laps, before what the press grips'

interface Blank {
  readonly id: string
  readonly says: string
  readonly parts: readonly string[]
  readonly long: number
  readonly wide: number
}

/** Left and right gores mirror each other, nose and tail are alike: each distinct panel is asked for once. */
export function goresAgainstStock(ground: EndsGround): Check[] {
  const { gores } = ground.local.ground
  const blanks = Array.from({ length: Math.ceil(gores / 2) }, (_, i) => goreBlank(ground, i + 1))
  return [...blanks, capBlank(ground)].map((blank) => againstStock(ground.definition.stock, blank))
}

function goreBlank({ local, definition }: EndsGround, k: number): Blank {
  const { ends, shell } = definition
  const { gores, seamCurves, midCurves, handed, toe } = local.ground
  const [right, mid, left] = [seamCurves[k - 1], midCurves[k - 1], seamCurves[k]]
  const edge = (e: number): number => (e === 0 || e === gores ? shell.joint.overlap : ends.lap) / 2
  const half = Math.ceil(gores / 2)
  let widest = 0
  for (let i = 0; i <= 60; i++) {
    // at one level of the section, from seam to mid rib to seam
    const sigma = mid.sigmaAt(ends.cap + ((mid.length - ends.cap) * i) / 60)
    const m = mid.atSigma(sigma)
    widest = Math.max(widest, length(sub(right.atSigma(sigma), m)) + length(sub(m, left.atSigma(sigma))))
  }
  const mirror = gores + 1 - k
  const numbers = k < half || mirror !== k ? [k, mirror] : [k]
  return {
    id: `gore-${k}`,
    says: numbers.length === 2 ? `Gores ${k} and ${mirror} of either end` : `Gore ${k} of either end`,
    parts: numbers.flatMap((n) => [gorePart('nose', n), gorePart('tail', n)]),
    long: Math.max(right.length, mid.length, left.length) - ends.cap + ends.lap / 2 + handed.sheetEdge - toe,
    wide: widest + edge(k - 1) + edge(k),
  }
}

function capBlank({ definition }: EndsGround): Blank {
  const { ends, shell } = definition
  const out = ends.cap + ends.lap / 2
  return {
    id: 'cap',
    says: 'The crown cap of either end',
    parts: [capPart('nose'), capPart('tail')],
    long: 2 * out,
    wide: out + shell.joint.overlap / 2,
  }
}

function againstStock(stock: StockRules, blank: Blank): Check {
  const size = `about ${mm(blank.long)} x ${mm(blank.wide)} mm`
  const room = (s: StockSize): { along: number; across: number } => {
    const { length: along, width: across } = usable(s, stock)
    return { along, across }
  }
  const share = (s: StockSize): number => Math.max(blank.long / room(s).along, blank.wide / room(s).across)
  const takes = stock.sheets.filter((s) => share(s) <= 1 + HAIR).sort((a, b) => a.length * a.width - b.length * b.width)
  const best = takes[0] ?? [...stock.sheets].sort((a, b) => share(a) - share(b))[0]
  const { along, across } = room(best)
  const byLength = blank.long / along >= blank.wide / across
  const [need, there] = byLength ? [blank.long, along] : [blank.wide, across]
  return capacityCheck(
    {
      id: `stock.end-${blank.id}`,
      says: takes[0]
        ? `${blank.says} need${blank.says.startsWith('Gores') ? '' : 's'} a blank of ${size}: ${best.name} takes it, with ${mm(along)} x ${mm(across)} mm usable.`
        : `${blank.says} need${blank.says.startsWith('Gores') ? '' : 's'} a blank of ${size}, and no listed stock takes it: ${best.name}, the nearest, has ${mm(along)} x ${mm(across)} mm usable.`,
      source: SOURCE,
      concerns: blank.parts,
      mend: takes[0]
        ? null
        : `${byLength ? 'A larger cap or a splice' : 'More gores'}, or a sheet of at least ${size} listed in the stock.`,
    },
    need,
    there,
    'm',
  )
}
