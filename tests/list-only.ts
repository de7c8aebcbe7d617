/** An example with its derived twins switched off: the stated list alone, which plain statics can be done on by hand. */
import type { Definition } from '../src/definition/types.js'
import { casesOf, isNotComputed } from '../src/derive/road-input.js'
import type { TowingCase } from '../src/derive/road-nouns.js'
import { deriveWeight } from '../src/derive/weight/index.js'
import { weightInput } from '../src/derive/weight-input.js'
import type { WeightDerived } from '../src/derive/weight-nouns.js'

/** The tip of the Sedge's tail behind its last frame, m. */
const REACH = 1.1036

export function listOnly(definition: Definition): Definition {
  if (!definition.weight) throw new Error('only of a coach that says its weight')
  return { ...definition, weight: { ...definition.weight, listOnly: true } }
}

/** `wheelRate` of one wheel, N/m. */
export function weighList(definition: Definition, wheelRate: number | null = 110e3): WeightDerived {
  const tail = definition.frames[definition.frames.length - 1].station + REACH
  const input = weightInput(listOnly(definition), [], { tail, wheelRate })
  if (isNotComputed(input)) throw new Error(input.notComputed)
  return deriveWeight(input)
}

export const listCases = (definition: Definition): readonly TowingCase[] => casesOf(weighList(definition))
