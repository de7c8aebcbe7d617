/** What a proof says, in plain sentences. Millimetres whatever the list was in; the tolerance is said in the first one. */
import { distanceToOutline } from '../../maths/outline.js'
import type { Compared, Fitted, HoleList, OurPattern, ProveReport } from './nouns.js'

type Bare = Omit<ProveReport, 'summary'>

const mm = (m: number, digits = 2): string => plain(m * 1000, digits)
const plain = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(0(\.0*)?)$/, '$1')
const holes = (n: number): string => `${n} ${n === 1 ? 'hole' : 'holes'}`

/** Closer than this to an edge, an error toward it is what a person asks about first, m. Our choice. */
const NEAR_EDGE = 0.03

const OPPOSITE: Readonly<Record<string, string>> = { aft: 'forward', forward: 'aft', right: 'left', left: 'right', up: 'down', down: 'up' }

/** "0.42 mm toward the edge", "0.30 mm aft and 0.12 mm up". */
function offsetInWords(c: Compared, pattern: OurPattern): string {
  const { dx, dy, distance } = c
  if (dx === null || dy === null || distance === null) return ''
  const edges = [pattern.outline, ...pattern.cuts].filter((o) => o.length > 1)
  const gap = (x: number, y: number): number => Math.min(...edges.map((o) => distanceToOutline(o, x, y)))
  const before = edges.length ? gap(c.at[0] - dx, c.at[1] - dy) : Infinity
  const nearer = edges.length ? before - gap(c.at[0], c.at[1]) : 0
  if (before < NEAR_EDGE && Math.abs(nearer) > 0.8 * distance) return `${mm(distance)} mm ${nearer > 0 ? 'toward' : 'away from'} the edge`
  const along = (d: number, way: string): string => `${mm(Math.abs(d))} mm ${d < 0 ? OPPOSITE[way] : way}`
  const parts = [
    [dx, pattern.flat.x],
    [dy, pattern.flat.y],
  ] as const
  return parts
    .filter(([d]) => Math.abs(d) > 0.2 * distance)
    .map(([d, way]) => along(d, way))
    .join(' and ')
}

/** How the list lies on the pattern. */
function placementInWords(fit: Fitted, pattern: OurPattern): string {
  const { mirrored, turn, x, y } = fit.placement
  const degrees = turn <= -Math.PI + 1e-4 ? 180 : (turn * 180) / Math.PI
  const other = pattern.flat.view === 'outside' ? 'inside' : 'outside'
  const hand = mirrored
    ? `it is the other hand, as seen from the ${other},`
    : `it is the same hand as ours, seen from the ${pattern.flat.view},`
  const turned = Math.abs(degrees) < 0.5 ? 'not turned' : `turned ${degrees.toFixed(Math.abs(degrees % 90) < 0.05 ? 0 : 2)}°`
  return `The list is in ${fit.unit === 'mm' ? 'millimetres' : 'inches'}; ${hand} ${turned}, and its 0, 0 is at our x ${mm(x, 1)}, y ${mm(y, 1)} mm.`
}

function agreement(report: Bare, fit: Fitted, pattern: OurPattern): string {
  const off = fit.compared.filter((c) => c.distance !== null)
  const worst = off.reduce<Compared | null>((a, c) => (a === null || c.distance! > a.distance! ? c : a), null)
  const count = fit.agree === fit.of ? `All ${fit.of} listed holes agree` : `${fit.agree} of ${fit.of} listed holes agree`
  const tail = !worst
    ? ''
    : worst.distance! < 0.000005
      ? ', every one to the hundredth'
      : `; the worst is ${worst.hole}, ${offsetInWords(worst, pattern)}`
  return `${count} within ${mm(report.tolerance, 1)} mm${tail}.`
}

/** The holes that do not agree, worst first, at most six by name. */
function disagreements(fit: Fitted, pattern: OurPattern): readonly string[] {
  const off = fit.compared.filter((c) => c.distance !== null && !c.within).sort((a, b) => b.distance! - a.distance!)
  if (!off.length) return []
  const named = off.slice(0, 6).map((c) => `${c.label} is ${offsetInWords(c, pattern)} of our ${c.hole}`)
  return [`Outside the tolerance: ${named.join('; ')}${off.length > 6 ? `; and ${off.length - 6} more in the table` : ''}.`]
}

