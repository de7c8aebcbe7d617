/** Everything a hand can move: where it is written to stand, which values of the text say so, and the definition with it elsewhere. m. */
import { byGirth, byStation } from '../definition/normal-form.js'
import type { Step } from '../definition/set-in-text.js'
import type { Definition } from '../definition/types.js'

/** Null for what a thing has none of. `across` is the buttock line, of an opening in the roof and of a seam the girth. */
export interface Place {
  readonly station: number | null
  readonly waterline: number | null
  readonly across: number | null
}

/** One written value: where it stands in the text, and what it becomes, m. */
export interface Value {
  readonly steps: readonly Step[]
  readonly metres: number
}

export interface WrittenThing {
  readonly layer: 'openings' | 'axles' | 'frames' | 'seams' | 'tanks' | 'masses'
  readonly place: Place
  /** what the text says once it stands there; `isWritten` tells a value somebody wrote from one filled in */
  readonly values: (to: Place, isWritten: IsWritten) => readonly Value[]
  readonly moved: (to: Place, isWritten: IsWritten) => Definition
}

export type IsWritten = (steps: readonly Step[]) => boolean

export const axleOf = (id: string): number | null => numbered(/^axle-(\d+)$/, id)
export const massOf = (id: string): number | null => numbered(/^item-(\d+)$/, id)

function numbered(name: RegExp, id: string): number | null {
  const found = name.exec(id)
  return found ? Number(found[1]) - 1 : null
}

/** Null for what has no written place: it follows from something else. */
export function writtenThing(definition: Definition, id: string): WrittenThing | null {
  return (
    anOpening(definition, id) ??
    anAxle(definition, id) ??
    aFrame(definition, id) ??
    aSeam(definition, id) ??
    aBay(definition, id) ??
    aMass(definition, id)
  )
}

/** To the tenth of a millimetre, as a tape says it. */
export const tenth = (m: number): number => Math.round(m * 1e4) / 1e4

/** The values that are not what they were. */
function changed(list: readonly (Value & { readonly was: number | null })[]): readonly Value[] {
  return list.flatMap(({ steps, metres, was }) => (was !== null && Math.abs(metres - was) > 1e-9 ? [{ steps, metres }] : []))
}

const put = <T extends { readonly id: string }>(list: readonly T[], id: string, with_: (item: T) => T): readonly T[] =>
  list.map((each) => (each.id === id ? with_(each) : each))

function anOpening(definition: Definition, id: string): WrittenThing | null {
  const opening = definition.openings.find((each) => each.id === id)
  if (!opening) return null
  const isRoof = opening.surface === 'roof'
  const place = { station: opening.station, waterline: opening.waterline, across: isRoof ? opening.girth : null }
  const at = (key: string): readonly Step[] => ['openings', { id }, key]
  return {
    layer: 'openings',
    place,
    values: (to) =>
      changed([
        { steps: at('station'), metres: to.station ?? opening.station, was: opening.station },
        { steps: at('wl'), metres: to.waterline ?? 0, was: opening.waterline },
        { steps: at('girth'), metres: to.across ?? 0, was: place.across },
      ]),
    moved: (to) => ({
      ...definition,
      openings: put(definition.openings, id, (each) => ({
        ...each,
        station: to.station ?? each.station,
        waterline: to.waterline,
        girth: isRoof ? (to.across ?? each.girth) : each.girth,
      })),
    }),
  }
}

/** The axles of a group move together: what they stand apart is the equaliser's or the brackets' business. */
function anAxle(definition: Definition, id: string): WrittenThing | null {
  const { gear } = definition
  const which = axleOf(id)
  const station = which === null ? undefined : gear?.spindles[which]
  if (!gear || station === undefined) return null
  const spindlesAt = (to: Place): readonly number[] => gear.spindles.map((each) => tenth(each + (to.station ?? station) - station))
  return {
    layer: 'axles',
    place: { station, waterline: null, across: null },
    values: (to) => changed(spindlesAt(to).map((metres, i) => ({ steps: ['gear', 'spindles', i], metres, was: gear.spindles[i] }))),
    moved: (to) => ({ ...definition, gear: { ...gear, spindles: spindlesAt(to) } }),
  }
}

function aFrame(definition: Definition, id: string): WrittenThing | null {
  const frame = definition.frames.find((each) => each.id === id)
  if (!frame) return null
  const at = (to: Place): number => to.station ?? frame.station
  return {
    layer: 'frames',
    place: { station: frame.station, waterline: null, across: null },
    values: (to) => changed([{ steps: ['frames', { id }, 'station'], metres: at(to), was: frame.station }]),
    moved: (to) => ({ ...definition, frames: byStation(put(definition.frames, id, (each) => ({ ...each, station: at(to) }))) }),
  }
}

