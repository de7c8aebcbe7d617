/** Everything that must hold before a change goes in, ending with the line `N passed, N failed`. */
import { close, toolStep, vitestStep } from './steps.mjs'

const steps = [
  toolStep('types', 'tsc', ['-p', 'tsconfig.json', '--noEmit']),
  toolStep('core types, no DOM and no Node', 'tsc', ['-p', 'tsconfig.core.json', '--noEmit']),
  toolStep('types of the screens, no Node', 'tsc', ['-p', 'tsconfig.web.json', '--noEmit']),
  toolStep('types of the workers, no DOM', 'tsc', ['-p', 'tsconfig.worker.json', '--noEmit']),
  toolStep('types of the browser tests', 'tsc', ['-p', 'tests/browser/tsconfig.json', '--noEmit']),
  toolStep('style', 'biome', ['check', '--error-on-warnings', '--max-diagnostics=20', '.']),
  toolStep('unused code', 'knip', ['--no-progress']),
  vitestStep('tests', process.argv.slice(2)),
  toolStep('speed', 'node', ['scripts/run.mjs', 'bench/run.ts', '--ci'], { show: true }),
]

close(steps, 10)
