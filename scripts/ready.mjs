/**
 * Makes the checkout ready to run: installs what package-lock.json names when it is missing or out of date.
 * Needs nothing but Node, since it runs before anything is installed. Says nothing when all is ready, and never
 * writes to standard output: the command that follows may be printing JSON there.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const wanted = join(root, 'package-lock.json')
const installed = join(root, 'node_modules', '.package-lock.json')
const turn = join(root, '.cache', 'ready.lock')

const age = (path) => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? -1
const isReady = () => age(installed) >= 0 && age(installed) >= age(wanted)

/** Thrown rather than exited with, so that the turn is given back on the way out. */
function complain(sentence) {
  throw Object.assign(new Error(sentence), { isSaid: true })
}

/** npm writes the marker last, so a marker newer than the lock means a whole installation. */
function install() {
  process.stderr.write('Installing what Coachwright needs (once, about a minute) …\n')
  const done = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  })
  if (done.error) complain(`npm could not be started (${done.error.message}). Install Node with npm, then run the same command again.`)
  if (done.status !== 0) complain('npm ci failed, see the lines above. Check the network connection, then run the same command again.')
  if (age(installed) < 0) complain('npm ci ended well but left node_modules empty. Delete node_modules and run the same command again.')
  // A lock written by a clock that runs ahead must not ask for the same installation for ever. A whole millisecond
  // more, because seconds with a fraction are rounded on their way to the disk and could land just before the lock.
  const now = (Math.ceil(Math.max(Date.now(), age(wanted))) + 1) / 1000
  utimesSync(installed, now, now)
}

/** Takes the turn to install; a folder, because making one either succeeds or fails in a single step. */
function takeTurn() {
  mkdirSync(join(root, '.cache'), { recursive: true })
  try {
    mkdirSync(turn)
  } catch (error) {
    if (error.code === 'EEXIST') return false
    return complain(`The folder .cache cannot be written (${error.message}). Give this account the right to write here.`)
  }
  writeFileSync(join(turn, 'pid'), String(process.pid))
  return true
}

/** Process id written in a turn, or null while nobody has signed it yet. */
function holder(folder) {
  try {
    return Number(readFileSync(join(folder, 'pid'), 'utf8')) || null
  } catch {
    return null
  }
}

function isRunning(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}

/**
 * An installation that was cut short leaves its turn behind. Whoever clears it holds a second folder meanwhile and looks
 * again first: the turn may have been cleared, and taken by somebody alive, since it was found abandoned.
 */
function clearAbandoned(pid) {
  const clearing = `${turn}.clearing`
  try {
    mkdirSync(clearing)
  } catch {
    const since = age(clearing)
    if (since >= 0 && Date.now() - since > 10_000) rmSync(clearing, { recursive: true, force: true })
    return
  }
  try {
    if (holder(turn) === pid) rmSync(turn, { recursive: true, force: true })
  } finally {
    rmSync(clearing, { recursive: true, force: true })
  }
}

function ready() {
  let unnamedSince = null
  while (!isReady()) {
    if (takeTurn()) {
      try {
        if (!isReady()) install()
      } finally {
        rmSync(turn, { recursive: true, force: true })
      }
      return
    }
    const pid = holder(turn)
    if (pid !== null) unnamedSince = null
    else unnamedSince ??= Date.now()
    const abandoned = pid === null ? Date.now() - unnamedSince > 5000 : !isRunning(pid)
    if (abandoned) clearAbandoned(pid)
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100)
  }
}

try {
  ready()
} catch (error) {
  if (!error.isSaid) throw error
  process.stderr.write(`${error.message}\n`)
  process.exitCode = 1
}
