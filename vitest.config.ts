import { defineConfig } from 'vitest/config'
import { sharedShapes } from './scripts/shared-shapes.mjs'

const isProof = process.env.COACHWRIGHT_PROOF === '1'
const seconds = 1000

export default defineConfig({
  plugins: [sharedShapes],
  test: {
    include: ['src/**/*.test.ts', 'tests/**/*.test.ts', 'validation/**/*.test.ts', 'bench/**/*.test.ts'],
    pool: 'threads',
    maxWorkers: 2,
    // Files share what is loaded: no test changes a module, and loading the program anew for each took a third of the run.
    isolate: false,
    // Property tests are allowed minutes; one that hangs still ends the run and names itself.
    testTimeout: (isProof ? 1200 : 480) * seconds,
    hookTimeout: 60 * seconds,
    slowTestThreshold: 5 * seconds,
  },
})
