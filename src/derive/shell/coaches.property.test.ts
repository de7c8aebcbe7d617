/** Whole random coaches, from text: each is refused in sentences, or derived and then found right by every verifier. */
import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { notFinite } from '../../../tests/finite.js'
import { type RandomCoach, randomCoach } from '../../../tests/random-coach.js'
import { readDefinition } from '../../definition/read-definition.js'
import type { Definition, Fault } from '../../definition/types.js'
import { derive } from '../index.js'
import { holesMeet, lengthsAgree } from './verify.js'
import { areasAgree } from './verify-areas.js'
import { depthsAgree, nothingLost } from './verify-counts.js'
import { handsAgree, mirrored } from './verify-mirror.js'

/** Sentences saying what is wrong with what became of one coach; none when all is well. */
function trial(coach: RandomCoach): { outcome: 'derived' | 'refused'; wrong: string[] } {
  const { definition, faults } = readDefinition('trial.yaml', coach.text, () => null)
  if (!definition) return { outcome: 'refused', wrong: faults.length === 0 ? ['refused without a word'] : faults.flatMap(notASentence) }
  return {
    outcome: 'derived',
    wrong: [
      ...(faults.length > 0 ? ['derived in spite of faults'] : []),
      ...misses(oftenFormed(definition, coach.seed), coach.seed % 10 === 0),
    ],
  }
}

/** Wrapped ends take several times as long to derive as formed ones: one in three of them is enough. */
const oftenFormed = (definition: Definition, seed: number): Definition =>
  seed % 3 === 0 ? definition : { ...definition, ends: { ...definition.ends, make: 'formed' } }

/** What was written may be nonsense; what is said about it may not. */
function notASentence(fault: Fault): string[] {
  const said = fault.says.slice(fault.path.length).replace(/found .*/s, '')
  const plain = /^\S.*[.?]$/s.test(fault.says) && fault.line >= 1 && fault.column >= 1 && !/undefined|NaN|\[object|Infinity/.test(said)
  return plain ? [] : [`is no sentence: ${JSON.stringify(fault)}`]
}

/** Verifiers' limits, m: a hundredth of a millimetre is promised; what is found is far below. */
const HOLES = 1e-9
const LENGTHS = 1e-8
const OUTLINES = 1e-6

function misses(definition: Definition, both: boolean): string[] {
  const design = derive(definition)
  const { shell, ...rest } = design
  const wrong = [...notFinite(rest), ...nothingLost(shell).slice(0, 3)]
  const check = (what: string, { largest, where }: { largest: number; where: string }, most: number): void => {
    if (!(largest < most)) wrong.push(`${what}: ${largest} at ${where}`)
  }
  check('holes do not meet', holesMeet(shell), HOLES)
  check('lengths differ from space', lengthsAgree(shell), LENGTHS)
  check('areas differ from space', areasAgree(shell), OUTLINES)
  check('depths differ from stacks', depthsAgree(shell), HOLES)
  if (both) check('right and left differ', handsAgree(shell, derive(mirrored(definition)).shell), HOLES)
  return wrong
}

/** A cap too small for the lining's row; a header by a toe that climbs. Seen only at the long counts, so tried at the short ones too. */
const ONCE_WRONG = [3648, 4646]

describe('random coaches', () => {
  it('that once went wrong go right', () => {
    for (const seed of ONCE_WRONG) expect(trial(randomCoach(seed)).wrong, `seed ${seed}`).toEqual([])
  })

  it('are refused in sentences or derived without a miss', () => {
    const tried = { derived: 0, refused: 0 }
    const wrong: string[] = []
    for (let seed = 1; seed <= count(500); seed++) {
      const coach = randomCoach(seed)
      try {
        const { outcome, wrong: here } = trial(coach)
        tried[outcome]++
        wrong.push(...here.map((w) => `seed ${seed} (${coach.mood}): ${w}`))
      } catch (error) {
        wrong.push(
          `seed ${seed} (${coach.mood}) threw: ${error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 3).join(' ') : error}`,
        )
      }
    }
    expect(wrong.slice(0, 20)).toEqual([])
    // the generator must go on exercising both roads
    expect(tried.derived).toBeGreaterThan(count(500) * 0.4)
    expect(tried.refused).toBeGreaterThan(count(500) * 0.1)
  })
})
