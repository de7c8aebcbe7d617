/** Weight and balance as a person reads it on a screen: every case, worst first, what may be added where, and the groups. */
import { GROUP_WORDS } from '../../definition/weight-types.js'
import type { CaseWeighed, Room, WeightDerived } from '../../derive/weight-nouns.js'
import { formatMass } from '../../quantity/format.js'
import { fixed, type PrintUnits } from '../drawing/units.js'
import { roomWords, worstCaseFirst } from '../sheets/weight-sheets.js'

const per = (share: number): string => `${fixed(share * 100, 1)} %`
const WIDTHS = [5, 9, 9, 9, 8, 9, 9, 10, 16]

/** Something put aboard to see what it does: its words, and what the place would have borne before. */
export interface Added {
  readonly says: string
  readonly mass: number
  readonly room: Room
}

/** `before` is the coach without what was added. */
export function weightText(
  name: string,
  weight: WeightDerived,
  units: PrintUnits,
  added: readonly Added[] = [],
  before: WeightDerived | null = null,
): readonly string[] {
  const mass = (kg: number): string => formatMass(kg, units, { decimals: 0 })
  const size = (m: number): string => (units === 'metric' ? fixed(m * 1000, 0) : fixed(m / 0.0254, 1))
  const row = (cells: readonly string[]): string =>
    `${cells
      .slice(0, 9)
      .map((cell, i) => (i === 0 ? cell.padEnd(5) : cell.padStart(WIDTHS[i] ?? 9)))
      .join('')}  ${cells[9]}`
  const shareOf = (one: CaseWeighed): string => {
    const was = before?.cases.find((each) => each.id === one.id)
    return was && fixed(was.share.value, 6) !== fixed(one.share.value, 6)
      ? `${fixed(was.share.value * 100, 1)} -> ${per(one.share.value)}`
      : per(one.share.value)
  }
  const [low, high] = weight.hitchBand
  return [
    `${name}: unloaded ${mass(weight.unloaded.value)}, gross rating ${mass(weight.gross)}, cargo ${mass(weight.capacity.value)}; the hitch of a design case carries ${per(low)} to ${per(high)}.${weight.listOnly ? ' The stated list alone was weighed.' : ''}`,
    '',
    row(['case', 'weight', 'STA', 'y', 'WL', 'hitch', 'axle', 'of it', 'share', '']),
    ...worstCaseFirst(weight.cases).map((one) => {
      const [x, y, z] = one.centre
      const first = one.axles[0]
      const isBeyond = one.share.value < low || one.share.value > high
      return row([
        ...[one.id, mass(one.mass.value), size(x.value), size(y.value), size(z.value), mass(one.hitch.value)],
        ...[first ? mass(first.load.value) : '', first ? per(first.load.value / first.rating) : '', shareOf(one)],
        `${one.says}${isBeyond ? (one.design ? ': REFUSED' : ': not to be stowed so') : ''}`,
      ])
    }),
    '',
    ...added.flatMap((each) => addedWords(each, before ?? weight, units)),
    ...weight.places.map((each) => `At ${each.says} (STA ${size(each.at[0])}) may be added: ${roomWords(each.room, units)}.`),
    '',
    ...weight.groups.map(
      ({ group, mass: sum, stated }) => `${group} ${GROUP_WORDS[group].padEnd(13)} ${mass(sum.value).padStart(8)}   listed ${mass(stated)}`,
    ),
  ]
}

function addedWords({ says, mass: kg, room }: Added, before: WeightDerived, units: PrintUnits): readonly string[] {
  const fits = room.mass === null || kg <= room.mass
  const said = `${says}: ${fits ? 'allowed' : 'refused'}; the place bears ${roomWords(room, units)}.`
  if (fits) return [said, '']
  const others = before.places.filter((each) => each.room.mass === null || each.room.mass >= kg)
  return [
    said,
    others.length === 0
      ? 'No place for cargo bears it.'
      : `It could go to ${others.map((each) => `${each.says} (bears ${roomWords(each.room, units)})`).join(', ')}.`,
    '',
  ]
}
