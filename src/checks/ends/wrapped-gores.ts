/** Gores bent over their ribs: whether each can be, how far the skin then stands inside the loft, how tightly it bends, how it meets the next. */
import { gorePart } from '../../derive/end-names.js'
import type { Check, WrappedGoreFacts } from '../../derive/nouns.js'
import { capacityCheck, distanceCheck, finding, mm } from '../check.js'
import type { EndsGround } from './ground.js'

const DEG = Math.PI / 180
/** Two sheets that meet at less than this lie on one lap when it is dressed over its rib: common practice, no source. */
const DRESSED = 5 * DEG

const degrees = (angle: number): string => `${(angle / DEG).toFixed(1)}°`

/** Nose and tail are alike, and left gores mirror right ones: each kind of gore is judged once. */
export function wrappedGores({ derived }: EndsGround): Check[] {
  const { wrapped } = derived.ends
  if (!wrapped) return []
  const right = wrapped.slice(0, Math.ceil(wrapped.length / 2))
  const made = right.filter((g) => g.refused === null)
  return [...right.flatMap(refusals), ...insideLoft(derived, made), ...bendings(made), ...kinks(right)]
}

const both = (gore: number): string[] => [gorePart('nose', gore), gorePart('tail', gore)]

function refusals({ gore, refused }: WrappedGoreFacts): Check[] {
  if (refused === null) return []
  return [
    finding(
      {
        id: `wrapped.gore-${gore}`,
        says: `Gore ${gore} cannot be bent from flat sheet over its ribs. ${refused}`,
        source: 'geometry: a sheet bends along straight lines only',
        concerns: both(gore),
        mend: 'Place the seams elsewhere, or have the gores formed (ends: make).',
      },
      'fail',
    ),
  ]
}

function most<T>(list: readonly T[], of: (one: T) => number | null): { readonly one: T; readonly value: number } | null {
  let best: { readonly one: T; readonly value: number } | null = null
  for (const one of list) {
    const value = of(one)
    if (value !== null && (best === null || value > best.value)) best = { one, value }
  }
  return best
}

function insideLoft({ definition }: EndsGround['derived'], gores: readonly WrappedGoreFacts[]): Check[] {
  const deepest = most(gores, (g) => g.inside?.depth ?? null)
  if (!deepest?.one.inside) return []
  const { within } = definition.ends
  const { gore, inside } = deepest.one
  return [
    capacityCheck(
      {
        id: 'wrapped.inside',
        says: `The wrapped skin stands up to ${mm(deepest.value)} mm inside the lofted surface, in gore ${gore} at WL ${mm(inside.waterline)}; ${mm(within)} mm may be lost.`,
        source: 'ends: within, of the definition',
        concerns: both(gore),
        mend: 'More gores, or seams placed so that all deviate alike, bring it nearer: the command gores says how many. Or have the gores formed.',
      },
      deepest.value,
      within,
      'm',
    ),
  ]
}

function bendings(gores: readonly WrappedGoreFacts[]): Check[] {
  const tightest = most(gores, (g) => (g.bend ? -g.bend.radius : null))
  if (!tightest?.one.bend) return []
  const { gore, bend, elastic } = tightest.one
  return [
    distanceCheck(
      {
        id: 'wrapped.bend',
        says: `The tightest bend of a wrapped gore has a radius of ${mm(bend.radius)} mm, in gore ${gore} at WL ${mm(bend.waterline)}; under ${mm(elastic.value)} mm the sheet must be rolled first.`,
        source: 'beam theory: strain at the face at yield',
        concerns: both(gore),
        mend: 'Roll it along its bending lines before it is laid on the ribs, or choose a thinner sheet.',
        worked: [elastic],
      },
      elastic.value,
      bend.radius,
      'caution',
    ),
  ]
}

/** Seams 1 and on lie between gores; the first gore's right edge is the joint with the barrel. */
function kinks(right: readonly WrappedGoreFacts[]): Check[] {
  const of = (
    id: string,
    says: (angle: string, level: string) => string,
    gores: readonly WrappedGoreFacts[],
    side: 'right' | 'left',
  ): Check[] => {
    const sharpest = most(gores, (g) => g.kinks[side]?.angle ?? null)
    const kink = sharpest?.one.kinks[side]
    if (!sharpest || !kink) return []
    return [
      capacityCheck(
        {
          id,
          says: says(degrees(kink.angle), mm(kink.waterline)),
          source: 'common practice, no source: a lap is dressed over its rib by a few degrees',
          concerns: both(sharpest.one.gore),
          mend: 'Bend the lap along its rivet line before it is drilled, bed it well, and expect the edge to show; or have the gores formed.',
        },
        kink.angle,
        DRESSED,
        'rad',
        'caution',
      ),
    ]
  }
  return [
    ...of(
      'wrapped.kink.joint',
      (angle, level) => `Wrapped gores meet the barrel at up to ${angle}, at WL ${level}; ${degrees(DRESSED)} can be dressed.`,
      right.slice(0, 1),
      'right',
    ),
    ...of(
      'wrapped.kink.seam',
      (angle, level) => `Wrapped gores meet each other at up to ${angle}, at WL ${level}; ${degrees(DRESSED)} can be dressed.`,
      right,
      'left',
    ),
  ]
}
