/** Floor, chassis and axle group as plain data: worked figures become their numbers. */
import type { SectionFacts, UnderDerived } from '../../derive/under-nouns.js'
import type { UnderJson } from './under-schema.js'

export function underJson({ floor, chassis, gear }: UnderDerived): UnderJson {
  return {
    floor: floor && {
      ...floor,
      outline: floor.outline.map((p) => [...p] as [number, number, number]),
      panels: [...floor.panels],
      joints: [...floor.joints],
      openings: floor.openings.map((o) => ({
        ...o,
        outline: o.outline.map((p) => [...p] as [number, number, number]),
        clear: [...o.clear],
      })),
      covering: floor.covering && { ...floor.covering, mass: floor.covering.mass.value, centre: [...floor.covering.centre] },
    },
    chassis: chassis && {
      strength: 'not checked',
      members: chassis.members.map((m) => ({ ...m, plan: m.plan.map((p) => [...p] as [number, number, number]) })),
      sections: chassis.sections.map(sectionJson),
      holes: [...chassis.holes],
      zones: [...chassis.zones],
      welds: chassis.welds.map((w) => ({ ...w, parts: [...w.parts] })),
      distortion: [...chassis.distortion],
      bought: chassis.bought.map((b) => ({ ...b, centre: [...b.centre] })),
      bays: chassis.bays.map((b) => ({ ...b, x: [...b.x], y: [...b.y], z: [...b.z] })),
      aFrame: chassis.aFrame,
      mass: chassis.mass.value,
    },
    gear: gear && {
      ...gear,
      tubes: [...gear.tubes],
      boxes: gear.boxes.map((b) => ({ ...b, x: [...b.x], y: [...b.y], z: [...b.z] })),
      window: [...gear.window],
      neighbours: [...gear.neighbours],
      tubeZ: gear.tubeZ && [...gear.tubeZ],
      sits: gear.sits && { ...gear.sits, gross: gear.sits.gross.value },
      departure: gear.departure?.value ?? null,
    },
  }
}

function sectionJson(s: SectionFacts): NonNullable<UnderJson['chassis']>['sections'][number] {
  return {
    of: s.of,
    says: s.says,
    blank: s.blank.value,
    allowance: s.allowance.value,
    deduction: s.deduction.value,
    area: s.area.value,
    centre: s.centre.value,
    Ix: s.Ix.value,
    Iy: s.Iy.value,
    J: s.J.value,
    shearCentre: s.shearCentre.value,
    net: s.net && { area: s.net.area.value, Ix: s.net.Ix.value },
    linearMass: s.linearMass.value,
  }
}
