/** The masses and the load cases as CSV, for whoever works on from a spreadsheet. Lengths mm, masses kg, shares 0 to 1. */
import type { Design } from '../../derive/design.js'
import type { WeightDerived } from '../../derive/weight-nouns.js'
import type { TextOptions } from './heading.js'
import { mmText } from './heading.js'
import { schedule } from './schedules.js'

const figure = (value: number, decimals: number): string => value.toFixed(decimals).replace(/^-(0(\.0*)?)$/, '$1')

export const massCells = ({ lines }: WeightDerived): readonly (readonly string[])[] =>
  lines.map(({ id, says, group, by, mass, stated, centre, count }) => [
    ...[group, id, says, by, figure(mass.value, 2), stated === null ? '' : figure(stated, 2)],
    ...[...centre.map((m) => mmText(m, 0)), String(count)],
  ])

export const caseCells = ({ cases }: WeightDerived): readonly (readonly string[])[] =>
  cases.map(({ id, says, design, mass, centre, hitch, share, onAxles, axles, stability }) => [
    ...[id, says, design ? 'design' : 'stowage limit', figure(mass.value, 1), ...centre.map((m) => mmText(m.value, 0))],
    ...[figure(hitch.value, 1), figure(share.value, 4), figure(onAxles.value, 1)],
    ...[axles.map(({ left, right }) => `${figure(left.value, 1)} + ${figure(right.value, 1)}`).join('; '), figure(stability.value, 3)],
  ])

export function massCsv(design: Design, weight: WeightDerived, options: TextOptions = {}): string {
  const columns = ['group', 'line', 'item', 'by', 'mass kg', 'listed kg', 'STA mm', 'y mm', 'WL mm', 'parts']
  return schedule(design, 'Masses by group; derived counts in the stead of what is listed', columns, massCells(weight), options)
}

export function caseCsv(design: Design, weight: WeightDerived, options: TextOptions = {}): string {
  const columns = [
    ...['case', 'what is aboard', 'use', 'mass kg', 'STA mm', 'y mm', 'WL mm'],
    ...['hitch kg', 'hitch share', 'axles kg', 'wheels left + right kg', 'stability g'],
  ]
  return schedule(design, 'Load cases, by calculation', columns, caseCells(weight), options)
}
