/**
 * Makes the checkout ready to run: installs what package-lock.json names when it is missing or out of date.
 * Needs nothing but Node, since it runs before anything is installed. Says nothing when all is ready, and never
 * writes to standard output: the command that follows may be printing JSON there.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const wanted = join(root, 'package-lock.json')
const installed = join(root, 'node_modules', '.package-lock.json')
const turn = join(root, '.cache', 'ready.lock')

const age = (path) => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? -1
const isReady = () => age(installed) >= 0 && age(installed) >= age(wanted)

function complain(sentence) {
  process.stderr.write(`${sentence}\n`)
  process.exit(1)
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
  // A lock written in the same instant, or by a clock that runs ahead, must not ask for the same installation for ever.
  const now = Math.max(Date.now(), age(wanted)) / 1000
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

/** An installation that was cut short leaves its turn behind; move it aside whole, so two that wait cannot both take it. */
function clearAbandoned(pid) {
  const aside = `${turn}.${process.pid}`
  try {
    renameSync(turn, aside)
  } catch {
    return
  }
  if (holder(aside) === pid) rmSync(aside, { recursive: true, force: true })
  else renameSync(aside, turn)
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
    else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 100)
  }
}

ready()
