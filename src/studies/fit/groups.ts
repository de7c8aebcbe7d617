/** Joints gathered by kind: forty alike are one line of a page, which names the worst of them. */
import type { FastenerRow } from '../../derive/nouns.js'
import type { FitModel } from './model.js'
import type { Fit, FitGroup } from './nouns.js'

const JOINTS: Readonly<Record<FastenerRow['kind'], string>> = {
  seam: 'Seams of the skin',
  joint: 'Joints of the barrel to its ends',
  hoop: 'Skin to hoop frames',
  base: 'Skin to the base',
  rim: 'Rims of openings',
  toe: 'Toe flange to the underbelly',
  lining: 'Lining',
  gore: 'Gore seams',
  cap: 'Crown caps to gores',
  rib: 'Gores to their mid ribs',
  bolt: 'Hold-down bolts',
  screw: 'Screws of the floor',
}

/** `fits` are worst first, and so are the fits of a group and the groups. */
export function groupsOf(fits: readonly Fit[], models: ReadonlyMap<string, FitModel>): readonly FitGroup[] {
  const groups = new Map<string, { says: string; fits: Fit[] }>()
  for (const fit of fits) {
    const { id, says } = groupOf(models.get(fit.id) as FitModel)
    const known = groups.get(id)
    if (known) known.fits.push(fit)
    else groups.set(id, { says, fits: [fit] })
  }
  return [...groups].map(([id, g]) => made(id, g.says, g.fits)).sort((a, b) => share(b) - share(a) || (a.id < b.id ? -1 : 1))
}

const share = (g: FitGroup): number => g.reaming / g.fasteners

function groupOf({ id, rows, parts, bodies }: FitModel): { readonly id: string; readonly says: string } {
  if (id.startsWith('sheet-')) {
    return parts[bodies[0]].id.startsWith('lining')
      ? { id: 'sheet lining', says: 'Whole lining panels on their frames' }
      : { id: 'sheet skin', says: 'Whole skin sheets on their frames' }
  }
  const [{ kind, end }] = rows
  const where = end ? 'end' : 'barrel'
  const both = kind === 'rim' || kind === 'base' || kind === 'toe' || kind === 'lining'
  return { id: `${where} ${kind}`, says: both ? `${JOINTS[kind]}, ${end ? 'ends' : 'barrel'}` : JOINTS[kind] }
}

function made(id: string, says: string, fits: readonly Fit[]): FitGroup {
  const sum = (of: (fit: Fit) => number): number => fits.reduce((total, fit) => total + of(fit), 0)
  const least = (of: (fit: Fit) => number): number => Math.min(...fits.map(of))
  const count = (role: string): number => sum((fit) => fit.rows.filter((r) => r.role === role).length)
  return {
    id,
    says,
    fits: fits.map((fit) => fit.id),
    fasteners: sum((fit) => fit.fasteners),
    reaming: sum((fit) => fit.reaming),
    noFit: least((fit) => fit.noFit),
    leastSquares: least((fit) => fit.leastSquares),
    minimax: least((fit) => fit.minimax),
    roles: { full: count('full'), pilot: count('pilot'), drill: count('drill') },
  }
}
