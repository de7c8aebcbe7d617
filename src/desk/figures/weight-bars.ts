/** Every load case as bars: what the hitch carries against its band, what the axles carry against their rating. */
import type { Design } from '../../derive/design.js'
import type { Verdict } from '../../derive/nouns.js'
import type { CaseWeighed } from '../../derive/weight-nouns.js'
import { fixed } from '../../documents/drawing/units.js'
import { formatMass, type UnitSystem } from '../../quantity/format.js'
import type { Bar, CaseBars, OrNot, WeightBars } from './nouns.js'

export function weightBars({ weight, checks }: Pick<Design, 'weight' | 'checks'>, units: UnitSystem): OrNot<WeightBars> {
  if ('notComputed' in weight) return weight
  const verdicts = new Map(checks.map(({ id, verdict }) => [id, verdict]))
  const cases = weight.cases.map((one) => barsOf(one, units, (id) => verdicts.get(id) ?? null))
  const [least, most] = weight.hitchBand
  return {
    band: { least, most, says: `${percent(least)} to ${percent(most)}` },
    ends: {
      share: endOf([most, ...cases.map((each) => each.share.value)], 0.05),
      axle: endOf([1, ...cases.flatMap((each) => each.axles.map((axle) => axle.value))], 0.25),
    },
    cases,
  }
}

const percent = (share: number): string => `${fixed(share * 100, 1)} %`
const mass = (kg: number, units: UnitSystem): string => formatMass(kg, units, { decimals: 0 })
/** The next whole step past the longest bar, and never less than a whole step past where it matters. */
const endOf = (values: readonly number[], step: number): number => (Math.floor(Math.max(...values) / step + 1e-9) + 1) * step

function barsOf(one: CaseWeighed, units: UnitSystem, verdict: (id: string) => Verdict | null): CaseBars {
  const { id, says, design, share, hitch } = one
  return {
    ...{ id, says, isDesign: design },
    share: {
      says: `Hitch in case ${id}`,
      value: share.value,
      words: `${percent(share.value)}, ${mass(hitch.value, units)}`,
      verdict: verdict(`weight.hitch.${id}`),
      working: `weight.case.${id}.share`,
    },
    axles: axlesOf(one, units, verdict),
  }
}

/** Axles that carry the same and are rated the same are one bar. */
function axlesOf({ id, axles }: CaseWeighed, units: UnitSystem, verdict: (id: string) => Verdict | null): readonly Bar[] {
  const isAlike = axles.every(({ load, rating }) => load.value === axles[0].load.value && rating === axles[0].rating)
  return (isAlike ? axles.slice(0, 1) : axles).map(({ load, rating }, i): Bar => {
    const which = axles.length === 1 ? 'The axle' : isAlike ? 'Each axle' : `Axle ${i + 1}`
    return {
      says: `${which} in case ${id}`,
      value: load.value / rating,
      words: `${formatMass(load.value, units, { decimals: 0, bare: true })} of ${mass(rating, units)}`,
      verdict: verdict(`weight.axle-${i + 1}.${id}`),
      working: `weight.case.${id}.axle-${i + 1}`,
    }
  })
}
