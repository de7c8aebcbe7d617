/** Lengths down an end against plain sums of the same speed, taken ever finer until they no longer change; no source but the integral. */
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import { type Loft, meridianSpeed } from '../../maths/loft.js'
import { integrate } from '../../maths/quadrature.js'
import { derive } from '../index.js'
import { meridianGirth, sigmaAtMeridian } from './meridian.js'
import { ribCurve } from './rib-curve.js'

const NM = 1e-9

function refined(loft: Loft, phi: number, from: number, to: number, deeper = 30): number {
  const whole = integrate((sigma) => meridianSpeed(loft, phi, sigma), from, to, 1)
  const halves = integrate((sigma) => meridianSpeed(loft, phi, sigma), from, to, 2)
  if (deeper === 0 || Math.abs(halves - whole) < 1e-13) return halves
  const middle = (from + to) / 2
  return refined(loft, phi, from, middle, deeper - 1) + refined(loft, phi, middle, to, deeper - 1)
}

/**
 * From the crown to the toe, from break to break. So near a flat roof's ridge that the heights do not tell how far out the profile is,
 * the speed a tenth of a micrometre off it serves.
 */
function summed(loft: Loft, phi: number): number {
  const hair = loft.ridge > 0 ? 1e-7 : 0
  const stops = [loft.ridge + hair, ...loft.breaks.filter((stop) => stop > loft.ridge)]
  const start = hair > 0 ? hair * meridianSpeed(loft, phi, stops[0]) : 0
  return stops.slice(1).reduce((sum, to, i) => sum + refined(loft, phi, stops[i], to), start)
}

/** Those the heights allow: see `summed`. */
const within = (loft: Loft): number => (loft.ridge > 0 ? 100 * NM : 5 * NM)

/** Draws a profile that runs nearly level far out under a falling roof; two flat roofs, whose meridians all but keep to the ridge beside the joint. */
const HARD = [1011, 3014, 3061]

function* lofts(wanted: number): Generator<{ seed: number; loft: Loft }> {
  let found = 0
  for (const seed of [...HARD, ...Array.from({ length: 4 * wanted }, (_, i) => 1000 + i)]) {
    const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
    if (!definition) continue
    if (++found > wanted) return
    yield { seed, loft: derive(definition).endSections.local.ground.loft }
  }
}

describe('a length down an end', () => {
  it('is the integral of its speed to a few nanometres, whatever the coach, under a flat roof to a tenth of a micrometre', () => {
    const misses: string[] = []
    for (const { seed, loft } of lofts(count(9))) {
      for (const phi of [0, 0.4, Math.PI / 4, 1.2, 1.45]) {
        const off = meridianGirth(loft, phi, loft.section.length) - summed(loft, phi)
        if (!(Math.abs(off) <= within(loft))) misses.push(`seed ${seed} at ${phi}: ${off} m`)
      }
    }
    expect(misses).toEqual([])
  })

  it('is what a rib is walked by to three hundredths of a micrometre a metre, all the way down', () => {
    const misses: string[] = []
    for (const { seed, loft } of lofts(count(9))) {
      for (const phi of [0, 0.4, Math.PI / 4, 1.2, 1.45, 1.54, Math.PI / 2]) {
        const { lengthAt } = ribCurve(loft, phi, 0)
        for (let i = 1; i <= 60; i++) {
          const sigma = loft.ridge + ((loft.section.length - loft.ridge) * i) / 60
          const off = lengthAt(sigma) - meridianGirth(loft, phi, sigma)
          if (!(Math.abs(off) <= 30 * NM * loft.section.length)) misses.push(`seed ${seed} at ${phi}, ${sigma} m: ${off} m`)
        }
      }
    }
    expect(misses).toEqual([])
  })

  it('and leads back to where it was taken', () => {
    const misses: string[] = []
    for (const { seed, loft } of lofts(count(9))) {
      for (const phi of [0, 0.4, Math.PI / 4, 1.2, 1.45, 1.52, Math.PI / 2]) {
        for (const share of [1e-4, 0.05, 0.3, 0.6, 0.95, 1]) {
          const girth = share * meridianGirth(loft, phi, loft.section.length)
          const back = meridianGirth(loft, phi, sigmaAtMeridian(loft, phi, girth))
          if (!(Math.abs(back - girth) <= 5 * NM)) misses.push(`seed ${seed} at ${phi}, ${girth} m: ${back - girth} m`)
        }
      }
    }
    expect(misses).toEqual([])
  })
})
