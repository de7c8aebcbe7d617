/** The long counts: every property test with ten times the cases `npm test` gives it (tests/counts.ts). */
import { close, vitestStep } from './steps.mjs'

close([vitestStep('properties, ten times over', ['.property.test.ts'], { env: { COACHWRIGHT_PROOF: '1' } })], 25)
