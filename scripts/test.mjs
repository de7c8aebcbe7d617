/** Everything that must hold before a change goes in, ending with the line `N passed, N failed`. */
import { NODE_FLAGS } from './node-flags.mjs'
import { close, toolStep, toolSteps, vitestStep } from './steps.mjs'

const steps = [
  await toolSteps('types, style and unused code', [
    ['types', 'tsc', '-p', 'tsconfig.json', '--noEmit'],
    ['core types, no DOM and no Node', 'tsc', '-p', 'tsconfig.core.json', '--noEmit'],
    ['types of the screens, no Node', 'tsc', '-p', 'tsconfig.web.json', '--noEmit'],
    ['types of the workers, no DOM', 'tsc', '-p', 'tsconfig.worker.json', '--noEmit'],
    ['types of the browser tests', 'tsc', '-p', 'tests/browser/tsconfig.json', '--noEmit'],
    ['style', 'biome', 'check', '--error-on-warnings', '--max-diagnostics=20', '.'],
    ['unused code', 'knip', '--no-progress'],
  ]),
  vitestStep('tests', process.argv.slice(2)),
  toolStep('speed', 'node', [...NODE_FLAGS, 'scripts/run.mjs', 'bench/run.ts', '--ci'], { show: true }),
]

close(steps, 10)
