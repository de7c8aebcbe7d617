/** Fasteners, joints, masses, sizes and margins of a ripple in sentences. */

import { display } from '../quantity/display.js'
import type { UnitSystem } from '../quantity/format.js'
import { line, type RippleLine, targets } from './line.js'
import type { Both, Ripple, RowChange } from './nouns.js'
import { capital, count, fewer, list, margin, size, some, weight } from './words.js'

/** A pitch that changes by less prints as it did, m. */
const PRINTED = 5e-5

export function sayRivets({ counts, joints }: Ripple, units: UnitSystem): readonly RippleLine[] {
  const [counted, others] = [
    counts.rows.filter((r) => r.count.before !== r.count.after),
    counts.rows.filter((r) => r.count.before === r.count.after),
  ]
  const total = ({ before, after }: Both<number>, what: string): readonly string[] =>
    before === after ? [] : [`${after} ${what} in place of ${before}`]
  const all = [
    ...total(counts.solid, 'solid rivets'),
    ...total(counts.blind, 'blind rivets'),
    ...total(counts.holes, 'holes in the flat patterns'),
  ]
  const refitted = counts.rows.filter((r) => r.spans.by >= PRINTED)
  return [
    ...counted.map((r) => line(sayRow(r), targets('row', [r.id]))),
    ...(all.length > 0 ? [line(`All together ${list(all)}.`)] : []),
    ...(counts.lengths.length > 0 ? [line(`To buy: ${list(counts.lengths.map((l) => `${fewer(l.before, l.after)} of ${l.name}`))}.`)] : []),
    ...others
      .filter((r) => r.lengths.added.length > 0)
      .map((r) => line(`${r.id} now takes ${list(r.lengths.added)} as well.`, targets('row', [r.id]))),
    ...(refitted.length > 0
      ? [
          line(
            `The pitch is fitted anew by up to ${size(Math.max(...refitted.map((r) => r.spans.by)), units)} in ${some(
              refitted.map((r) => r.id),
              8,
            )}.`,
            targets(
              'row',
              refitted.map((r) => r.id),
            ),
          ),
        ]
      : []),
    ...sayBearing(counts, units),
    ...(joints.added.length > 0 ? [line(`New joints: ${list(joints.added.map((j) => j.says))}.`)] : []),
    ...(joints.removed.length > 0 ? [line(`Joints that go: ${list(joints.removed.map((j) => j.says))}.`)] : []),
    ...joints.changed.flatMap((j) =>
      j.lap
        ? [
            line(
              `${capital(j.says)}: ${j.lap.after ?? 'no lap'}.`,
              targets(
                'row',
                j.stacks.map((stack) => stack.row),
              ),
            ),
          ]
        : [],
    ),
  ]
}

function sayRow(row: RowChange): string {
  const kind = row.solid ? 'solid rivet' : 'blind rivet'
  const { before, after } = row.count
  if (row.status === 'added') return `${row.id} (${row.says}) is new: ${count(after, kind)}.`
  if (row.status === 'removed') return `${row.id} (${row.says}) goes: ${count(before, kind)} fewer.`
  const n = Math.abs(after - before)
  return `${row.id}: ${count(n, kind)} ${after < before ? 'fewer' : 'more'} (${after} in place of ${before}).`
}

/** One row stands for all of its way, and whoever changes a gauge wants to hear first that the rivets in the bins still do. */
function sayBearing({ rows, lengths }: Ripple['counts'], units: UnitSystem): readonly RippleLine[] {
  const said = (['up', 'down'] as const).flatMap((way) => {
    const those = rows.filter((r) => r.bearing !== null && r.bearing.after > r.bearing.before === (way === 'up'))
    const [first] = [...those].sort((a, b) => (a.id < b.id ? -1 : 1))
    if (!first?.bearing) return []
    const of = `${display(first.bearing.before, 'N', units)} to ${display(first.bearing.after, 'N', units)} in ${first.id}`
    return [
      line(
        `The bearing strength of the sheet under a rivet goes ${way} in ${count(those.length, 'row')}: ${of}.`,
        targets(
          'row',
          those.map((r) => r.id),
        ),
      ),
    ]
  })
  return said.length > 0 && lengths.length === 0 ? [line('No rivet length changes.'), ...said] : said
}

/** A change of mass below half a gram is not worth the ink, kg. */
const GRAM = 0.0005

/** The name of a kind as it is said. */
const plain = (kind: string): string => kind.replaceAll('-', ' ')

export function sayMasses({ masses, overall, counts }: Ripple, units: UnitSystem): readonly RippleLine[] {
  const change = (by: number): string => `${weight(Math.abs(by), units)} ${by < 0 ? 'less' : 'more'}`
  const by = masses.total.after - masses.total.before
  const kinds = masses.kinds
    .filter((k) => Math.abs(k.after - k.before) >= GRAM)
    .sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before))
  const said = [
    ...(kinds.length > 0
      ? [
          `The derived parts weigh ${change(by)} (${weight(masses.total.after, units)}): ${list(kinds.map((k) => `${plain(k.name)} ${change(k.after - k.before)}`))}.`,
        ]
      : []),
    ...counts.made.map((m) => `${count(m.after, plain(m.name))} in place of ${m.before}.`),
    ...counts.sheets.map((s) => `${count(s.after, 'sheet')} of ${s.name} in place of ${s.before}.`),
    ...overall.map((o) => `The ${o.name} is ${size(o.after, units)}, was ${size(o.before, units)}.`),
  ]
  return said.map((says) => line(says))
}

/** How many margins are worth a line each. */
const SAID = 12

/** `isWhole` says every one of them. */
export function sayMargins({ checks: { margins } }: Ripple, isWhole = false): readonly RippleLine[] {
  const value = (m: number | null): number => m ?? Infinity
  const seen = margins.filter((m) => margin(m.margin.before) !== margin(m.margin.after))
  const lost = seen.filter((m) => value(m.margin.after) < value(m.margin.before))
  const gained = seen.filter((m) => value(m.margin.after) > value(m.margin.before))
  const told = ({ id, says, margin: m }: (typeof margins)[number]): RippleLine =>
    line(`${margin(m.before)} becomes ${margin(m.after)}: ${says}`, targets('check', [id]))
  const shown = [...lost, ...gained].slice(0, isWhole ? undefined : SAID)
  const left = lost.length + gained.length - shown.length
  return [...shown.map(told), ...(left > 0 ? [line(`and ${left} more: --json lists them all.`)] : [])]
}
