/** What `npm test` and `npm run proof` share: run a step, time it, and count what passed and failed. */
import { spawn, spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('..', import.meta.url))
const bin = (name) => join(root, 'node_modules', '.bin', process.platform === 'win32' ? `${name}.cmd` : name)
/** Two packages bring a `tsc`, the compiler and the one whose syntax trees the rules are read from: the compiler is called by its path. */
const tool = (name) => (name === 'tsc' ? [process.execPath, join(root, 'node_modules', 'typescript', 'lib', 'tsc.js')] : [bin(name)])
const seconds = (ms) => `${(ms / 1000).toFixed(1)} s`

/** Runs a command; keeps its output back when it passes, since a green tool has nothing to say. */
function run(command, args, { env = {}, show = false } = {}) {
  const began = performance.now()
  const done = spawnSync(command, args, {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: show ? 'inherit' : 'pipe',
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    shell: process.platform === 'win32',
  })
  const ok = done.status === 0
  if (!ok && !show) process.stdout.write(`${done.stdout ?? ''}${done.stderr ?? ''}`)
  if (done.error) process.stdout.write(`${command} could not be started: ${done.error.message}\n`)
  return { ok, ms: performance.now() - began }
}

function report(says, ok, ms, counted = '') {
  process.stdout.write(`${ok ? 'ok  ' : 'FAIL'} ${says}${counted} (${seconds(ms)})\n`)
}

/** One tool counts as one: it passes or it fails. */
export function toolStep(says, name, args, options) {
  const { ok, ms } = run(name === 'node' ? process.execPath : bin(name), args, options)
  report(says, ok, ms)
  return { says, passed: ok ? 1 : 0, failed: ok ? 0 : 1, ms }
}

/** Tools that ask nothing of each other, two at a time: `[says, tool, ...arguments]` each; a tool counts as one. */
export async function toolSteps(says, tools) {
  const began = performance.now()
  const waiting = [...tools]
  let failed = 0
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [what, name, ...args] = next
      const [command, ...before] = tool(name)
      const { ok, ms, output } = await runBeside(command, [...before, ...args])
      if (!ok) process.stdout.write(output)
      if (!ok) failed++
      report(what, ok, ms)
    }
  }
  await Promise.all([worker(), worker()])
  return { says, passed: tools.length - failed, failed, ms: performance.now() - began }
}

function runBeside(command, args) {
  const began = performance.now()
  return new Promise((resolve) => {
    const done = spawn(command, args, { cwd: root, shell: process.platform === 'win32' && command !== process.execPath })
    let output = ''
    for (const stream of [done.stdout, done.stderr]) stream.on('data', (text) => (output += text))
    const end = (ok) => resolve({ ok, ms: performance.now() - began, output })
    done.on('error', (reason) => {
      output += `${command} could not be started: ${reason.message}\n`
      end(false)
    })
    done.on('close', (code) => end(code === 0))
  })
}

/**
 * Counts a vitest JSON report: every test, and every file that could not be loaded, as one. A run that ended badly
 * with nothing failed in its report (an unhandled error, a crash, no report at all) or ran nothing counts as one failure.
 */
export function countVitest(json, ok) {
  if (json === null) return { passed: 0, failed: 1 }
  const broken = json.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.every((test) => test.status !== 'failed'),
  )
  const failed = json.numFailedTests + broken.length
  const isEmpty = json.numPassedTests === 0
  return { passed: json.numPassedTests, failed: failed === 0 && (!ok || isEmpty) ? 1 : failed }
}

export function vitestStep(says, args, options = {}) {
  const file = join(root, '.cache', `vitest-${process.pid}.json`)
  mkdirSync(join(root, '.cache'), { recursive: true })
  const reporters = ['--reporter=dot', '--reporter=json', `--outputFile.json=${file}`]
  const { ok, ms } = run(bin('vitest'), ['run', ...reporters, ...args], { ...options, show: true })
  const { passed, failed } = countVitest(readReport(file), ok)
  rmSync(file, { force: true })
  report(says, failed === 0, ms, `: ${passed} passed, ${failed} failed`)
  return { says, passed, failed, ms }
}

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return null
  }
}

/** Prints what each step took, then the closing line, and nothing after it. */
export function close(steps, limitMinutes) {
  const passed = steps.reduce((sum, step) => sum + step.passed, 0)
  const failed = steps.reduce((sum, step) => sum + step.failed, 0)
  const ms = steps.reduce((sum, step) => sum + step.ms, 0)
  const broken = steps.filter((step) => step.failed > 0).map((step) => step.says)
  process.stdout.write(`\nTook ${seconds(ms)}: ${steps.map((step) => `${step.says} ${seconds(step.ms)}`).join(', ')}\n`)
  if (ms > limitMinutes * 60_000) process.stdout.write(`Slower than the ${limitMinutes} minutes this run is meant to keep under.\n`)
  if (broken.length > 0) process.stdout.write(`Look at: ${broken.join(', ')}\n`)
  process.stdout.write(`${passed} passed, ${failed} failed\n`)
  process.exitCode = failed === 0 ? 0 : 1
}
