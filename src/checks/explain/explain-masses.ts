/** Masses: of each part, of each kind, and of all. */
import type { Entry, Subject } from './entry.js'

export function massEntries({ design }: Subject): readonly Entry[] {
  const { totals } = design
  return [
    { id: 'total.mass', says: 'mass of all parts derived here', work: () => totals.mass },
    ...Object.entries(totals.masses).map(
      ([kind, mass]): Entry => ({ id: `total.mass.${kind}`, says: `mass of all parts of the kind ${kind}`, work: () => mass }),
    ),
    ...design.parts.map((part): Entry => ({ id: `part.${part.id}.mass`, says: `mass of ${part.says}`, work: () => part.mass })),
  ]
}
