/** Numbers of weight and balance: groups, and of every load case its mass, centre, hitch, axles and wheels. */
import type { Entry, Subject } from './entry.js'

export function weightEntries({ design: { weight } }: Subject): readonly Entry[] {
  if ('notComputed' in weight) return []
  const entry = (id: string, says: string, work: Entry['work']): Entry => ({ id: `weight.${id}`, says, work })
  return [
    entry('built', 'everything built in', () => weight.built),
    entry('unloaded', 'the same with full cylinders', () => weight.unloaded),
    entry('capacity', 'cargo it may carry', () => weight.capacity),
    ...weight.groups.map((each) => entry(`group.${each.group}`, `mass of the group ${each.group}`, () => each.mass)),
    ...weight.lines.map((line) => entry(`line.${line.id}`, `mass of ${line.says}`, () => line.mass)),
    ...weight.cases.flatMap((one) => [
      entry(`case.${one.id}.mass`, `whole mass in case ${one.id}: ${one.says}`, () => one.mass),
      entry(`case.${one.id}.station`, `station of its centre in case ${one.id}`, () => one.centre[0]),
      entry(`case.${one.id}.buttock`, `buttock line of its centre in case ${one.id}`, () => one.centre[1]),
      entry(`case.${one.id}.waterline`, `waterline of its centre in case ${one.id}`, () => one.centre[2]),
      entry(`case.${one.id}.hitch`, `load on the ball in case ${one.id}`, () => one.hitch),
      entry(`case.${one.id}.share`, `load on the ball as a share in case ${one.id}`, () => one.share),
      entry(`case.${one.id}.stability`, `static stability in case ${one.id}`, () => one.stability),
      ...one.axles.flatMap((axle, i) => [
        entry(`case.${one.id}.axle-${i + 1}`, `load on axle ${i + 1} in case ${one.id}`, () => axle.load),
        entry(`case.${one.id}.axle-${i + 1}.right`, `on its right wheel in case ${one.id}`, () => axle.right),
        entry(`case.${one.id}.axle-${i + 1}.left`, `on its left wheel in case ${one.id}`, () => axle.left),
      ]),
    ]),
  ]
}
