/**
 * A ripple in a shop's sentences, most consequential first: what now fails, what is scrapped, what is counted and weighed
 * otherwise, and the paper to draw again. A line with no indent is a heading.
 */
import type { Market } from '../definition/types.js'
import type { Place } from '../derive/nouns.js'
import { placeWords } from '../documents/drawing/words.js'
import type { UnitSystem } from '../quantity/format.js'
import { line, type RippleLine, targets } from './line.js'
import type { DocumentChange, FindingTold, Ripple, WrittenChange } from './nouns.js'
import { sayMargins, sayMasses, sayRivets } from './say-counts.js'
import { sayLoads } from './say-loads.js'
import { sayOpening, sayParts } from './say-parts.js'
import { count, list } from './words.js'

export function rippleText(ripple: Ripple, units: UnitSystem = 'metric'): readonly string[] {
  return rippleLines(ripple, units).map(({ indent, says }) => `${'  '.repeat(indent)}${says}`)
}

/** The same with what each line is about. `isWhole` cuts nothing short and gives each document a line of its own. */
export function rippleLines(ripple: Ripple, units: UnitSystem = 'metric', isWhole = false): readonly RippleLine[] {
  const { before, after } = ripple.coach
  if (ripple.equal) return [line(`${after.name}: both are revision ${after.revision}. Nothing changes.`, [], 0)]
  const named = before.name === after.name ? after.name : `${before.name} and ${after.name}`
  const market = after.market as Market
  const address = (place: Place): string => placeWords(place, market)
  const written = ripple.written.slice(0, isWhole ? undefined : WRITTEN)
  const sections = [
    section(
      'Written',
      written.map((w) => line(sayWritten(w, units), targets('written', [w.path]))),
      ripple.written.length - written.length,
    ),
    section('Findings', [
      ...ripple.checks.appeared.flatMap((f) => sayAppeared(f, address)),
      ...ripple.checks.gone.map((f) => line(sayGone(f), targets('check', [f.id]))),
    ]),
    section(
      'Openings',
      ripple.openings.flatMap((o) => sayOpening(o, units, address)),
    ),
    section('Parts', sayParts(ripple, units)),
    section('Fasteners', sayRivets(ripple, units)),
    section('Weight and balance', sayLoads(ripple, units)),
    section('Counts, masses and sizes', sayMasses(ripple, units)),
    section('Margins', sayMargins(ripple, isWhole)),
    section('Documents', sayDocuments(ripple.documents, isWhole)),
  ].flat()
  const nothing = sections.every(({ indent, says }) => indent > 0 || says === 'Written')
  return [
    line(`${named}: revision ${before.revision} becomes ${after.revision}.`, [], 0),
    ...sections,
    ...(nothing && ripple.documents.length === 0
      ? [line('Nothing derived changes; every sheet keeps its content and takes the new revision.', [], 0)]
      : []),
  ]
}

const WRITTEN = 12

const section = (heading: string, lines: readonly RippleLine[], left = 0): readonly RippleLine[] =>
  lines.length === 0 ? [] : [line(heading, [], 0), ...lines, ...(left > 0 ? [line(`and ${left} more: --json lists them all.`)] : [])]

const sayWritten = ({ path, before, after }: WrittenChange, units: UnitSystem): string =>
  `${path}: ${valueWords(path, before, units)} becomes ${valueWords(path, after, units)}.`

/** A written value as it is said: lengths in the units asked for, other numbers as they are. */
export function valueWords(path: string, value: WrittenChange['before'], units: UnitSystem): string {
  if (value === null) return 'nothing'
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  return typeof value === 'number' ? (LENGTH.test(path) ? lengthWords(value, units) : String(Number(value.toPrecision(9)))) : value
}

/** Written values that are lengths, by the last word of their path. */
const LENGTH =
  /(station|waterline|girth|width|height|corner|crown|radius|length|lap|flange|leg|line|minStub|pitch|rowOffset|overlap|rowSpacing|hole|pilot|tape|reach|cap|halfWidth|endReach|thickness|floorGap|couplerFace|half|top|arm|trim|kerf|lapEdge|memberGap|bendRadius|within|minThickness)$|spindles \d+$|crossMembers \d+$/

const lengthWords = (m: number, units: UnitSystem): string =>
  units === 'metric' ? `${Number((m * 1000).toFixed(4))} mm` : `${Number((m / 0.0254).toFixed(5))} in`

export const VERDICTS = { fail: 'FAILS', caution: 'Caution', 'not-checked': 'Not checked', pass: 'Passes' } as const

function sayAppeared(f: FindingTold, address: (place: Place) => string): readonly RippleLine[] {
  const about = targets('check', [f.id])
  const where = f.places.length > 0 ? ` At ${list(f.places.slice(0, 4).map(address))}.` : ''
  return [line(`${VERDICTS[f.verdict]}: ${f.says}${where}`, about), ...(f.mend ? [line(f.mend, about, 2)] : [])]
}

const sayGone = (f: FindingTold): string =>
  `${f.other === null ? 'No longer said' : f.other === 'pass' ? 'Passes now' : `Now only ${VERDICTS[f.other].toLowerCase()}`}: ${f.says}`

function sayDocuments(documents: readonly DocumentChange[], isWhole: boolean): readonly RippleLine[] {
  const of = (status: DocumentChange['status'], onlyFigure: boolean) =>
    documents.filter((d) => d.status === status && d.onlyFigure === onlyFigure)
  const told = (sentence: (n: string) => string, those: readonly DocumentChange[]): readonly RippleLine[] => {
    if (those.length === 0) return []
    const paths = those.map((d) => d.path)
    const about = targets('document', paths)
    const each = isWhole
      ? those.map((d) => line(`${d.path}, ${d.says}`, targets('document', [d.path]), 2))
      : byFolder(paths).map((says) => line(says, about, 2))
    return [line(sentence(count(paths.length, 'document')), about), ...each]
  }
  return [
    ...told((n) => `Reissue ${n}:`, of('reissue', false)),
    ...told((n) => `New, ${n}:`, of('new', false)),
    ...told((n) => `Withdraw ${n}:`, of('withdraw', false)),
    ...told((n) => `Reissue ${n} on which only the small figure of where it sits changes:`, of('reissue', true)),
  ]
}

/** A folder with more than so many names is counted instead. */
const NAMED = 24

/** `holes/  frames.pdf, strake-side-left.csv`; a sheet's drawing files together: `rim-RW3.svg .dxf`. */
function byFolder(paths: readonly string[]): readonly string[] {
  const folders = new Map<string, Map<string, string[]>>()
  for (const path of paths) {
    const cut = path.lastIndexOf('/') + 1
    const dot = path.lastIndexOf('.')
    const stems = folders.get(path.slice(0, cut)) ?? new Map<string, string[]>()
    folders.set(path.slice(0, cut), stems)
    stems.set(path.slice(cut, dot), [...(stems.get(path.slice(cut, dot)) ?? []), path.slice(dot)])
  }
  return [...folders].map(([folder, stems]) => {
    const names = [...stems].map(([stem, endings]) => `${stem}${endings.join(' ')}`)
    const files = [...stems.values()].reduce((sum, endings) => sum + endings.length, 0)
    const shown = names.length <= NAMED ? names.join(', ') : `${count(files, 'document')}: --json names each`
    return `${folder}${folder === '' ? '' : '  '}${shown}`
  })
}
