/** Every live figure that can be asked for by its name: what the worker answers and the screen draws. */
import type { Subject } from '../../checks/explain/entry.js'
import type { Design } from '../../derive/design.js'
import type { UnitSystem } from '../../quantity/format.js'
import type { Blanks } from '../../studies/blanks/compute.js'
import { type FlatGroup, flatList, flatShown, holeShown } from './flats.js'
import { goresFigure } from './gores.js'
import type { FlatShown, GoresFigure, HoleShown, LinesFigure, OrNot, RoomHere, RoomMap, SwayFigure, WeightBars } from './nouns.js'
import { roomMap, roomSaid } from './room-map.js'
import { sectionLines } from './section-lines.js'
import { swayLines } from './sway-lines.js'
import { weightBars } from './weight-bars.js'

export interface Figures {
  readonly weight: (units: UnitSystem) => OrNot<WeightBars>
  readonly room: (units: UnitSystem) => OrNot<RoomMap>
  /** at a station and a buttock line, m */
  readonly roomAt: (x: number, y: number, units: UnitSystem) => OrNot<RoomHere>
  readonly sway: (car: string | null, units: UnitSystem) => OrNot<SwayFigure>
  readonly gores: (end: 'nose' | 'tail', blanks: Blanks | null, units: UnitSystem) => GoresFigure
  readonly flats: () => readonly FlatGroup[]
  readonly flat: (part: string, face: string) => FlatShown | null
  readonly hole: (part: string, face: string, hole: number, units: UnitSystem) => HoleShown | null
  readonly lines: (surface: string, step: string, units: UnitSystem) => LinesFigure
}

/** Of whatever is drawn when they are asked. */
export function figuresOf(design: () => Design, about: () => Subject): Figures {
  return {
    weight: (units) => weightBars(design(), units),
    room: (units) => roomMap(design(), units),
    roomAt: (x, y, units) => roomSaid(design(), x, y, units),
    sway: (car, units) => swayLines(design(), car, units),
    gores: (end, blanks, units) => goresFigure(about(), end, blanks, units),
    flats: () => flatList(design()),
    flat: (part, face) => flatShown(design(), part, face),
    hole: (part, face, hole, units) => holeShown(design(), part, face, hole, units),
    lines: (surface, step, units) => sectionLines(about(), surface, step, units),
  }
}
