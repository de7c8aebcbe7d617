/** The two faces of every sheet, read once per process from the bundled package; nothing is loaded from elsewhere. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

const require = createRequire(import.meta.url)
const folder = (name: string): string => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)

const FACES = { regular: 'DejaVuSansCondensed', bold: 'DejaVuSansCondensed-Bold' } as const
export type Face = keyof typeof FACES

const read: Partial<Record<Face, Buffer>> = {}

/** Bytes of a face. */
export function faceBytes(face: Face): Buffer {
  const known = read[face] ?? readFileSync(folder(FACES[face]))
  read[face] = known
  return known
}

/** Where the faces lie, for a renderer that wants files. */
export const faceFiles = (): readonly string[] => [folder(FACES.regular), folder(FACES.bold)]
