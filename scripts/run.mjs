/**
 * Runs a TypeScript entry of this checkout: `node scripts/run.mjs src/cli/main.ts ARGS`. The entry is bundled once into
 * node_modules/.cache and again whenever a source file is newer, because one plain file starts in a fraction of the time
 * that many translated ones take, and runs faster. What is bundled is exactly what is in src/, but for shared-shapes.mjs.
 */
import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { withSharedShapes } from './shared-shapes.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const [, , entry, ...args] = process.argv
const name = entry.replace(/\.ts$/, '').replaceAll('/', '-')
const cache = join(root, 'node_modules', '.cache', 'coachwright')
const home = join(cache, name)

/** Newest change of anything an entry can reach. */
function newest(folder) {
  let latest = 0
  for (const one of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, one.name)
    if (one.isDirectory()) latest = Math.max(latest, newest(path))
    else if (one.name.endsWith('.ts')) latest = Math.max(latest, statSync(path).mtimeMs)
  }
  return latest
}

const sources = ['src', 'scripts', 'bench'].map((folder) => newest(join(root, folder)))
const besides = ['package-lock.json', 'scripts/run.mjs', 'scripts/shared-shapes.mjs'].map((path) => statSync(join(root, path)).mtimeMs)
const latest = Math.max(...sources, ...besides)
const stamp = createHash('sha256').update(`${root} ${latest}`).digest('hex').slice(0, 16)
const ready = () => statSync(join(home, stamp, 'main.mjs'), { throwIfNoEntry: false }) !== undefined

/** A bundled file still finds what stands beside its source: package.json, fonts, folders to write to. */
const keepsItsPlace = {
  name: 'keeps its place',
  setup(build) {
    build.onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const text = withSharedShapes(readFileSync(path, 'utf8'))
      return { loader: 'ts', contents: text.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href)) }
    })
  },
}

async function bundle() {
  const { build } = await import('esbuild')
  mkdirSync(cache, { recursive: true })
  const beside = join(cache, `${name}.${process.pid}`)
  await build({
    entryPoints: { main: join(root, entry) },
    outdir: join(beside, stamp),
    outExtension: { '.js': '.mjs' },
    absWorkingDir: root,
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    logLevel: 'error',
    plugins: [keepsItsPlace],
    // these read files of their own beside them, or are reached only by name
    external: ['pdfkit', 'dejavu-fonts-ttf', '@resvg/resvg-js', 'pdfjs-dist', 'esbuild'],
    banner: { js: "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);" },
  })
  // two processes may build at once: the first to finish wins, the other's work is the same and is thrown away
  try {
    if (!ready()) {
      rmSync(home, { recursive: true, force: true })
      renameSync(beside, home)
    }
  } catch (reason) {
    if (!ready()) throw reason
  } finally {
    rmSync(beside, { recursive: true, force: true })
  }
}

if (!ready()) await bundle()
process.argv = [process.argv[0], join(root, entry), ...args]
await import(pathToFileURL(join(home, stamp, 'main.mjs')).href)
