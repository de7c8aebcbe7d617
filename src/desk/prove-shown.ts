/** A list of holes the shop trusts, laid on a sheet of the coach: the verdict, every difference worst first, and the printed sheet. */
import type { Compared, HoleList, ProveReport } from '../checks/prove/nouns.js'
import { prove } from '../checks/prove/prove-part.js'
import type { Design } from '../derive/design.js'
import { proofSheets } from '../documents/prove/proof-sheet.js'
import { proofCsv, VERDICT_WORDS, worstFirst } from '../documents/prove/proof-text.js'
import { pageToSvg } from '../documents/svg.js'

export interface Provable {
  readonly id: string
  readonly says: string
  readonly holes: number
  readonly faces: readonly string[]
}

export interface ProofShown {
  readonly verdict: ProveReport['verdict']
  readonly verdictSays: string
  readonly face: string
  /** what it comes to, in sentences */
  readonly summary: readonly string[]
  /** one for each hole that differs, the worst first; those that agree are counted, not listed */
  readonly differences: readonly { readonly says: string; readonly within: boolean }[]
  /** printed sheets, millimetres */
  readonly pages: readonly string[]
  /** every listed hole, to be kept */
  readonly csv: string
}

export interface NotProved {
  readonly faults: readonly string[]
}

/** Parts a list can be laid on, sheets of the skin first. */
export function provable(design: Design): readonly Provable[] {
  const parts = design.parts.flatMap(({ id, says, patterns }) => {
    const holes = patterns.reduce((sum, { holes: { x } }) => sum + x.length, 0)
    return holes > 1 ? [{ id, says, holes, faces: patterns.map(({ face }) => face) }] : []
  })
  const isStrake = ({ id }: Provable): boolean => id.startsWith('strake-')
  return [...parts.filter(isStrake), ...parts.filter((each) => !isStrake(each))]
}

/** More sentences than this are a table: the CSV has them all. */
const MOST = 200

export function proofShown(design: Design, partId: string, list: HoleList, face: string | null): ProofShown | NotProved {
  const { report, faults } = prove(design, partId, list, face === null ? {} : { face })
  const part = design.parts.find(({ id }) => id === partId)
  const pattern = part?.patterns.find((each) => each.face === report?.face)
  if (!report || !part || !pattern) return { faults }
  const missing = report.missing.map(({ hole }) => ({ says: `${hole} of ours is not in the list.`, within: false }))
  const listed = worstFirst(report.best?.compared ?? []).map((each) => ({ says: differenceSays(each), within: each.within }))
  const outside = listed.filter(({ within }) => !within)
  return {
    verdict: report.verdict,
    verdictSays: `${VERDICT_WORDS[report.verdict]} at ${(report.tolerance * 1000).toFixed(2)} mm`,
    face: report.face,
    summary: report.summary,
    differences: [...outside, ...missing, ...listed.filter(({ within }) => within)].slice(0, MOST),
    pages: proofSheets(design, part, pattern, report).map(pageToSvg),
    csv: proofCsv(report),
  }
}

function differenceSays({ label, line, hole, dx, dy, distance, diameterDifference }: Compared): string {
  const mm = (m: number): string => (m * 1000).toFixed(2)
  const which = `Hole ${label} (line ${line})`
  if (hole === null || dx === null || dy === null || distance === null) return `${which} is not in our pattern.`
  const size =
    diameterDifference !== null && Math.abs(diameterDifference) >= 5e-5
      ? ` and ${mm(Math.abs(diameterDifference))} mm ${diameterDifference > 0 ? 'larger' : 'smaller'}`
      : ''
  return `${which} stands ${mm(distance)} mm off ${hole}: ${mm(dx)} mm in x, ${mm(dy)} mm in y${size}.`
}
