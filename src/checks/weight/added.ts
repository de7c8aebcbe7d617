/** Things put aboard as they weigh to see what they do: the definition that has them, and what each place would have borne before. */
import type { Definition } from '../../definition/types.js'
import type { MassDefinition } from '../../definition/weight-types.js'
import { roomAt } from '../../derive/weight/room.js'
import type { Room, WeightDerived } from '../../derive/weight-nouns.js'

export interface Put {
  readonly mass: number
  readonly station: number
  readonly y: number
  readonly waterline: number
}

export const withAdded = (definition: Definition, put: readonly Put[]): Definition => ({
  ...definition,
  masses: [
    ...definition.masses,
    ...put.map((each, i): MassDefinition => ({ ...each, group: 'FU', item: `added ${i + 1}`, by: 'weighed', twins: [], rest: 0 })),
  ],
})

export const roomFor = (weight: WeightDerived, { station, y, waterline }: Put): Room => roomAt(weight, [station, y, waterline])
