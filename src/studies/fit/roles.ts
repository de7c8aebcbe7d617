/** What each row's holes should be punched as, and the sentence that says why. */
import type { FastenerType } from '../../definition/types.js'
import type { HoleRole } from '../../derive/nouns.js'
import { formatLength } from '../../quantity/format.js'
import type { Cause, CauseSize } from './nouns.js'

/** What a shop would accept of a row punched full size: common practice, no source. */
export const TARGET = 0.95
const MOST_REAMING = 1

/** How a row stands in one fit it takes part in. */
export interface RowStanding {
  readonly count: number
  readonly chance: number
  readonly reaming: number
  readonly pilots: number
  /** of that fit, largest first */
  readonly causes: readonly CauseSize[]
  /** the fit in words, null for the row's own joint */
  readonly as: string | null
}

export interface Role {
  readonly role: HoleRole
  readonly reason: string
  readonly chance: number
  readonly reaming: number
  readonly pilots: number
}

const CAUSE: Readonly<Record<Cause, string>> = {
  punching: 'punching',
  warmth: 'warmth (punched and assembled at different temperatures)',
  drift: 'the drift of the punch along the sheet',
  thickness: 'the thickness of the sheets round the curve',
  jig: 'the setting of the jig',
}

/** A row is only as good as the worst fit it takes part in. */
export function roleOf(standings: readonly RowStanding[], type: FastenerType, clearance: number, formed: boolean): Role {
  const worst = [...standings].sort((a, b) => b.reaming - a.reaming || a.chance - b.chance)[0]
  const chance = Math.min(...standings.map((s) => s.chance))
  const reaming = Math.max(...standings.map((s) => s.reaming))
  const pilots = Math.min(...standings.map((s) => s.pilots))
  const figures = { chance, reaming, pilots }
  const mm = (m: number): string => formatLength(m, 'metric', { decimals: 2 })
  const [first] = worst.causes
  const governs = first
    ? `${CAUSE[first.cause]} puts the worst hole ${mm(first.size)} out${worst.as ? ` (${worst.as})` : ''}, against a clearance of ${mm(clearance)}`
    : `the clearance is ${mm(clearance)}`
  const fullFigures = `${percent(chance)} of coaches take all ${worst.count} and ${reamed(reaming)}`
  const pilotFigures = `${mm(type.pilot)} pilots drill out whole in ${percent(pilots)} of coaches`
  if (formed) {
    const says = 'A formed panel is trimmed and drilled where it lies; how far forming moves its holes is not known'
    return pilots >= TARGET
      ? { ...figures, role: 'pilot', reason: `${says}. Before that, ${pilotFigures}.` }
      : {
          ...figures,
          role: 'drill',
          reason: `${says}, and even before that only ${percent(pilots)} of coaches would have all pilots drill out.`,
        }
  }
  if (chance >= TARGET && reaming < MOST_REAMING) return { ...figures, role: 'full', reason: `Full size: ${fullFigures}; ${governs}.` }
  const not = `Not full size: ${fullFigures}, because ${governs}.`
  return pilots >= TARGET
    ? { ...figures, role: 'pilot', reason: `${not} ${capital(pilotFigures)}.` }
    : { ...figures, role: 'drill', reason: `${not} ${capital(pilotFigures)}: punch one layer and drill the others through it.` }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Whole percents, but never 0 or 100 for what is neither. */
function percent(chance: number): string {
  const figure = chance * 100
  if (chance > 0 && figure < 1) return 'under 1 %'
  if (chance < 1 && figure > 99) return 'over 99 %'
  return `${figure.toFixed(0)} %`
}

function reamed(holes: number): string {
  if (holes < 0.05) return 'none needs a reamer'
  return `${holes.toFixed(holes < 10 ? 1 : 0)} on average need${holes < 1.05 && holes > 0.95 ? 's' : ''} a reamer`
}
