/** Runs the command in a fresh process, as a person would from a checkout, with the flags Node was given for the bench. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))

/** Throws with what the command said when it does not end well: a failed run must never count as a fast one. */
export function coachwright(args: readonly string[], preload: readonly string[] = [], env: Readonly<Record<string, string>> = {}): string {
  const imports = preload.flatMap((name) => ['--import', name])
  const done = spawnSync(process.execPath, [...process.execArgv, ...imports, 'scripts/run.mjs', 'src/cli/main.ts', ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    env: { ...process.env, ...env },
  })
  if (done.status !== 0) throw new Error(`coachwright ${args.join(' ')} ended with ${done.status ?? done.signal}:\n${done.stderr.trim()}`)
  return done.stdout
}

/** Does something with a folder of its own, gone afterwards. */
export function inFolder<T>(use: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'coachwright-bench-'))
  try {
    return use(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/** Peak memory of the command, MB. */
export const peakOf = (args: (folder: string) => readonly string[]): number =>
  inFolder((folder) => {
    const file = join(folder, 'rss.txt')
    coachwright(args(folder), ['./bench/rss.mjs'], { COACHWRIGHT_RSS: file })
    return Number(readFileSync(file, 'utf8'))
  })
