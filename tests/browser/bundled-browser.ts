/**
 * The browser inside @sparticuz/chromium, unpacked once into the cache. The package itself unpacks to the system's folder for
 * temporary files and takes whatever stands there for whole: two test files that start at once would then run half a browser.
 */
import { execFile } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { root } from '../tree.js'

const cache = join(root, 'node_modules', '.cache', 'coachwright')
const UNPACK = "import('@sparticuz/chromium').then((it) => it.default.executablePath())"

/** Path of the executable; about five seconds the first time. Rejects with what the package says. */
export async function bundledBrowser(): Promise<string> {
  const { version } = JSON.parse(readFileSync(join(root, 'node_modules/@sparticuz/chromium/package.json'), 'utf8')) as { version: string }
  const home = join(cache, `browser-${version}`)
  const executable = join(home, 'chromium')
  if (existsSync(executable)) return executable
  const beside = `${home}.${process.pid}-${performance.now()}`
  mkdirSync(beside, { recursive: true })
  try {
    await promisify(execFile)(process.execPath, ['-e', UNPACK], { cwd: root, env: { ...process.env, TMPDIR: beside } })
    // whoever unpacks first wins; the other's is the same and is thrown away
    if (!existsSync(executable)) renameSync(beside, home)
  } catch (reason) {
    if (!existsSync(executable)) throw reason
  } finally {
    rmSync(beside, { recursive: true, force: true })
  }
  return executable
}
