/** The sheets of the desk in the order of the job, and which checks, figures and documents of the packet belong to each. */

export interface SheetPlan {
  readonly name: string
  /** what its check ids start with */
  readonly checks: readonly string[]
  /** what the ids of its figures start with */
  readonly figures: readonly string[]
  /** what the paths of its documents start with: those of the first beginning come first */
  readonly documents: readonly string[]
}

export const SHEETS: readonly SheetPlan[] = [
  {
    name: 'Lines',
    checks: ['overall.'],
    figures: ['section.girth', 'section.lining-girth', 'total.mass'],
    documents: ['cover.pdf', 'tape/', 'templates/'],
  },
  {
    name: 'Skins',
    checks: ['stock.', 'lap.', 'edge.', 'spacing.'],
    figures: ['stock.', 'part.strake'],
    documents: ['sheets/', 'schedules/'],
  },
  { name: 'Ends', checks: ['ends.'], figures: ['ends.', 'part.nose', 'part.tail'], documents: ['ends/', 'jigs/'] },
  {
    name: 'Openings',
    checks: ['opening.', 'openings.', 'frame.', 'flue.', 'buck.'],
    figures: ['part.rim'],
    documents: ['schedules/openings.pdf', 'openings/'],
  },
  { name: 'Fasteners', checks: ['pitch.'], figures: ['row.'], documents: ['schedules/rivets.pdf', 'members/', 'frames/', 'lining/'] },
  { name: 'Floor', checks: ['floor.'], figures: ['floor.', 'part.floor'], documents: ['floor/'] },
  {
    name: 'Chassis',
    checks: ['chassis.', 'bay.'],
    figures: ['chassis.', 'section.rail', 'section.cross-member', 'section.a-frame'],
    documents: ['chassis/'],
  },
  { name: 'Running gear', checks: ['axle.', 'wheel.', 'ground.', 'tyre.', 'ride.'], figures: ['gear.', 'ride.'], documents: ['gear/'] },
  { name: 'Weight', checks: ['weight.', 'lift.', 'carry.'], figures: ['weight.'], documents: ['weight/weight-and-balance.pdf', 'weight/'] },
  { name: 'Towing', checks: ['towing.', 'coupling.', 'road.'], figures: ['towing.'], documents: ['road/towing.pdf', 'road/'] },
  { name: 'Checks', checks: [''], figures: ['check.'], documents: ['checks/'] },
  { name: 'Packet', checks: [], figures: [], documents: [''] },
]

export function sheetPlan(name: string): SheetPlan {
  const plan = SHEETS.find((each) => each.name === name)
  if (!plan) throw new Error(`no sheet is called "${name}"`)
  return plan
}

/** Whether an id or a path belongs under one of these beginnings. */
export const isUnder = (id: string, starts: readonly string[]): boolean => starts.some((start) => id.startsWith(start))
