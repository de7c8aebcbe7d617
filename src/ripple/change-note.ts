/** A ripple as a change note on paper: from which revision to which, what changed with before and after, and what to issue again. */
import type { Market } from '../definition/types.js'
import type { Design } from '../derive/design.js'
import type { Page } from '../documents/drawing/page.js'
import { coachTitle, type PrintOptions, unitsOf } from '../documents/drawing/sheet.js'
import type { Column, Row } from '../documents/drawing/table.js'
import { placeWords } from '../documents/drawing/words.js'
import { tableSheets, widthsFor } from '../documents/sheets/table-sheet.js'
import type { UnitSystem } from '../quantity/format.js'
import type { RippleLine } from './line.js'
import type { Both, FindingTold, Ripple, Tally } from './nouns.js'
import { VERDICTS, valueWords } from './ripple-text.js'
import { sayOpening, sayParts } from './say-parts.js'
import { capital, count, list, margin, size, some, weight } from './words.js'

/** Names of the two revisions, as whoever froze them called them. */
export type NoteNames = Both<string>

const SIDE = 30

/** `after` gives the heading of the sheets. Without a name a revision goes by its number alone. */
export function changeNote(ripple: Ripple, after: Design, names: Partial<NoteNames> = {}, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const { coach, equal } = ripple
  const called = (of: keyof NoteNames): string => {
    const { revision } = coach[of]
    const name = names[of]
    return name && !name.includes(revision) ? `${name} (revision ${revision})` : `revision ${revision}`
  }
  const fromTo = `From ${called('before')} to ${called('after')}.`
  const columns: readonly Column[] = [
    { head: 'What changes', width: widthsFor(options, false, 2 * SIDE), wraps: true },
    { head: 'Before', width: SIDE, wraps: true },
    { head: 'After', width: SIDE, wraps: true },
  ]
  return tableSheets(
    {
      ...{ name: 'change-note', says: 'Change note', heading: 'Change note' },
      sentences: [fromTo, ...(equal ? ['Both are the same coach to the last figure: nothing changes.'] : summary(ripple))],
      title: coachTitle(after, options, 'Change note', coach.after.name, `From ${coach.before.revision} to ${coach.after.revision}`),
      columns,
      rows: equal ? [] : rowsOf(ripple, units),
    },
    options,
  )
}

/** Whoever holds metal wants these first. */
function summary({ checks, documents, parts }: Ripple): readonly string[] {
  const fails = checks.appeared.filter(({ verdict }) => verdict === 'fail').length
  const rest = checks.appeared.length - fails
  const again = documents.filter(({ status }) => status === 'reissue').length
  const said = [
    ...(fails > 0 ? [`${count(fails, 'check')} now ${fails === 1 ? 'fails' : 'fail'}`] : []),
    ...(rest > 0 ? [`${count(rest, 'new caution')}`] : []),
    ...(parts.changed.length > 0 ? [`${count(parts.changed.length, 'part')} changed`] : []),
    ...(again > 0 ? [`${count(again, 'document')} to issue again`] : []),
  ]
  return [
    ...(said.length > 0 ? [`${capital(list(said))}.`] : []),
    'What is already cut, drilled or ordered to the revision before: stop, and hold it against this note before going on.',
  ]
}

function rowsOf(ripple: Ripple, units: UnitSystem): readonly Row[] {
  const { written, checks, loads } = ripple
  const address = (place: Parameters<typeof placeWords>[0]): string => placeWords(place, ripple.coach.after.market as Market)
  return [
    ...group(
      'Findings',
      [...checks.appeared, ...checks.gone].map((f, i) => findingRow(f, i < checks.appeared.length)),
    ),
    ...group(
      'Written',
      written.map(({ path, before, after }): Cells => [path, valueWords(path, before, units), valueWords(path, after, units)]),
    ),
    ...group('Openings', sentences(ripple.openings.flatMap((o) => sayOpening(o, units, address)))),
    ...group('Parts', [...sentences(sayParts(ripple, units)), ...massRows(ripple, units)]),
    ...group('Fasteners', fastenerRows(ripple)),
    ...group('Weight and balance', loadRows(loads, units)),
    ...group('Counts, masses and sizes', countRows(ripple, units)),
    ...group(
      'Margins',
      checks.margins
        .filter((m) => margin(m.margin.before) !== margin(m.margin.after))
        .map((m): Cells => [m.says, margin(m.margin.before), margin(m.margin.after)]),
    ),
    ...group(
      'Documents',
      ripple.documents.map(({ path, says, status, because, onlyFigure }): Cells => {
        const why = onlyFigure ? ['where it sits'] : because
        return [
          `${path}, ${says}${why.length > 0 ? `. Because of ${some(why, BECAUSE)}` : ''}`,
          status === 'new' ? 'none' : 'in the packet',
          STATUS[status],
        ]
      }),
    ),
  ]
}

