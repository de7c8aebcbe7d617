/**
 * Rivet rows of an end in its own axes: gore seams, mid ribs, the crown cap, the base and the toe. The cap's and the base's
 * rows own the fasteners where ribs cross them; the ribs' rows stop a pitch short.
 */
import type { RowDraft } from '../common/row-draft.js'
import type { Ground } from './ground.js'
import { END_DISTANCE, type LocalRow, lay, type Mark, started } from './laid-row.js'
import { aroundRow } from './row-around.js'
import { byGirth, type EndSkin, type Located } from './skin.js'

/** Every fastener of an end without openings; `lessCuts` takes out what openings take. */
export function localRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return [
    ...seamRows(ground, skin),
    ...midRows(ground, skin),
    aroundRow(ground, skin, 'cap'),
    ...(ground.base === null ? [] : [aroundRow(ground, skin, 'base')]),
    ...(ground.input.shell.toe.flange > 0 ? [aroundRow(ground, skin, 'toe')] : []),
  ]
}

/**
 * Rows down an end, one a line from the right joint to the left one. Both hands of an end are alike, wrapped or formed: a row on the
 * left is the one across from it turned over, its girths the very same.
 */
export function downBothHands<T>(
  lines: readonly T[],
  start: (line: T, i: number) => RowDraft,
  laid: (line: T, i: number, draft: RowDraft) => LocalRow,
): LocalRow[] {
  const rows: LocalRow[] = []
  for (const [i, line] of lines.entries()) {
    const across = rows[lines.length - 1 - i]
    const draft = start(line, i)
    rows.push(across ? turnedOver(across, draft) : laid(line, i, draft))
  }
  return rows
}

function turnedOver({ draft, located }: LocalRow, { id, says, joint }: RowDraft): LocalRow {
  return {
    draft: { ...draft, id, says, joint },
    located: located.map(({ point: [x, y, z], phi, girth }) => ({ point: [x, -y, z], phi: -phi, girth })),
  }
}

function seamRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return downBothHands(
    ground.edges.slice(1, -1),
    (_, i) => started(ground, `seam-${i + 1}`, `gore seam ${i + 1}`, 'gore', 'gore'),
    (phi, _, draft) => {
      const { cap } = ground.input.ends
      const toe = skin.toeGirth(phi) - END_DISTANCE * draft.diameter
      const base = ground.base === null ? null : skin.locate(phi, { at: 'base' }).girth
      const place = (girth: number): Located => skin.locate(phi, byGirth(girth))
      const upper: Mark[] = [
        { mark: 'cap', u: cap + draft.pitch },
        { mark: base === null ? 'toe' : 'base', u: base === null ? toe : base - draft.pitch },
      ]
      const row = lay(draft, upper, place)
      if (base === null || toe - base < 2 * draft.pitch) return row
      const lower = lay(
        draft,
        [
          { mark: 'base', u: base + draft.pitch },
          { mark: 'toe', u: toe },
        ],
        place,
      )
      return { ...row, located: [...row.located, ...lower.located] }
    },
  )
}

function midRows(ground: Ground, skin: EndSkin): LocalRow[] {
  return downBothHands(
    ground.mids,
    (_, i) => started(ground, `mid-${i + 1}`, `gore ${i + 1} to its mid rib`, 'rib', 'hoop'),
    (phi, i, draft) => {
      const { cap } = ground.input.ends
      const end =
        ground.base === null
          ? skin.locate(phi, byGirth(ground.midCurves[i].lengthAt(ground.floor))).girth
          : skin.locate(phi, { at: 'base' }).girth
      const marks = [
        { mark: 'cap', u: cap + draft.pitch },
        { mark: 'base', u: end - draft.pitch },
      ]
      return lay(draft, marks, (girth) => skin.locate(phi, byGirth(girth)))
    },
  )
}
