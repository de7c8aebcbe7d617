/**
 * Builds the screens of src/web/ into node_modules/.cache/coachwright/web/STAMP/ and prints that folder; does nothing more when
 * they are built already. The stamp is of every file a screen can reach, so a changed, added or removed one asks for a new build.
 */
import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { constants, gzipSync } from 'node:zlib'

const root = fileURLToPath(new URL('..', import.meta.url))
const home = join(root, 'node_modules', '.cache', 'coachwright', 'web')
/** Rooms no screen reaches. */
const ELSEWHERE = ['cli', 'paper', 'record', 'server']
/** Builds kept: a desk that is open and an older checkout of the same folder still find theirs. */
const KEPT = 3
const PACKED = ['.css', '.html', '.js', '.svg', '.ttf', '.wasm']

/** Every file below the folder that may end up in a screen, with its size and time, in one order. */
function sources(folder, top = false) {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((one) => {
      const path = join(folder, one.name)
      if (one.isDirectory()) return top && ELSEWHERE.includes(one.name) ? [] : sources(path)
      if (one.name.includes('.test.')) return []
      const { size, mtimeMs } = statSync(path)
      return [`${path} ${size} ${mtimeMs}`]
    })
}

function stampOf() {
  const beside = ['vite.config.ts', 'package-lock.json', 'scripts/build-web.mjs'].map((name) => {
    const { size, mtimeMs } = statSync(join(root, name))
    return `${name} ${size} ${mtimeMs}`
  })
  const all = [...sources(join(root, 'src'), true), ...beside].join('\n')
  return createHash('sha256').update(all).digest('hex').slice(0, 16)
}

const stamp = stampOf()
const built = join(home, stamp)
const isBuilt = () => statSync(join(built, 'index.html'), { throwIfNoEntry: false }) !== undefined

function filesBelow(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name).slice(folder.length).replaceAll('\\', '/'))
    .sort()
}

async function buildInto(folder) {
  // what the libraries bring for a developer at work is no part of what is served
  process.env.NODE_ENV = 'production'
  const { build } = await import('vite')
  await build({ configFile: join(root, 'vite.config.ts'), build: { outDir: folder, emptyOutDir: true } })
  await addServiceWorker(folder)
  for (const path of filesBelow(folder)) {
    if (!PACKED.includes(extname(path))) continue
    writeFileSync(join(folder, `${path}.gz`), gzipSync(readFileSync(join(folder, path)), { level: constants.Z_BEST_COMPRESSION }))
  }
}

/** It stands at the top under a name that never changes, since a browser looks for a newer one at the same place. */
async function addServiceWorker(folder) {
  const files = filesBelow(folder).filter((path) => path !== '/index.html')
  const { build } = await import('esbuild')
  await build({
    entryPoints: [join(root, 'src/web/service-worker.ts')],
    outfile: join(folder, 'service-worker.js'),
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    logLevel: 'error',
    define: { BUILD: JSON.stringify({ stamp, files }) },
  })
}

function dropOld() {
  const age = (name) => statSync(join(home, name)).mtimeMs
  const builds = readdirSync(home).filter((name) => /^[0-9a-f]{16}$/.test(name) && name !== stamp)
  const abandoned = readdirSync(home).filter((name) => name.includes('.') && Date.now() - age(name) > 3_600_000)
  for (const name of [...builds.sort((a, b) => age(b) - age(a)).slice(KEPT - 1), ...abandoned])
    rmSync(join(home, name), { recursive: true, force: true })
}

async function build() {
  mkdirSync(home, { recursive: true })
  const beside = join(home, `${stamp}.${process.pid}`)
  try {
    await buildInto(beside)
    // two processes may build at once: the first to finish wins, the other's work is the same and is thrown away
    try {
      if (!isBuilt()) renameSync(beside, built)
    } catch (reason) {
      if (!isBuilt()) throw reason
    }
    dropOld()
  } finally {
    rmSync(beside, { recursive: true, force: true })
  }
}

if (!isBuilt()) await build()
process.stdout.write(`${built}\n`)
