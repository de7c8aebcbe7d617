/** The long counts: every property test, and the packets held against the ripple, with ten times the cases `npm test` gives it (tests/counts.ts). */
import { close, vitestStep } from './steps.mjs'

close(
  [vitestStep('properties, ten times over', ['.property.test.ts', 'ripple/documents.test.ts'], { env: { COACHWRIGHT_PROOF: '1' } })],
  25,
)
