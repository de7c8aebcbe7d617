/**
 * A ripple in a shop's sentences, most consequential first: what now fails, what is scrapped, what is counted and weighed
 * otherwise, and the paper to draw again. A line with no indent is a heading.
 */
import type { Market } from '../definition/types.js'
import type { Place } from '../derive/nouns.js'
import { placeWords } from '../documents/drawing/words.js'
import type { UnitSystem } from '../quantity/format.js'
import type { DocumentChange, FindingTold, Ripple, WrittenChange } from './nouns.js'
import { sayMargins, sayMasses, sayRivets } from './say-counts.js'
import { sayLoads } from './say-loads.js'
import { sayOpening, sayParts } from './say-parts.js'
import { count, list } from './words.js'

export function rippleText(ripple: Ripple, units: UnitSystem = 'metric'): readonly string[] {
  const { before, after } = ripple.coach
  if (ripple.equal) return [`${after.name}: both are revision ${after.revision}. Nothing changes.`]
  const named = before.name === after.name ? after.name : `${before.name} and ${after.name}`
  const market = after.market as Market
  const address = (place: Place): string => placeWords(place, market)
  const sections = [
    section(
      'Written',
      ripple.written.slice(0, WRITTEN).map((w) => sayWritten(w, units)),
      ripple.written.length - WRITTEN,
    ),
    section('Findings', [...ripple.checks.appeared.flatMap((f) => sayAppeared(f, address)), ...ripple.checks.gone.map(sayGone)]),
    section(
      'Openings',
      ripple.openings.flatMap((o) => sayOpening(o, units, address)),
    ),
    section('Parts', sayParts(ripple, units)),
    section('Fasteners', sayRivets(ripple, units)),
    section('Weight and balance', sayLoads(ripple, units)),
    section('Counts, masses and sizes', sayMasses(ripple, units)),
    section('Margins', sayMargins(ripple)),
    section('Documents', sayDocuments(ripple.documents)),
  ].flat()
  const nothing = sections.every((line) => line.startsWith('Written') || line.startsWith(' '))
  return [
    `${named}: revision ${before.revision} becomes ${after.revision}.`,
    ...sections,
    ...(nothing && ripple.documents.length === 0
      ? ['Nothing derived changes; every sheet keeps its content and takes the new revision.']
      : []),
  ]
}

const WRITTEN = 12

const section = (heading: string, lines: readonly string[], left = 0): readonly string[] =>
  lines.length === 0
    ? []
    : [heading, ...lines.map((line) => `  ${line}`), ...(left > 0 ? [`  and ${left} more: --json lists them all.`] : [])]

function sayWritten({ path, before, after }: WrittenChange, units: UnitSystem): string {
  const value = (v: WrittenChange['before']): string => {
    if (v === null) return 'nothing'
    if (typeof v === 'boolean') return v ? 'yes' : 'no'
    return typeof v === 'number' ? (LENGTH.test(path) ? lengthWords(v, units) : String(Number(v.toPrecision(9)))) : v
  }
  return `${path}: ${value(before)} becomes ${value(after)}.`
}

/** Written values that are lengths, by the last word of their path. */
const LENGTH =
  /(station|waterline|girth|width|height|corner|crown|radius|length|lap|flange|leg|line|minStub|pitch|rowOffset|overlap|rowSpacing|hole|pilot|tape|reach|cap|halfWidth|endReach|thickness|floorGap|couplerFace|half|top|arm|trim|kerf|lapEdge|memberGap|bendRadius|within|minThickness)$|spindles \d+$|crossMembers \d+$/

const lengthWords = (m: number, units: UnitSystem): string =>
  units === 'metric' ? `${Number((m * 1000).toFixed(4))} mm` : `${Number((m / 0.0254).toFixed(5))} in`

const VERDICTS = { fail: 'FAILS', caution: 'Caution', 'not-checked': 'Not checked', pass: 'Passes' } as const

function sayAppeared(f: FindingTold, address: (place: Place) => string): readonly string[] {
  const where = f.places.length > 0 ? ` At ${list(f.places.slice(0, 4).map(address))}.` : ''
  return [`${VERDICTS[f.verdict]}: ${f.says}${where}`, ...(f.mend ? [`  ${f.mend}`] : [])]
}

const sayGone = (f: FindingTold): string =>
  `${f.other === null ? 'No longer said' : f.other === 'pass' ? 'Passes now' : `Now only ${VERDICTS[f.other].toLowerCase()}`}: ${f.says}`

function sayDocuments(documents: readonly DocumentChange[]): readonly string[] {
  const of = (status: DocumentChange['status'], onlyFigure: boolean) =>
    documents.filter((d) => d.status === status && d.onlyFigure === onlyFigure).map((d) => d.path)
  const told = (sentence: (n: string) => string, paths: readonly string[]): readonly string[] =>
    paths.length === 0 ? [] : [sentence(count(paths.length, 'document')), ...byFolder(paths)]
  return [
    ...told((n) => `Reissue ${n}:`, of('reissue', false)),
    ...told((n) => `New, ${n}:`, of('new', false)),
    ...told((n) => `Withdraw ${n}:`, of('withdraw', false)),
    ...told((n) => `Reissue ${n} on which only the small figure of where it sits changes:`, of('reissue', true)),
  ]
}

/** A folder with more than so many names is counted instead. */
const NAMED = 24

/** `  holes/  frames.pdf, strake-side-left.csv`; a sheet's drawing files together: `rim-RW3.svg .dxf`. */
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
    return `  ${folder}${folder === '' ? '' : '  '}${shown}`
  })
}
