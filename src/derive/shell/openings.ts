/** Each opening once, with everything that appears because of it. */
import { developed, undeveloped } from '../../maths/development.js'
import { clipToRectangle, type Vertex } from '../../maths/outline.js'
import { girthAtZ } from '../../maths/tangent-chain.js'
import type { OpeningDerived, Outline } from '../nouns.js'
import { flangeHalf, type Laid, rimReach } from './members.js'
import { type OpeningShape, outlineOf } from './opening-shape.js'
import { placeAt } from './parts.js'
import type { Plate } from './plates.js'
import { type Rim, seamsCrossed } from './rows-rim.js'
import type { ResolvedRow } from './stacks.js'

export function openingsOf(
  laid: Laid,
  rims: readonly Rim[],
  rows: ReadonlyMap<string, ResolvedRow>,
  skins: readonly Plate[],
  lining: readonly Plate[],
  trims: ReadonlyMap<string, string>,
): OpeningDerived[] {
  return rims.map((rim) => {
    const resolved = rows.get(rim.row.id)
    const cutIn = skins.filter((p) => p.cuts.includes(rim.shape)).map((p) => p.part)
    const inLining = lining.filter((p) => p.cuts.includes(rim.shape)).map((p) => p.part)
    return laid.memo.keep(`opening ${rim.shape.id}`, [laid.token, rim, resolved?.row, cutIn.join(), inLining.join()], () =>
      describe(laid, rim, resolved, cutIn, inLining, trims.get(rim.shape.id) ?? null),
    )
  })
}

function describe(
  laid: Laid,
  { shape, row, plate, framing }: Rim,
  resolved: ResolvedRow | undefined,
  cutIn: string[],
  lining: string[],
  trimRing: string | null,
): OpeningDerived {
  const made = resolved?.row
  const outline = onTheSheet(laid, shape).map(([x, v, b]) => [x, undeveloped(laid.skin, v), b] as const) as Outline
  const spans = made ? made.spans : []
  return {
    id: shape.id,
    says: shape.says,
    surface: shape.surface,
    side: shape.side,
    place: placeAt(laid.section.chain, (shape.x0 + shape.x1) / 2, middleGirth(laid, shape)),
    outline,
    open: shape.surface === 'wheel',
    cutIn,
    rim: {
      part: plate.part,
      row: row.id,
      count: made ? made.station.length : 0,
      pitch: spans.length > 0 ? Math.max(...spans.map((s) => s.pitch)) : 0,
    },
    lining,
    trimRing,
    framing: framing.plates.map((p) => p.part),
    cutsFrames: framing.cuts,
    crossesSeams: seamsCrossed(laid, shape),
    blanket: blanketGaps(laid, shape),
  }
}

/** A side opening's middle is where its definition wrote it; of a roof or wheel opening, the outline's own. */
function middleGirth(laid: Laid, shape: OpeningShape): number {
  const { chain } = laid.section
  const written = shape.definition?.waterline
  const g = written !== null && written !== undefined && shape.side !== 'centre' ? girthAtZ(chain, written) : null
  if (g !== null) return shape.side === 'right' ? g : -g
  const levels = onTheSheet(laid, shape).map((p) => p[1])
  return undeveloped(laid.skin, (Math.min(...levels) + Math.max(...levels)) / 2)
}

/** The outline on the developed skin; an opening that runs out through the sheet's edge ends there. */
function onTheSheet(laid: Laid, shape: OpeningShape): readonly Vertex[] {
  const edge = laid.section.sheetEdge
  return clipToRectangle(outlineOf(shape), shape.x0, developed(laid.skin, -edge), shape.x1, developed(laid.skin, edge))
}

/** The rectangle of blanket left out in each bay, to the rim ring's outer edge; station and signed girth. m. */
function blanketGaps(laid: Laid, shape: OpeningShape): OpeningDerived['blanket'] {
  const { input, skin } = laid
  const reach = rimReach(input)
  const gaps: { bay: string; from: [number, number]; to: [number, number] }[] = []
  const floor = laid.section.floor
  const g0 = Math.max(-floor, undeveloped(skin, shape.v0 - reach))
  const g1 = Math.min(floor, undeveloped(skin, shape.v1 + reach))
  for (let i = 0; i + 1 < input.frames.length; i++) {
    const [a, b] = [input.frames[i], input.frames[i + 1]]
    const from = Math.max(shape.x0 - reach, a.station + flangeHalf(input, a))
    const to = Math.min(shape.x1 + reach, b.station - flangeHalf(input, b))
    if (to > from && g1 > g0) gaps.push({ bay: `${a.id}-${b.id}`, from: [from, g0], to: [to, g1] })
  }
  return gaps
}
