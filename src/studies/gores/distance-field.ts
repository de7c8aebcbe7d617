/** How far a wrapped gore stands inside the lofted mould line, all over its flat pattern: a field to be drawn in colour. */
import { type End, gorePart } from '../../derive/end-names.js'
import { drawnFor } from '../../derive/ends/wrapped-parts.js'
import type { GoreSheet } from '../../derive/ends/wrapped-strip.js'
import type { Derived } from '../../derive/index.js'
import { depthInside } from '../../maths/loft.js'
import { add, scale, sub } from '../../maths/vec.js'

/** At the nodes of a net over a flat pattern: node j (across + 1) + i, in the pattern's own axes. m. */
export interface DistanceField {
  readonly part: string
  readonly across: number
  readonly along: number
  readonly x: readonly number[]
  readonly y: readonly number[]
  /** inside the mould line along its normal, of the sheet's mid surface */
  readonly value: readonly number[]
}

/** Places across a ruling, and rulings at most. */
const [ACROSS, ALONG] = [12, 120]

interface Net {
  readonly along: number
  readonly flat: readonly (readonly [number, number])[]
  readonly value: readonly number[]
}

/** Of every gore of an end that could be wrapped; none where the gores are formed. */
export function distanceFields({ endSections }: Pick<Derived, 'endSections'>, end: End): readonly DistanceField[] {
  const { wrapped, ground } = endSections.local
  if (!wrapped) return []
  const nets = new Map<GoreSheet, Net>()
  return wrapped.gores.flatMap((gore) => {
    const { sheet } = gore
    if (!sheet) return []
    const net = nets.get(sheet) ?? netOf(sheet, (point) => depthInside(ground.loft, point))
    nets.set(sheet, net)
    const { seen } = drawnFor(gore, sheet, end)
    const at = net.flat.map(seen)
    return [
      {
        ...{ part: gorePart(end, gore.number), across: ACROSS, along: net.along, value: net.value },
        ...{ x: at.map(([x]) => x), y: at.map(([, y]) => y) },
      },
    ]
  })
}

/** Along each ruling, which is straight in space and flat alike, so that both are shared out by the same figure. */
function netOf({ strip, flat }: GoreSheet, depth: (point: readonly [number, number, number]) => number): Net {
  const last = strip.rulings.length - 1
  const along = Math.min(ALONG, last)
  const [places, value]: [[number, number][], number[]] = [[], []]
  for (let j = 0; j <= along; j++) {
    const k = Math.round((j * last) / along)
    const { from, to } = strip.rulings[k]
    for (let i = 0; i <= ACROSS; i++) {
      const v = i / ACROSS
      places.push([flat.px[k] + v * (flat.qx[k] - flat.px[k]), flat.py[k] + v * (flat.qy[k] - flat.py[k])])
      value.push(depth(add(from, scale(sub(to, from), v))))
    }
  }
  return { along, flat: places, value }
}