function aSeam(definition: Definition, id: string): WrittenThing | null {
  const { shell } = definition
  const seam = shell.seams.find((each) => each.id === id)
  if (!seam) return null
  const at = (to: Place): number => to.across ?? seam.girth
  return {
    layer: 'seams',
    place: { station: null, waterline: null, across: seam.girth },
    values: (to) => changed([{ steps: ['shell', 'seams', { id }, 'girth'], metres: at(to), was: seam.girth }]),
    moved: (to) => ({ ...definition, shell: { ...shell, seams: byGirth(put(shell.seams, id, (each) => ({ ...each, girth: at(to) }))) } }),
  }
}

/** With the tanks in it: one that is written to hang somewhere in the bay keeps its place there. */
function aBay(definition: Definition, id: string): WrittenThing | null {
  const { chassis, weight } = definition
  const bay = chassis?.bays.find((each) => each.id === id)
  if (!chassis || !bay) return null
  const station = (bay.fore + bay.aft) / 2
  const by = (to: Place) => ({ along: (to.station ?? station) - station, across: (to.across ?? bay.y) - bay.y })
  const tanks = (weight?.tanks ?? []).filter((tank) => tank.bay === id && tank.from === 'datum')
  const tankAt = (tank: string, key: string): readonly Step[] => ['weight', 'tanks', { id: tank }, key]
  return {
    layer: 'tanks',
    place: { station, waterline: null, across: bay.y },
    values: (to, isWritten) => {
      const { along, across } = by(to)
      return changed([
        { steps: ['chassis', 'bays', { id }, 'from'], metres: tenth(bay.fore + along), was: bay.fore },
        { steps: ['chassis', 'bays', { id }, 'to'], metres: tenth(bay.aft + along), was: bay.aft },
        { steps: ['chassis', 'bays', { id }, 'y'], metres: tenth(bay.y + across), was: bay.y },
        ...tanks.flatMap((tank) => [
          { steps: tankAt(tank.id, 'station'), metres: tenth(tank.station + along), was: tank.station },
          { steps: tankAt(tank.id, 'y'), metres: tenth(tank.y + across), was: tank.y },
        ]),
      ]).filter(({ steps }) => steps[0] !== 'weight' || isWritten(steps))
    },
    moved: (to, isWritten) => {
      const { along, across } = by(to)
      const bays = put(chassis.bays, id, (each) => ({
        ...each,
        fore: tenth(each.fore + along),
        aft: tenth(each.aft + along),
        y: tenth(each.y + across),
      }))
      const [moved] = bays.filter((each) => each.id === id)
      const middle = (moved.fore + moved.aft) / 2
      const hung = (weight?.tanks ?? []).map((tank) =>
        tanks.includes(tank)
          ? {
              ...tank,
              station: isWritten(tankAt(tank.id, 'station')) ? tenth(tank.station + along) : middle,
              y: isWritten(tankAt(tank.id, 'y')) ? tenth(tank.y + across) : moved.y,
            }
          : tank,
      )
      return { ...definition, chassis: { ...chassis, bays }, weight: weight && { ...weight, tanks: hung } }
    },
  }
}

/** A stated mass is known by its name alone, so of two that have one name neither can be told. One at the axles follows them. */
function aMass(definition: Definition, id: string): WrittenThing | null {
  const which = massOf(id)
  const mass = which === null ? undefined : definition.masses[which]
  if (!mass || definition.masses.some((each) => each !== mass && each.item === mass.item)) return null
  const at = (key: string): readonly Step[] => ['masses', { item: mass.item }, key]
  return {
    layer: 'masses',
    place: { station: mass.station, waterline: mass.waterline, across: mass.y },
    values: (to) =>
      changed([
        { steps: at('station'), metres: to.station ?? 0, was: mass.station },
        { steps: at('y'), metres: to.across ?? mass.y, was: mass.y },
        { steps: at('wl'), metres: to.waterline ?? mass.waterline, was: mass.waterline },
      ]),
    moved: (to) => ({
      ...definition,
      masses: definition.masses.map((each) =>
        each === mass
          ? {
              ...each,
              station: mass.station === null ? null : to.station,
              y: to.across ?? each.y,
              waterline: to.waterline ?? each.waterline,
            }
          : each,
      ),
    }),
  }
}
