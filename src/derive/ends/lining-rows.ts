/**
 * Blind rivets of an end's lining: a row down each rib, through the lap of two panels and the rib's inner flange, and one round the
 * header ring, where they lap the crown panel. A row stands on the far side of the web from the skin's. Does NOT cover the joint
 * frames, whose rows the barrel lays, nor the panels' own holes, which come with their flat patterns.
 */
import { pointInside } from '../../maths/loft.js'
import type { RowDraft } from '../common/row-draft.js'
import { type End, liningPart } from '../end-names.js'
import type { Ground } from './ground.js'
import { END_DISTANCE, type LocalRow, lay, started } from './laid-row.js'
import type { Layer } from './layers.js'
import { linedBeside, ringSigma } from './lined-curve.js'
import { type Rib, type RibPiece, ribPieces } from './members.js'
import { aroundRow, type Crossing } from './row-around.js'
import { downBothHands } from './rows.js'
import type { EndSkin, Located } from './skin.js'
import { sigmaAt } from './surface.js'

const PREFIX = 'lining-'

/** The rib's or ring's row whose member a row of the lining runs down; null for rows of the skin. */
export const linedRow = (id: string): string | null => (id.startsWith(PREFIX) ? id.slice(PREFIX.length) : null)

export function liningRows(ground: Ground, skin: EndSkin, ribs: readonly Rib[]): LocalRow[] {
  const down = (kind: Rib['kind']): LocalRow[] =>
    downBothHands(
      ribs.filter((rib) => rib.kind === kind),
      (rib) => startedDown(ground, rib),
      (rib, _, draft) => layDown(ground, rib, ribPieces(ground, rib, []), draft),
    )
  return [...down('seam'), ...down('mid'), aroundRow(ground, skin, 'cap', crossings(ground, ribs))]
}

/**
 * Where the ring's row crosses the lines of the ribs' own, which end short of it: there both panels lap. The ring stands square to the
 * skin and a rib's web upright, so the two meet on the lining, and elsewhere on the skin over it.
 */
function crossings(ground: Ground, ribs: readonly Rib[]): Crossing[] {
  const { loft, input } = ground
  const depth = 2 * input.ends.skin.thickness.value + input.shell.frame.height + input.shell.tape
  return ribs.map((rib) => {
    const sigma = ringSigma(ground, rib)
    const beside = (rib.phi > -1e-9 ? 1 : -1) * linedBeside(input)
    let { phi } = rib
    for (let i = 0; i < 4; i++) {
      const [x, y] = pointInside(loft, phi, sigma, depth)
      phi += (beside - y * Math.cos(rib.phi) + x * Math.sin(rib.phi)) / Math.hypot(x, y)
    }
    return { phi, mark: rib.row }
  })
}

/** The row down what openings have left of a rib. */
export const liningDown = (ground: Ground, rib: Rib, pieces: readonly RibPiece[]): LocalRow =>
  layDown(ground, rib, pieces, startedDown(ground, rib))

function startedDown(ground: Ground, { kind, number, row }: Rib): RowDraft {
  const says = kind === 'seam' ? `lining to seam rib ${number}` : `lining to the mid rib of gore ${number}`
  return started(ground, `${PREFIX}${row}`, says, 'lining', 'lining')
}

function layDown(ground: Ground, rib: Rib, pieces: readonly RibPiece[], draft: RowDraft): LocalRow {
  const along = (sigma: number): number => rib.lined.lengthAt(sigma)
  const foot = along(sigmaAt(ground.loft, ground.input.lining.floorGap))
  const inset = END_DISTANCE * draft.diameter
  // its girth is taped down the rib, which the row runs beside
  const place = (u: number): Located => {
    const sigma = rib.lined.sigmaAt(u)
    const { point, phi } = rib.lined.place(sigma)
    return { point, phi, girth: rib.outer.lengthAt(sigma) }
  }
  const rows = pieces.map((piece) =>
    lay(
      draft,
      [
        { mark: piece.fromMark, u: along(rib.outer.sigmaAt(piece.from)) + inset },
        { mark: piece.toMark, u: Math.min(along(rib.outer.sigmaAt(piece.to)), foot) - inset },
      ],
      place,
    ),
  )
  return { draft, located: rows.flatMap((row) => row.located) }
}

/** The header ring with the panel that ends on it, or both of a lap, and the crown panel over them. */
export function onRing(ground: Ground, ribs: readonly Rib[], end: End): (at: Located) => readonly Layer[] {
  const { shell, lining } = ground.input
  const sheet = (part: string): Layer => ({ part, face: 'sheet', thickness: lining.thickness.value })
  const ring = { part: `${end}-header-ring`, face: 'inner flange', thickness: shell.frame.thickness.value }
  const stacked = (panels: readonly Layer[]): Layer[] => [ring, ...panels, sheet(liningPart(end, 'crown'))]
  const sorted = [...ribs].sort((a, b) => b.phi - a.phi)
  const lines = crossings(ground, sorted).map(({ phi }) => phi)
  const single = [...sorted, null].map((_, i) => stacked([sheet(liningPart(end, i + 1))]))
  const laps = sorted.map((rib) => stacked(panelsAt(ground, ribs, rib, end)))
  return ({ phi, point }) => {
    const r = Math.hypot(point[0], point[1])
    const lap = lines.findIndex((line) => Math.abs(r * Math.sin(phi - line)) < lining.lap / 2)
    return lap >= 0 ? laps[lap] : single[lines.filter((line) => line > phi).length]
  }
}

/** Panels at a rib, that against it first: the one nearer the joint; panels are counted from the right joint. */
export function panelsAt(ground: Ground, ribs: readonly Rib[], rib: Rib, end: End): Layer[] {
  const thickness = ground.input.lining.thickness.value
  const nth = [...ribs].sort((a, b) => b.phi - a.phi).indexOf(rib) + 1
  const [right, left] = [liningPart(end, nth), liningPart(end, nth + 1)]
  return (rib.phi > -1e-9 ? [right, left] : [left, right]).map((part) => ({ part, face: 'sheet', thickness }))
}
