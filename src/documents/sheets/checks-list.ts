/** Every check as a sentence with its margin drawn as a bar, worst first, with its source and what would mend it. */
import type { Design } from '../../derive/design.js'
import type { Check, Verdict } from '../../derive/nouns.js'
import { display } from '../../quantity/display.js'
import { lettered, wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, line, OUTLINE } from '../drawing/page.js'
import { sheetsOf } from '../drawing/paper-sizes.js'
import type { PrintOptions } from '../drawing/sheet.js'
import { coachTitle, roomAbove, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { introduction, marginBar } from '../drawing/table.js'
import type { PrintUnits } from '../drawing/units.js'
import { fixed } from '../drawing/units.js'
import { placeWords } from '../drawing/words.js'

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  fail: 'FAILS',
  caution: 'CAUTION',
  'not-checked': 'NOT CHECKED',
  pass: 'PASSES',
}
const ORDER: readonly Verdict[] = ['fail', 'caution', 'not-checked', 'pass']

/** Fails first, then cautions, what was not checked, and passes; within each the smallest margin first. */
export function worstFirst(checks: readonly Check[]): readonly Check[] {
  const margin = (check: Check): number => check.margin ?? Infinity
  return [...checks].sort(
    (a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict) || margin(a) - margin(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0),
  )
}

function marginWords(check: Check, units: PrintUnits): string {
  if (check.margin === null) return 'no margin'
  const percent = `${check.margin >= 0 ? '+' : ''}${fixed(check.margin * 100, 0)} %`
  if (check.demand === null || check.capacity === null || check.unit === null) return percent
  return `${percent}: ${display(check.capacity, check.unit, units)} there for ${display(check.demand, check.unit, units)} asked`
}

const WORD = 28
const BAR = 34

function entry(
  check: Check,
  design: Design,
  x: number,
  width: number,
  units: PrintUnits,
): { readonly tall: number; draw(y: number): readonly Mark[] } {
  const market = design.definition.coach.market
  const text = width - WORD - BAR - 6
  const says = wrap(lettered(check.says), text, 2.5)
  const more = [
    ...(check.mend ? wrap(lettered(`To mend: ${check.mend}`), text, 2.5) : []),
    ...wrap(
      lettered(
        `${
          check.places.length > 0
            ? `At ${check.places
                .slice(0, 4)
                .map((p) => placeWords(p, market))
                .join('; ')}${check.places.length > 4 ? ` and ${check.places.length - 4} more` : ''}. `
            : ''
        }Source: ${check.source}. ${check.id}`,
      ),
      text,
      1.8,
    ),
  ]
  const mendLines = check.mend ? wrap(lettered(`To mend: ${check.mend}`), text, 2.5).length : 0
  const margins = wrap(lettered(marginWords(check, units)), BAR, 1.8)
  const tall = Math.max(4.2 * (says.length + mendLines) + 3.2 * (more.length - mendLines) + 3, 9 + margins.length * 3)
  return {
    tall,
    draw: (y) => {
      const group = 'check'
      const marks: Mark[] = [letter(x, y + 4, VERDICT_WORDS[check.verdict], { height: 2.5, bold: true, group })]
      let level = y + 4
      for (const row of says) {
        marks.push(letter(x + WORD, level, row, { height: 2.5, bold: check.verdict === 'fail', group }))
        level += 4.2
      }
      for (const [i, row] of more.entries()) {
        const mend = i < mendLines
        marks.push(letter(x + WORD, level - (mend ? 0 : 0.7), row, { height: mend ? 2.5 : 1.8, group }))
        level += mend ? 4.2 : 3.2
      }
      marks.push(...marginBar(x + width - BAR, y + 1.5, BAR, 3, check.margin))
      margins.forEach((row, i) => {
        marks.push(letter(x + width - BAR, y + 8 + i * 3, row, { height: 1.8, group }))
      })
      marks.push(line(x, y + tall, x + width, y + tall, { width: FINE, group }))
      return marks
    },
  }
}

/** The checks, and one entry not checked for each trade that no rule covers yet, so that nothing unlooked-at is passed over. */
export function everyCheck(design: Pick<Design, 'checks' | 'notCovered'>): readonly Check[] {
  const blank = {
    demand: null,
    capacity: null,
    unit: null,
    margin: null,
    verdict: 'not-checked',
    places: [],
    concerns: [],
    mend: null,
    worked: [],
  } as const
  const uncovered = design.notCovered.map(
    (says, i): Check => ({ ...blank, id: `not-covered.${i + 1}`, says, source: 'no rule of this program covers it' }),
  )
  return [...design.checks, ...uncovered]
}

/** How many checks of each verdict. */
export function verdictCounts(checks: readonly Check[]): Readonly<Record<Verdict, number>> {
  const out = { pass: 0, fail: 0, caution: 0, 'not-checked': 0 }
  for (const check of checks) out[check.verdict]++
  return out
}

export function checksList(design: Design, options: PrintOptions = {}): readonly Page[] {
  const units = unitsOf(options)
  const size = sheetsOf(seriesOf(options))[0]
  const room = roomAbove(size, 'slim')
  const inner = { x: room.x + 4, y: room.y + 4, width: room.width - 8, foot: room.y + room.height - 3 }
  const counts = verdictCounts(everyCheck(design))
  const head = introduction(inner.x, inner.y, inner.width, 'Checks, worst first', [
    `Fail: ${counts.fail}. Caution: ${counts.caution}. Not checked: ${counts['not-checked']}. Pass: ${counts.pass}.`,
    'The bar is filled to the share of the capacity that is used; a black bar is over it. A crossed bar has nothing measured.',
  ])
  const pages: Mark[][] = [
    [...head.marks, line(inner.x, inner.y + head.depth, inner.x + inner.width, inner.y + head.depth, { width: OUTLINE })],
  ]
  let y = inner.y + head.depth + 1
  for (const check of worstFirst(everyCheck(design))) {
    const item = entry(check, design, inner.x, inner.width, units)
    if (y + item.tall > inner.foot) {
      pages.push([])
      y = inner.y
    }
    pages[pages.length - 1].push(...item.draw(y))
    y += item.tall
  }
  const title = coachTitle(design, options, 'Checks', design.definition.coach.name, 'Checks, worst first')
  return sheetsFrom(
    pages.map((marks, n) => ({
      name: pages.length === 1 ? 'checks' : `checks-${n + 1}`,
      says: 'Checks, worst first',
      size,
      block: 'slim' as const,
      title,
      marks,
    })),
  )
}
