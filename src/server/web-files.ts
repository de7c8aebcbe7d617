/** The built screens, read once into memory: a few files, and none can be asked for that was not there at the start. */
import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'

export interface WebFile {
  readonly type: string
  readonly body: Uint8Array<ArrayBuffer>
  /** the same packed with gzip, where the build packed it */
  readonly packed: Uint8Array<ArrayBuffer> | null
  /** its name holds a hash of what it is, so that it may be kept for ever */
  readonly isHashed: boolean
}

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.dxf': 'application/dxf',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
}

/** Anything else, a coordinate program for one, is text to look at. */
export const typeOf = (path: string): string => TYPES[extname(path)] ?? 'text/plain; charset=utf-8'

/** Keyed by the path a browser asks for; `/` is the page. Throws a sentence when nothing was built there. */
export function webFiles(folder: string): ReadonlyMap<string, WebFile> {
  const files = new Map<string, WebFile>()
  const bytes = (path: string) => new Uint8Array(readFileSync(join(folder, path)))
  const paths = new Set(below(folder))
  for (const path of paths) {
    if (path.endsWith('.gz')) continue
    const file: WebFile = {
      type: typeOf(path),
      body: bytes(path),
      packed: paths.has(`${path}.gz`) ? bytes(`${path}.gz`) : null,
      isHashed: path.startsWith('/assets/'),
    }
    files.set(path === '/index.html' ? '/' : path, file)
  }
  if (!files.has('/')) throw new Error(`There are no built screens in ${folder}: run node scripts/build-web.mjs.`)
  return files
}

function below(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => join(one.parentPath, one.name).slice(folder.length).replaceAll('\\', '/'))
}
