/** How the study of meeting holes is said, on paper, in a spreadsheet and on a screen. */
import type { HoleRole } from '../../derive/nouns.js'
import type { Help } from '../../studies/fit/nouns.js'
import { fixed } from '../drawing/units.js'

export const ROLE_WORDS: Readonly<Record<HoleRole, string>> = {
  full: 'full size',
  pilot: 'pilot, drill at assembly',
  drill: 'drill in place',
}

/** Whole percents and tenths under ten, but never 0 or 100 for what is neither. */
export function chanceWords(chance: number): string {
  const figure = chance * 100
  if (chance > 0 && figure < 0.1) return 'under 0.1 %'
  if (chance < 1 && figure > 99.9) return 'over 99.9 %'
  return `${fixed(figure, figure > 0 && figure < 10 ? 1 : 0)} %`
}

export const reamWords = (holes: number): string => fixed(holes, holes < 10 ? 1 : 0)

/** `Punch twice as true. 12 % and 3.1 to ream.` */
export function helpWords({ what, says, chance, reaming }: Help): string {
  return what === 'pilot'
    ? `${says} Pilots drill out whole in ${chanceWords(chance)} of coaches.`
    : `${says} Then ${chanceWords(chance)} and ${reamWords(reaming)} to ream.`
}

export const FIT_CAUTION =
  'Figures for planning, no better than the process they are made from; try on a first-off before a packet is punched.'
