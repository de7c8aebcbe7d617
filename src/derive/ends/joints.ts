/** The joints of an end: the layers of each row outside to inside, and which way its laps face. */
import type { End } from '../end-names.js'
import type { Joint } from '../nouns.js'
import type { Ground } from './ground.js'
import type { EndRow } from './layers.js'

export function endJoints(ground: Ground, end: End, rows: readonly EndRow[]): Joint[] {
  return rows.map(({ row }) => ({
    id: row.joint,
    says: row.says,
    layers: layersOf(ground, row.stacks),
    rows: [row.id],
    lap: lapOf(end, row.kind),
  }))
}

function layersOf(ground: Ground, stacks: EndRow['row']['stacks']): Joint['layers'] {
  const { ends, shell, lining } = ground.input
  const skins = new Set<string>()
  const panels = new Set<string>()
  const behind = new Map<string, number>()
  for (const { parts, thickness } of stacks)
    parts.forEach((part, i) => {
      if (/-(gore-\d+|cap)$/.test(part)) skins.add(part)
      else if (/^(nose|tail)-lining-/.test(part)) panels.add(part)
      else behind.set(part, thickness[i])
    })
  const material = (part: string): string => {
    if (part === 'underbelly') return shell.underbelly.alloy
    if (part.startsWith('rim-')) return shell.rim.alloy
    if (/^(header|sill|post)-/.test(part)) return shell.post.alloy
    return part.endsWith('-base') ? shell.edgeChannel.alloy : shell.frame.alloy
  }
  const sheet = (says: string, parts: ReadonlySet<string>, of: typeof ends.skin): Joint['layers'] =>
    parts.size === 0 ? [] : [{ says, parts: [...parts], material: of.alloy, thickness: of.thickness.value }]
  return [
    ...sheet('end skin', skins, ends.skin),
    ...[...behind].map(([part, thickness]) => ({ says: part.replace(/-/g, ' '), parts: [part], material: material(part), thickness })),
    ...sheet('end lining', panels, lining),
  ]
}

function lapOf(end: End, kind: EndRow['row']['kind']): string | null {
  if (kind === 'cap') return 'The crown cap lies over the gores, so water runs off the lap.'
  if (kind !== 'gore') return null
  return end === 'nose'
    ? 'The gore nearer the centre line lies over its neighbour; the lap faces aft, in the lee.'
    : 'The gore nearer the centre line lies over its neighbour; the lap faces forward here, into the driven rain.'
}
