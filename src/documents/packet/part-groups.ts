/** Which folder of a packet a part's sheets go to: as the shop's rooms fetch them. */
import type { Design } from '../../derive/design.js'
import type { Part, PartKind, Pattern } from '../../derive/nouns.js'

export interface PartGroup {
  readonly folder: string
  readonly says: string
  readonly kinds: readonly PartKind[]
}

const PART_GROUPS: readonly PartGroup[] = [
  { folder: 'sheets', says: 'skin sheets', kinds: ['strake'] },
  { folder: 'frames', says: 'hoop and joint frames', kinds: ['frame', 'joint-frame'] },
  { folder: 'members', says: 'stringers, posts, headers and edge channels', kinds: ['stringer', 'post', 'header', 'edge-channel'] },
  { folder: 'openings', says: 'rims and trim rings', kinds: ['rim', 'trim-ring'] },
  { folder: 'lining', says: 'lining panels', kinds: ['lining', 'end-lining'] },
  {
    folder: 'ends',
    says: 'gores, crown caps and the members of the ends',
    kinds: ['gore', 'crown-cap', 'end-rib', 'header-ring', 'end-base'],
  },
  { folder: 'floor', says: 'floor panels', kinds: ['floor-panel'] },
  {
    folder: 'chassis',
    says: 'members, plates and boxes of the chassis',
    kinds: ['rail', 'cross-member', 'outrigger', 'wheel-box-header', 'a-frame', 'chassis-plate', 'bay-bearer', 'wheel-box', 'underbelly'],
  },
]

export interface GroupedParts extends PartGroup {
  readonly parts: readonly Part[]
  readonly patterns: readonly { readonly part: Part; readonly pattern: Pattern }[]
}

/** Groups that hold parts with a flat pattern, in the order of the list. Throws when a part belongs to none: a bug, not a choice. */
export function groupedParts(design: Design): readonly GroupedParts[] {
  const stray = design.parts.find((p) => !PART_GROUPS.some((g) => g.kinds.includes(p.kind)))
  if (stray) throw new Error(`Part ${stray.id} is a ${stray.kind}, and no folder of the packet takes it`)
  return PART_GROUPS.flatMap((group) => {
    const parts = design.parts.filter((p) => group.kinds.includes(p.kind) && p.patterns.length > 0)
    return parts.length ? [{ ...group, parts, patterns: parts.flatMap((part) => part.patterns.map((pattern) => ({ part, pattern }))) }] : []
  })
}
