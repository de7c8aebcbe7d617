import { describe, expect, it } from 'vitest'
import { flagsOf, NODE_FLAGS } from '../scripts/node-flags.mjs'
import { countVitest } from '../scripts/steps.mjs'

const file = (status: string, ...tests: string[]) => ({ status, assertionResults: tests.map((each) => ({ status: each })) })

describe('the count of a test run', () => {
  it('counts tests', () => {
    const report = {
      numPassedTests: 3,
      numFailedTests: 1,
      testResults: [file('passed', 'passed', 'passed'), file('failed', 'passed', 'failed')],
    }
    expect(countVitest(report, false)).toEqual({ passed: 3, failed: 1 })
  })

  it('counts a file that could not be loaded as one failure', () => {
    expect(countVitest({ numPassedTests: 1, numFailedTests: 0, testResults: [file('passed', 'passed'), file('failed')] }, false)).toEqual({
      passed: 1,
      failed: 1,
    })
  })

  it('never calls a run clean that ended badly', () => {
    expect(countVitest({ numPassedTests: 1, numFailedTests: 0, testResults: [file('passed', 'passed')] }, false)).toEqual({
      passed: 1,
      failed: 1,
    })
    expect(countVitest(null, false)).toEqual({ passed: 0, failed: 1 })
    expect(countVitest(null, true)).toEqual({ passed: 0, failed: 1 })
  })

  it('never calls a run clean that ran nothing', () => {
    expect(countVitest({ numPassedTests: 0, numFailedTests: 0, testResults: [] }, true)).toEqual({ passed: 0, failed: 1 })
  })
})

describe('what Node is told', () => {
  it('is the same in every script that runs the program', () => {
    expect(NODE_FLAGS.length).toBeGreaterThan(0)
    expect(Object.keys(flagsOf).sort()).toEqual(['bench', 'coachwright', 'pictures', 'start', 'validation'])
    for (const [name, flags] of Object.entries(flagsOf)) expect(flags, name).toEqual(NODE_FLAGS)
  })
})
