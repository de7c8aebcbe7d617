/**
 * Blind rivets of an end's lining: a row down each rib, through the lap of two panels and the rib's inner flange, and one round the
 * header ring, where they lap the crown panel. A row stands on the far side of the web from the skin's. Does NOT cover the joint
 * frames, whose rows the barrel lays, nor the panels' own holes: they are drilled through the rib's when the panel is fitted.
 */
import type { Ground } from './ground.js'
import type { Layer } from './layers.js'
import { type Rib, type RibPiece, ribPieces } from './members.js'
import { aroundRow, END_DISTANCE, type LocalRow, lay, started } from './rows.js'
import type { EndSkin, Located } from './skin.js'
import { sigmaAt } from './surface.js'

const PREFIX = 'lining-'

/** The rib's or ring's row whose member a row of the lining runs down; null for rows of the skin. */
export const linedRow = (id: string): string | null => (id.startsWith(PREFIX) ? id.slice(PREFIX.length) : null)

export function liningRows(ground: Ground, skin: EndSkin, ribs: readonly Rib[]): LocalRow[] {
  return [...ribs.map((rib) => liningDown(ground, rib, ribPieces(ground, rib, []))), aroundRow(ground, skin, 'cap', true)]
}

/** The row down what openings have left of a rib. */
export function liningDown(ground: Ground, rib: Rib, pieces: readonly RibPiece[]): LocalRow {
  const says = rib.kind === 'seam' ? `lining to seam rib ${rib.number}` : `lining to the mid rib of gore ${rib.number}`
  const draft = started(ground, `${PREFIX}${rib.row}`, says, 'lining', 'lining')
  const along = (sigma: number): number => rib.lined.lengthAt(sigma)
  const foot = along(sigmaAt(ground.loft, ground.input.lining.floorGap))
  const inset = END_DISTANCE * draft.diameter
  // its girth is taped down the rib, which the row runs beside
  const place = (u: number): Located => {
    const sigma = rib.lined.sigmaAt(u)
    return { ...rib.lined.place(sigma), girth: rib.outer.lengthAt(sigma) }
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

/** Panels at a rib, that against it first: the one nearer the joint; panels are counted from the right joint. */
export function panelsAt(ground: Ground, ribs: readonly Rib[], rib: Rib, end: string): Layer[] {
  const thickness = ground.input.lining.thickness.value
  const nth = [...ribs].sort((a, b) => b.phi - a.phi).indexOf(rib) + 1
  const [right, left] = [`${end}-lining-${nth}`, `${end}-lining-${nth + 1}`]
  return (rib.phi > -1e-9 ? [right, left] : [left, right]).map((part) => ({ part, face: 'sheet', thickness }))
}
