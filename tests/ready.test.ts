/** scripts/ready.mjs in a folder of its own, with an npm that only notes that it was called. */
import { spawn } from 'node:child_process'
import { chmodSync, copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { root } from './tree.js'

/** Refuses to run beside another of itself: two installations at once is what ready.mjs must prevent. */
const FAKE_NPM = `#!/usr/bin/env node
const fs = require('node:fs')
console.log('noise on standard output')
fs.appendFileSync('calls.txt', process.argv.slice(2).join(' ') + '\\n')
fs.mkdirSync('busy')
setTimeout(() => {
  fs.rmdirSync('busy')
  if (fs.existsSync('broken')) process.exit(3)
  fs.mkdirSync('node_modules', { recursive: true })
  fs.writeFileSync('node_modules/.package-lock.json', '{}')
  fs.utimesSync('node_modules/.package-lock.json', 1, 1)
}, 300)
`

let folder = ''
const path = (...names: string[]): string => join(folder, ...names)

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'coachwright-ready-'))
  for (const name of ['scripts', 'bin']) mkdirSync(path(name))
  copyFileSync(join(root, 'scripts', 'ready.mjs'), path('scripts', 'ready.mjs'))
  writeFileSync(path('package-lock.json'), '{}')
  writeFileSync(path('bin', 'npm'), FAKE_NPM)
  chmodSync(path('bin', 'npm'), 0o755)
})

afterEach(() => rmSync(folder, { recursive: true, force: true }))

interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

function ready(): Promise<Ended> {
  const env = { ...process.env, PATH: `${path('bin')}${delimiter}${process.env.PATH}` }
  const child = spawn(process.execPath, [path('scripts', 'ready.mjs')], { env })
  const said = { out: '', err: '' }
  child.stdout.on('data', (text) => {
    said.out += text
  })
  child.stderr.on('data', (text) => {
    said.err += text
  })
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, ...said })))
}

const calls = (): number => (existsSync(path('calls.txt')) ? readFileSync(path('calls.txt'), 'utf8').trim().split('\n').length : 0)

it('installs once when nothing is installed, and leaves standard output clean', async () => {
  expect(await ready()).toMatchObject({ code: 0, out: '' })
  expect(readFileSync(path('calls.txt'), 'utf8')).toBe('ci --no-audit --no-fund --loglevel=error\n')
  expect(await ready()).toEqual({ code: 0, out: '', err: '' })
  expect(calls()).toBe(1)
})

it('installs again when the lock is newer than what is installed', async () => {
  await ready()
  // A fraction that seconds in a double cannot hold, as a real file has.
  const later = Math.floor(Date.now() / 1000) + 3600.123456789
  utimesSync(path('package-lock.json'), later, later)
  expect((await ready()).code).toBe(0)
  expect((await ready()).code).toBe(0)
  expect(calls()).toBe(2)
})

it('lets one of many install while the others wait', async () => {
  const ended = await Promise.all(Array.from({ length: 4 }, ready))
  expect(ended.map((end) => end.code)).toEqual([0, 0, 0, 0])
  expect(calls()).toBe(1)
  expect(existsSync(path('.cache', 'ready.lock'))).toBe(false)
})

it('takes over from an installation that was cut short', async () => {
  mkdirSync(path('.cache', 'ready.lock'), { recursive: true })
  const gone = spawn(process.execPath, ['-e', ''])
  await new Promise((resolve) => gone.on('close', resolve))
  writeFileSync(path('.cache', 'ready.lock', 'pid'), String(gone.pid))
  const ended = await Promise.all(Array.from({ length: 3 }, ready))
  expect(ended.map((end) => end.code)).toEqual([0, 0, 0])
  expect(calls()).toBe(1)
})

it('says what to do when npm fails, and gives its turn back', async () => {
  writeFileSync(path('broken'), '')
  const first = await ready()
  expect(first.code).toBe(1)
  expect(first.err).toContain('npm ci failed, see the lines above. Check the network connection, then run the same command again.')
  expect(existsSync(path('.cache', 'ready.lock'))).toBe(false)
  rmSync(path('broken'))
  expect((await ready()).code).toBe(0)
})
