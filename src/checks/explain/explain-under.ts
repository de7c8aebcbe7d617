/** Floor, chassis and axle group: blanks and section properties of the pressed members, covering, departure angle. */
import type { SectionFacts } from '../../derive/under-nouns.js'
import type { Worked } from '../../quantity/formula.js'
import type { Entry, Subject } from './entry.js'

export function underEntries({ design }: Subject): readonly Entry[] {
  const { chassis, floor, gear } = design.under
  const entry = (id: string, says: string, worked: Worked): Entry => ({ id, says, work: () => worked })
  return [
    ...(chassis
      ? [entry('chassis.mass', 'mass of what is made for the chassis', chassis.mass), ...chassis.sections.flatMap(sectionEntries)]
      : []),
    ...(floor?.covering ? [entry('floor.covering.mass', 'mass of what lies on the floor', floor.covering.mass)] : []),
    ...(gear?.sits ? [entry('gear.ground', 'ground under gross weight, by arm and tyre', gear.sits.gross)] : []),
    ...(gear?.departure ? [entry('gear.departure', 'departure angle', gear.departure)] : []),
  ]
}

function sectionEntries(s: SectionFacts): readonly Entry[] {
  const of: readonly (readonly [string, string, Worked | undefined])[] = [
    ['blank', 'width of the blank', s.blank],
    ['area', 'area', s.area],
    ['centre', 'centre of area from the web', s.centre],
    ['Ix', 'second moment about the level axis', s.Ix],
    ['Iy', 'second moment about the upright axis', s.Iy],
    ['J', 'torsion constant', s.J],
    ['shear-centre', 'shear centre', s.shearCentre],
    ['net-area', 'area with a hole', s.net?.area],
    ['net-Ix', 'second moment with a hole', s.net?.Ix],
    ['mass', 'mass of a metre', s.linearMass],
  ]
  return of.flatMap(([key, says, worked]) =>
    worked ? [{ id: `section.${s.of}.${key}`, says: `${says} of the ${s.says}`, work: () => worked }] : [],
  )
}
