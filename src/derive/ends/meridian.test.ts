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

/** From the crown to the toe, from break to break. */
function summed(loft: Loft, phi: number): number {
  const stops = [loft.ridge, ...loft.breaks.filter((stop) => stop > loft.ridge)]
  return stops.slice(1).reduce((sum, to, i) => sum + refined(loft, phi, stops[i], to), 0)
}

function* lofts(wanted: number): Generator<{ seed: number; loft: Loft }> {
  // seed 1011 draws a profile that runs nearly level far out under a falling roof
  for (let seed = 1000, found = 0; found < wanted; seed++) {
    const { definition } = readDefinition('trial.yaml', randomCoach(seed).text, () => null)
    if (!definition) continue
    found++
    yield { seed, loft: derive(definition).endSections.local.ground.loft }
  }
}

describe('a length down an end', () => {
  it('is the integral of its speed to a few nanometres, whatever the coach, and a rib on it to a micrometre', () => {
    const misses: string[] = []
    for (const { seed, loft } of lofts(count(7))) {
      for (const phi of [0, 0.4, Math.PI / 4, 1.2]) {
        const want = summed(loft, phi)
        const [girth, rib] = [meridianGirth(loft, phi, loft.section.length), ribCurve(loft, phi, 0).length]
        if (Math.abs(girth - want) > 5 * NM || Math.abs(rib - want) > 1000 * NM)
          misses.push(`seed ${seed} at ${phi}: ${girth - want} m, the rib ${rib - want} m`)
      }
    }
    expect(misses).toEqual([])
  })

  it('and leads back to where it was taken', () => {
    const misses: string[] = []
    for (const { seed, loft } of lofts(count(7))) {
      for (const phi of [0, 0.4, Math.PI / 4, 1.2, Math.PI / 2]) {
        for (const share of [1e-4, 0.05, 0.3, 0.6, 0.95, 1]) {
          const girth = share * meridianGirth(loft, phi, loft.section.length)
          const back = meridianGirth(loft, phi, sigmaAtMeridian(loft, phi, girth))
          if (Math.abs(back - girth) > 5 * NM) misses.push(`seed ${seed} at ${phi}, ${girth} m: ${back - girth} m`)
        }
      }
    }
    expect(misses).toEqual([])
  })
})
