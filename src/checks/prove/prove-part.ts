/** The prove command: which pattern of a design a list is laid on, or a sentence why it cannot be. */
import type { Design } from '../../derive/design.js'
import { holesOf } from '../../derive/holes.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { HoleList, OurPattern, ProveReport } from './nouns.js'
import type { ProveOptions } from './prove.js'
import { provePattern } from './prove.js'

export interface ProvePartOptions extends ProveOptions {
  /** a face of the part, where it has several; all are tried when absent */
  readonly face?: string
}

/** Either a report or sentences saying what to mend. */
export interface Proof {
  readonly report: ProveReport | null
  readonly pattern: OurPattern | null
  readonly faults: readonly string[]
}

const refused = (...faults: string[]): Proof => ({ report: null, pattern: null, faults })

function ourPattern(design: Design, part: Part, pattern: Pattern, row: string | null): OurPattern {
  const holes = holesOf(design, part, pattern).filter((h) => row === null || h.row === row)
  return {
    part: part.id,
    face: pattern.face,
    flat: pattern.flat,
    outline: pattern.outline,
    cuts: pattern.cuts.map((c) => c.outline),
    holes: holes.map(({ id, row, x, y, diameter }) => ({ id, row, x, y, diameter })),
  }
}

/** Fewest listed holes outside the tolerance first, then the closest. */
function better(a: ProveReport, b: ProveReport): number {
  const off = (r: ProveReport): number => (r.best ? r.best.of - r.best.agree : Infinity)
  return off(a) - off(b) || (a.best?.rms ?? Infinity) - (b.best?.rms ?? Infinity) || (a.face < b.face ? -1 : 1)
}

function rowFault(design: Design, part: Part, row: string): string {
  const rows = [...new Set(part.patterns.flatMap((p) => p.holes.rows))].sort()
  return `The list says row ${row}, but ${part.id} of ${design.definition.coach.name} has no such row. Its rows are ${rows.join(', ')}. Write one of these, or leave the row out.`
}

const agreeing = (r: ProveReport): number => (r.best ? r.best.agree / r.best.of : 0)

/** A list of another part, most often of the other side, is the commonest reason to disagree: say which it is. */
function otherPart(design: Design, part: Part, list: HoleList, report: ProveReport, options: ProvePartOptions): readonly string[] {
  if (report.verdict !== 'disagrees' || agreeing(report) > 0.9 || list.row !== null) return []
  const others = design.parts.filter((p) => p.kind === part.kind && p.id !== part.id)
  const tried = others.flatMap((p) =>
    p.patterns.map((f) => ourPattern(design, p, f, null)).filter((f) => f.holes.length >= list.readings.length / 2 && f.holes.length > 1),
  )
  const found = tried.map((f) => provePattern(f, list, design.revision, options)).sort((a, b) => agreeing(b) - agreeing(a))[0]
  if (!found?.best || agreeing(found) < 0.95 || agreeing(found) <= agreeing(report)) return []
  return [`It looks like a list of another part: ${found.best.agree} of its ${found.best.of} holes agree with ${found.part}.`]
}

/** `design` unchanged. The list's readings are laid on every face of the part, and the face they fit best is reported. */
export function prove(design: Design, partId: string, list: HoleList, options: ProvePartOptions = {}): Proof {
  const part = design.parts.find((p) => p.id === partId)
  if (!part) {
    const near = design.parts.filter((p) => p.patterns.some((f) => f.holes.x.length)).map((p) => p.id)
    return refused(`${design.definition.coach.name} has no part ${partId}. Parts with holes: ${near.join(', ')}.`)
  }
  const faces = part.patterns.filter((p) => options.face === undefined || p.face === options.face)
  if (!faces.length)
    return refused(
      `${partId} has no face ${options.face}. Its faces are ${part.patterns.map((p) => p.face).join(', ') || 'none: it has no flat pattern'}.`,
    )
  if (list.row !== null && !faces.some((f) => f.holes.rows.includes(list.row!))) return refused(rowFault(design, part, list.row))
  const patterns = faces.map((f) => ourPattern(design, part, f, list.row)).filter((p) => p.holes.length > 1)
  if (!patterns.length) return refused(`${partId} has fewer than two holes, so no list can be laid on it.`)
  if (list.readings.length < 2)
    return refused(`${list.name} holds ${list.readings.length} readings. Give at least two holes; four or more, well apart, decide sooner.`)
  const reports = patterns.map((p) => provePattern(p, list, design.revision, options)).sort(better)
  const report = reports[0]
  const rival = reports[1]
  const also =
    rival?.best && report.best && rival.best.of - rival.best.agree === report.best.of - report.best.agree
      ? [`The list fits the ${rival.face} as well as the ${report.face}; name the face to be sure which was measured.`]
      : []
  const another = otherPart(design, part, list, report, options)
  return {
    report: { ...report, summary: [...report.summary, ...also, ...another] },
    pattern: patterns.find((p) => p.face === report.face)!,
    faults: [],
  }
}
