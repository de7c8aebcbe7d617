/**
 * Words of the labels a trailer carries, each locked to an edition of its rule. A shop may override a wording; the override
 * is kept beside the locked one and shown on the label and in its list.
 *
 * Sources: 49 CFR 567.4 for the certification label: order and letter height from a trade association's labelling guide,
 * the sentence of conformity from memory; 571.110 S4.3.5 for the cargo sentence (a trade journal quotes it); the cargo label
 * of recreation vehicle trailers, S9.3.3, from a label generator and an owner's manual; relabelling from 72 FR 68442
 * (4 December 2007, read). US only: other markets have none here. A qualified person must compare the wording with the law in
 * force before a label is fixed.
 */

const POUND = 0.45359237
const LITRES_A_GALLON = 3.785411784

export type LabelId = 'certification' | 'cargo'

export interface LockedWords {
  readonly id: string
  readonly label: LabelId
  /** the rule and its edition the words are those of */
  readonly edition: string
  readonly words: string
}

/** `{name}` is filled in. */
export const LOCKED: readonly LockedWords[] = Object.freeze(
  (
    [
      [
        'conformity',
        'certification',
        '49 CFR 567.4(g)(5), from memory',
        'THIS VEHICLE CONFORMS TO ALL APPLICABLE U.S. FEDERAL MOTOR VEHICLE SAFETY STANDARDS IN EFFECT ON THE DATE OF MANUFACTURE SHOWN ABOVE.',
      ],
      ['maker', 'certification', '49 CFR 567.4(g)(1)', 'MANUFACTURED BY: {maker}'],
      ['date', 'certification', '49 CFR 567.4(g)(2)', 'DATE OF MANUFACTURE: {date}'],
      ['gvwr', 'certification', '49 CFR 567.4(g)(3)', 'GVWR: {kg} KG ({lb} LB)'],
      [
        'gawr',
        'certification',
        '49 CFR 567.4(g)(4) with 571.120 S5.3',
        'GAWR{axle}: {kg} KG ({lb} LB) WITH {tyre} TIRES, {rim} RIMS, AT {kPa} KPA ({psi} PSI) COLD SINGLE',
      ],
      ['vin', 'certification', '49 CFR 567.4(g)(6)', 'VIN: {vin}'],
      ['type', 'certification', '49 CFR 567.4(g)(7)', 'TYPE: TRAILER'],
      ['cargo-heading', 'cargo', '49 CFR 571.110 S9.3.3, as of 72 FR 68442', 'RECREATION VEHICLE TRAILER CARGO CARRYING CAPACITY'],
      ['cargo-vin', 'cargo', '49 CFR 571.110 S9.3.3, as of 72 FR 68442', 'VIN: {vin}'],
      [
        'cargo',
        'cargo',
        '49 CFR 571.110 S4.3.5 and S9.3.3, as of 72 FR 68442',
        'THE WEIGHT OF CARGO SHOULD NEVER EXCEED {kg} kg or {lb} lbs',
      ],
      [
        'water',
        'cargo',
        '49 CFR 571.110 S9.3.3, as of 72 FR 68442',
        'CAUTION: A full load of water equals {kg} kg or {lb} lbs of cargo @ 1 kg/L (8.3 lb/gal)',
      ],
    ] as const
  ).map(([id, label, edition, words]) => Object.freeze({ id, label, edition, words })),
)

/** A shop's other wording for one of the locked ones: it needs a reason and a name, and shows. */
export interface WordsOverride {
  readonly id: string
  readonly words: string
  readonly by: string
  readonly reason: string
}

export interface LabelLine {
  readonly id: string
  readonly text: string
  readonly edition: string
  /** who put other words there and why; null where they are the locked ones */
  readonly overridden: string | null
}

/** The line of those words, filled in. Throws on a value that is asked for and not given: a label is never half filled. */
export function labelLine(id: string, fill: Readonly<Record<string, string>>, overrides: readonly WordsOverride[] = []): LabelLine {
  const locked = LOCKED.find((each) => each.id === id)
  if (!locked) throw new Error(`no label has the words "${id}"`)
  const other = overrides.find((each) => each.id === id)
  const text = (other?.words ?? locked.words).replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = fill[name]
    if (value === undefined) throw new Error(`the label line ${id} wants ${name}`)
    return value
  })
  return { id, text, edition: locked.edition, overridden: other ? `${other.by}: ${other.reason}` : null }
}

/** Least height of the letters of a certification label: 3/32 in, m (567.4). */
export const LETTERS = (3 / 32) * 0.0254

/** 571.110 up to and with this rating, 571.120 above it, kg. Federal Register summaries of 2005, 2007 and 2016. */
const LIGHT_UP_TO = 10000 * POUND
export const loadRuleOf = (gross: number): '49 CFR 571.110' | '49 CFR 571.120' =>
  gross <= LIGHT_UP_TO + 1e-9 ? '49 CFR 571.110' : '49 CFR 571.120'

/** Mass added between certification and first sale beyond which the label must be changed, kg: the lesser of 1.5 % and 100 lb (72 FR 68442). */
export const relabelAbove = (gross: number): number => Math.min(0.015 * gross, 100 * POUND)

/** Mass of water in a full tank as the label reckons it, 1 kg a litre and 8.3 lb a US gallon: the two differ by 0.6 %. */
export const waterOnLabel = (litres: number): { readonly kg: number; readonly lb: number } => ({
  kg: Math.round(litres),
  lb: Math.round((litres / LITRES_A_GALLON) * 8.3),
})

/** Whole kilograms and pounds as a label prints a rating. A capacity is rounded down, so that the label never says more than there is. */
export function massOnLabel(kg: number, rounding: 'nearest' | 'down'): { readonly kg: string; readonly lb: string } {
  const round = (each: number): string => String(rounding === 'down' ? Math.floor(each + 1e-9) : Math.round(each))
  return { kg: round(kg), lb: round(kg / POUND) }
}

export interface Ratings {
  readonly gross: number
  /** of each axle */
  readonly axles: readonly number[]
  /** hitch load at gross weight, kg */
  readonly hitch: number
}

/** What stands in the way of a certification label, in sentences. A trailer's gross rating may pass its axles' by what the car carries. */
export function ratingFaults({ gross, axles, hitch }: Ratings): readonly string[] {
  const sum = axles.reduce((all, each) => all + each, 0)
  return sum + hitch >= gross - 1e-6
    ? []
    : [
        `The axles are rated ${Math.round(sum)} kg together and the hitch carries ${Math.round(hitch)} kg, less than the gross rating of ${Math.round(gross)} kg.`,
      ]
}