type Cells = readonly [what: string, before: string, after: string]

/** More reasons than that are a list nobody reads. */
const BECAUSE = 3
const STATUS = { reissue: 'issue again', new: 'new', withdraw: 'withdraw' } as const

const group = (heading: string, rows: readonly Cells[]): readonly Row[] =>
  rows.length === 0 ? [] : [{ heading: `${heading}, ${rows.length}` }, ...rows]

const sentences = (lines: readonly RippleLine[]): readonly Cells[] => lines.map(({ says }): Cells => [says, '', ''])

function findingRow(f: FindingTold, isNew: boolean): Cells {
  const other = f.other === null ? 'not asked' : VERDICTS[f.other]
  return [f.mend ? `${f.says} To mend: ${f.mend}` : f.says, isNew ? other : VERDICTS[f.verdict], isNew ? VERDICTS[f.verdict] : other]
}

/** Less than a gram is not worth the ink, kg. */
const GRAM = 0.001

const massRows = ({ parts }: Ripple, units: UnitSystem): readonly Cells[] =>
  parts.changed.flatMap(({ id, mass }): Cells[] =>
    mass && Math.abs(mass.after - mass.before) >= GRAM ? [[`${id}: mass`, weight(mass.before, units), weight(mass.after, units)]] : [],
  )

function fastenerRows({ counts }: Ripple): readonly Cells[] {
  const number = ({ before, after }: Both<number>, what: string): readonly Cells[] =>
    before === after ? [] : [[what, String(before), String(after)]]
  return [
    ...counts.rows.flatMap((r) => number(r.count, `${r.id}, ${r.says}`)),
    ...number(counts.solid, 'solid rivets, all together'),
    ...number(counts.blind, 'blind rivets, all together'),
    ...number(counts.holes, 'holes in the flat patterns'),
    ...counts.lengths.flatMap((l) => number(l, `to buy: ${l.name}`)),
  ]
}

function loadRows({ unloaded, capacity, cases }: Ripple['loads'], units: UnitSystem): readonly Cells[] {
  const kg = (value: number | null): string => (value === null ? 'unknown' : weight(value, units))
  const whole = (what: string, both: Both<number | null> | null): readonly Cells[] =>
    both && kg(both.before) !== kg(both.after) ? [[what, kg(both.before), kg(both.after)]] : []
  const hitch = (share: number | null, load: number | null): string =>
    share === null ? 'no such case' : `${(share * 100).toFixed(1)} %, ${kg(load)}`
  return [
    ...whole('unloaded weight', unloaded),
    ...whole('cargo it may carry', capacity),
    ...cases.flatMap((each): Cells[] => {
      const [was, is] = [hitch(each.share.before, each.hitch.before), hitch(each.share.after, each.hitch.after)]
      return was === is ? [] : [[`case ${each.case}, ${each.says}: on the hitch`, was, is]]
    }),
  ]
}

function countRows({ counts, masses, overall }: Ripple, units: UnitSystem): readonly Cells[] {
  const tally =
    (say: (value: number) => string, prefix: string, suffix: string) =>
    (each: Tally): Cells[] => {
      const [was, is] = [say(each.before), say(each.after)]
      return was === is ? [] : [[`${prefix}${each.name.replaceAll('-', ' ')}${suffix}`, was, is]]
    }
  const mass = (value: number): string => weight(value, units)
  return [
    ...tally(mass, '', '')({ name: 'all derived parts', ...masses.total }),
    ...masses.kinds.flatMap(tally(mass, 'parts of the kind ', ': mass')),
    ...counts.made.flatMap(tally(String, 'parts of the kind ', ': how many')),
    ...counts.sheets.flatMap(tally(String, 'sheets of ', '')),
    ...overall.flatMap(tally((value) => size(value, units), '', '')),
  ]
}