function named(ids: readonly string[]): string {
  return `${ids.slice(0, 6).join(', ')}${ids.length > 6 ? ` and ${ids.length - 6} more` : ''}`
}

function diameters(fit: Fitted): readonly string[] {
  const other = fit.compared.filter((c) => c.diameterDifference !== null && Math.abs(c.diameterDifference) > 0.0001)
  if (!other.length) return []
  const byDifference = new Map<string, number>()
  for (const c of other) byDifference.set(mm(c.diameterDifference!), (byDifference.get(mm(c.diameterDifference!)) ?? 0) + 1)
  const list = [...byDifference].map(([d, n]) => `${n} by ${d} mm`).join(', ')
  return [
    `${holes(other.length)} of the list ${other.length === 1 ? 'has' : 'have'} another diameter than ours (${list}); the verdict is on positions.`,
  ]
}

/** A list that is evenly long or short all over points at the tape, the unit or the sheet's warmth, not at holes. */
function stretched(report: Bare, fit: Fitted): readonly string[] {
  if (fit.agree === fit.of || fit.stretch === null) return []
  const { perMetre, rms, worst } = fit.stretch
  if (worst > report.tolerance || rms > 0.6 * fit.rms || Math.abs(perMetre) < 5e-5) return []
  return [
    `The list runs ${mm(Math.abs(perMetre))} mm a metre ${perMetre > 0 ? 'longer' : 'shorter'} than ours all over; taken out, the worst is ${mm(worst)} mm. Look at the tape, the warmth of the sheet, or a rounded unit before the holes.`,
  ]
}

function undecided(report: Bare, pattern: OurPattern): readonly string[] {
  if (report.verdict !== 'undecided' || !report.second) return []
  const ways =
    report.rivals === 1 ? 'a second placement fits' : `${report.rivals > 300 ? 'hundreds of' : report.rivals} other placements fit`
  const first = `Undecided: ${ways} as well (${report.second.agree} of ${report.second.of} holes). The second: ${placementInWords(report.second, pattern)}`
  const ask = report.askFor
  if (!ask) return [first, 'Measure a corner of the sheet, or a hole of another row, and prove again.']
  const [x, y] = ask.listed.map((v) => plain(v, ask.listUnit === 'mm' ? 1 : 3))
  return [
    first,
    `One more hole would settle it: look for ${ask.hole} (our x ${mm(ask.x, 1)}, y ${mm(ask.y, 1)} mm) at x ${x}, y ${y} ${ask.listUnit} in the list's own axes. ` +
      `If it is there the first placement is right; under the second our nearest hole would be ${mm(ask.apart, 1)} mm away. Add what you measure to the list and prove again.`,
  ]
}

export function summaryOf(report: Bare, list: HoleList, pattern: OurPattern): readonly string[] {
  const fit = report.best
  if (!fit) {
    return [
      `The list fits nowhere on ${report.part}: no placement, in either hand, turned any way, puts half of its ${list.readings.length} holes within ${mm(report.tolerance, 1)} mm of ours.`,
      'Check that it is a list of this part, that its unit is given, and that the first-off is not of another revision.',
      ...list.notes,
    ]
  }
  const { extra, missing } = report
  return [
    agreement(report, fit, pattern),
    ...disagreements(fit, pattern),
    ...(extra.length
      ? [`${holes(extra.length)} of the list ${extra.length === 1 ? 'is' : 'are'} not in our pattern: ${named(extra.map((e) => e.label))}.`]
      : []),
    ...(missing.length
      ? [
          `${holes(missing.length)} of ours ${missing.length === 1 ? 'is' : 'are'} missing from the list: ${named(missing.map((m) => m.hole))}.`,
        ]
      : []),
    ...(report.sample
      ? [`The list is taken as a sample: it leaves out ${report.lacking} of ours within its extent, and these are not counted as missing.`]
      : []),
    ...undecided(report, pattern),
    placementInWords(fit, pattern),
    ...(report.selfAlike
      ? [
          'Our pattern is the same turned or mirrored on itself, so its holes cannot tell which way the list lies; every way gives the same differences.',
        ]
      : []),
    `Root mean square difference ${mm(fit.rms, 3)} mm; the least worst difference any placement can give is ${mm(fit.leastWorst, 3)} mm.`,
    ...stretched(report, fit),
    ...diameters(fit),
    ...list.notes,
  ]
}
