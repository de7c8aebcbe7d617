/** Joints from their rows: the layers outside to inside, and what the lap's direction means for water. */
import { gathered } from '../common/gathered.js'
import type { Memo } from '../memo.js'
import type { FastenerRow, Joint } from '../nouns.js'
import type { ShellInput } from './input.js'
import type { Plate } from './plates.js'
import type { ResolvedRow } from './stacks.js'

export function jointsOf(input: ShellInput, memo: Memo, token: unknown, resolved: readonly ResolvedRow[]): Joint[] {
  const byJoint = gathered(resolved, ({ row }) => [row.joint])
  return [...byJoint].map(([id, rows]) =>
    memo.keep(`joint ${id}`, [token, ...rows.map((r) => r.row)], () => ({
      id,
      says: saysOf(rows.map((r) => r.row)),
      layers: layersOf(rows),
      rows: rows.map((r) => r.row.id),
      lap: lapOf(input, id, rows[0].row),
    })),
  )
}

function saysOf(rows: readonly FastenerRow[]): string {
  return rows.length === 1 ? rows[0].says : rows[0].says.replace(/, (inner|outer|fore|aft) row$/, ', two rows')
}

/** Plates of one order of the stack make one layer, whatever part they belong to along the joint. */
function layersOf(rows: readonly ResolvedRow[]): Joint['layers'] {
  const layers = new Map<string, { says: string; parts: Set<string>; material: string; thickness: number; order: number }>()
  for (const { through } of rows) {
    for (const { plate } of through) {
      const key = `${plate.kind}|${plate.face}|${Math.floor(plate.order)}|${plate.thickness}`
      const layer = layers.get(key)
      if (layer) layer.parts.add(plate.part)
      else
        layers.set(key, {
          says: layerWord(plate),
          parts: new Set([plate.part]),
          material: plate.material,
          thickness: plate.thickness,
          order: plate.order,
        })
    }
  }
  return [...layers.values()]
    .sort((a, b) => a.order - b.order)
    .map((l) => ({ says: l.says, parts: [...l.parts], material: l.material, thickness: l.thickness }))
}

function layerWord(plate: Plate): string {
  const words: Partial<Record<Plate['kind'], string>> = {
    strake: 'skin',
    frame: 'hoop frame',
    'joint-frame': 'joint frame',
    rim: 'rim ring',
    stringer: 'stringer',
    header: 'header',
    post: 'post',
    'edge-channel': 'edge channel',
    lining: 'lining',
    'end-lining': 'end lining',
    'trim-ring': 'trim ring',
  }
  return words[plate.kind] ?? plate.says
}

/** Which sheet lies over which, said where a person decides the order of assembly. */
function lapOf(input: ShellInput, id: string, row: FastenerRow): string | null {
  if (row.kind === 'seam') {
    return input.shell.lapOrder === 'upper over lower'
      ? 'The upper sheet lies over the lower one, so water runs off the lap.'
      : 'The lower sheet lies over the upper one: water runs into the lap.'
  }
  if (row.kind !== 'joint') return null
  const frame = input.frames.find((f) => id === `joint-${f.id}`)
  const barrelOver = input.shell.joint.over === 'barrel'
  const forward = (frame?.joint === 'nose') === barrelOver
  const which = barrelOver ? 'The barrel skin lies over the end skin' : 'The end skin lies over the barrel skin'
  return forward ? `${which}; the lap faces forward here, into the driven rain.` : `${which}; the lap faces aft here, in the lee.`
}
