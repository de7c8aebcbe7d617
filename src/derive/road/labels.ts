/**
 * The two labels of a trailer, line by line, and what keeps them drafts. A label is made from weighed values and answered
 * for by a named person; until then every copy is marked.
 */
import { type LabelLine, LETTERS, labelLine, massOnLabel, ratingFaults, relabelAbove, waterOnLabel } from '../../tables/labels.js'
import type { Tyre } from '../../tables/tyres.js'
import { composeVin } from '../../tables/vin.js'
import type { LabelsDerived } from '../road-nouns.js'
import type { RoadInput } from './index.js'

/** Stands where a value is not known yet: seen at once, never taken for a figure. */
const BLANK = '________'
const PSI = 6894.757293168361
/** Names of axles from the front, as 567.4 writes them. */
const AXLES: Readonly<Record<number, readonly string[]>> = { 1: [''], 2: [' FRONT', ' REAR'], 3: [' FRONT', ' INTERMEDIATE', ' REAR'] }

export function labelsOf(input: RoadInput, tyre: Tyre, tyresCarry: number, notApplied: string | null): LabelsDerived {
  const { papers, gross, axleRatings, maker, water } = input
  const vin = vinOf(papers)
  const weighed = papers?.weighed ?? null
  const capacity = weighed === null ? null : gross - weighed.empty
  const words = papers?.words ?? []
  const names = AXLES[axleRatings.length] ?? axleRatings.map((_, i) => ` ${i + 1}`)
  const line = (id: string, fill: Readonly<Record<string, string>> = {}): LabelLine => labelLine(id, fill, words)
  const gawr = (rating: number, i: number): LabelLine => {
    const axle = names[i]
    const { kg, lb } = massOnLabel(rating, 'nearest')
    const fill = { axle, kg, lb, tyre: tyre.name.replace(/ LR /, ' LR-'), rim: tyre.rimName }
    return line('gawr', { ...fill, kPa: String(Math.round(tyre.pressure / 1000)), psi: String(Math.round(tyre.pressure / PSI)) })
  }
  const cargo = capacity === null ? { kg: BLANK, lb: BLANK } : massOnLabel(capacity, 'down')
  const full = water === null ? { kg: BLANK, lb: BLANK } : asText(waterOnLabel(water))
  return {
    vin,
    draft: draftBecause(input, tyresCarry, vin, capacity, notApplied),
    certification: [
      line('maker', { maker: maker.toUpperCase() }),
      line('date', { date: papers?.made ?? BLANK }),
      line('gvwr', massOnLabel(gross, 'nearest')),
      ...axleRatings.map(gawr),
      line('conformity'),
      line('vin', { vin: vin ?? BLANK }),
      line('type'),
    ],
    cargo: [line('cargo-heading'), line('cargo-vin', { vin: vin ?? BLANK }), line('cargo', cargo), line('water', full)],
    responsible: papers?.responsible ?? null,
    capacity,
    relabelAbove: relabelAbove(gross),
    letters: LETTERS,
  }
}

const asText = ({ kg, lb }: { readonly kg: number; readonly lb: number }) => ({ kg: String(kg), lb: String(lb) })

/** Composed and checked when the definition was read; null until the unit has its serial. */
function vinOf(papers: RoadInput['papers']): string | null {
  const pieces = papers?.vin
  if (!pieces || pieces.serial === null) return null
  const made = composeVin({ ...pieces, serial: pieces.serial })
  if ('faults' in made) throw new Error(made.faults.join(' '))
  return made.vin
}

function draftBecause(
  input: RoadInput,
  tyresCarry: number,
  vin: string | null,
  capacity: number | null,
  notApplied: string | null,
): readonly string[] {
  const { papers, gross, axleRatings } = input
  const highest = Math.max(...axleRatings)
  const weighed = papers?.weighed ?? null
  return [
    ...(notApplied === null ? [] : [notApplied]),
    ...(weighed === null ? ['This unit has not been weighed: a label is made from weighed values only.'] : []),
    ...(papers?.responsible ? [] : ['Nobody is named who answers for this label.']),
    ...(vin === null ? ['The unit has no serial, so its vehicle number is not complete.'] : []),
    ...(papers?.made ? [] : ['Month and year of manufacture are not written.']),
    ...(input.water === null ? ['How much fresh water it holds is not written.'] : []),
    ...(capacity !== null && capacity <= 0 ? ['It weighs as much as its gross rating: there is nothing left to carry.'] : []),
    ...ratingFaults({ gross, axles: axleRatings, hitch: weighed?.hitch ?? input.hitch }),
    ...(tyresCarry >= highest - 1e-6
      ? []
      : [`The tyres of an axle carry ${Math.floor(tyresCarry)} kg, less than its rating of ${Math.round(highest)} kg.`]),
  ]
}
