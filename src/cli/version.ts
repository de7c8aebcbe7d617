/** The program's own name and version, as the package states them. */
import { readFileSync } from 'node:fs'

export function version(): string {
  const text = readFileSync(new URL('../../package.json', import.meta.url), 'utf8')
  return (JSON.parse(text) as { readonly version: string }).version
}
