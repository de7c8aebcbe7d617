/** Lifting: the bare body on its slings, and what two people may carry. */
import type { Market } from '../../definition/types.js'
import type { Check, Part } from '../../derive/nouns.js'
import { handLimit, handLimitInPounds, teamLimit } from '../../derive/weight/lift.formulas.js'
import type { LiftDerived } from '../../derive/weight-nouns.js'
import { capacityCheck, finding, mm } from '../check.js'

export function liftRules({ mass, centre, slings, blocked, legRated, unknown, hook }: LiftDerived): Check[] {
  const kn = (n: number): string => `${(n / 1000).toFixed(1)} kN`
  const told = { source: 'statics; rigging charts following ASME B30.9. A competent person plans the lift', concerns: ['lift'] }
  const says = `The bare body weighs ${Math.round(mass.value)} kg with its centre at station ${mm(Math.round(centre[0] * 1000) / 1000)}`
  const left =
    unknown.length === 0
      ? []
      : [
          finding(
            {
              ...told,
              id: 'lift.unknown',
              says: `Left out of the lift but not in the list of masses: ${unknown.join(', ')}.`,
              mend: 'Name them as they stand there.',
            },
            'caution',
          ),
        ]
  const worst = slings.reduce<(typeof slings)[number] | null>((a, b) => (a && a.leg >= b.leg ? a : b), null)
  if (!worst)
    return [
      ...left,
      finding(
        { ...told, id: 'lift.body', says: `${says}. ${blocked ?? ''}`.trim(), mend: 'Put the slings round other frames.', worked: [mass] },
        'fail',
      ),
    ]
  if (blocked) return [...left, finding({ ...told, id: 'lift.body', says: `${says}. ${blocked}`, worked: [mass, worst.tension] }, 'fail')]
  return [
    ...left,
    capacityCheck(
      {
        ...told,
        ...{ id: 'lift.body', worked: [mass, worst.tension] },
        says: `${says}, between its slings; with the hook ${mm(hook)} mm above the crown a leg at ${worst.frame} holds ${kn(worst.leg)} of ${kn(legRated)}.`,
      },
      worst.leg,
      legRated,
      'N',
    ),
  ]
}

/** The best there is: close to the body, at the height of the knuckles, hardly raised. */
const AT_BEST = { H: 0.25, V: 0.75, D: 0.25, A: 0, FM: 1, CM: 1 }

/** What is carried whole: each end as it leaves its jig, without its lining, and every part by itself. */
export function carryRules(parts: readonly Part[], market: Market): Check[] {
  const one = market === 'us' ? handLimitInPounds(AT_BEST) : handLimit(AT_BEST)
  const two = teamLimit({ m_1: one })
  const source = 'NIOSH 94-110, every multiplier at its best; two people two thirds of the sum, HSE L23, from memory'
  const loads = [
    ...(['nose', 'tail'] as const).flatMap((end) => {
      const own = parts.filter((part) => part.trade === 'ends' && part.id.startsWith(`${end}-`) && part.kind !== 'end-lining')
      return own.length === 0
        ? []
        : [{ id: end, says: `The ${end} as it leaves its jig`, mass: own.reduce((sum, part) => sum + part.mass.value, 0) }]
    }),
    ...parts
      .filter((part) => part.mass.value > two.value)
      .map((part) => ({ id: part.id, says: `The part ${part.id}`, mass: part.mass.value })),
  ]
  return loads.map(({ id, says, mass }) =>
    capacityCheck(
      {
        ...{ id: `carry.${id}`, source, concerns: [id], worked: [two] },
        says: `${says} weighs ${mass.toFixed(1)} kg; two people may carry ${two.value.toFixed(1)} kg at best.`,
        mend: mass > two.value ? 'Use a hoist or a trolley, or four people with a planned lift.' : null,
      },
      mass,
      two.value,
      'kg',
      'caution',
    ),
  )
}
