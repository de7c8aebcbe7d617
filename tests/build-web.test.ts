/** scripts/build-web.mjs: what it makes may be served under a strict policy, and nothing is made twice. */
import { existsSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { builtWeb } from '../src/cli/web-build.js'
import { root } from './tree.js'

it('builds once, and says the same folder while nothing changed', async () => {
  const folder = await builtWeb()
  expect(folder.startsWith(join(root, 'node_modules', '.cache', 'coachwright', 'web'))).toBe(true)
  const before = statSync(join(folder, 'index.html'))
  expect(await builtWeb()).toBe(folder)
  const after = statSync(join(folder, 'index.html'))
  expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs])
})

it('puts nothing inline into the page and names nothing of elsewhere', async () => {
  const page = readFileSync(join(await builtWeb(), 'index.html'), 'utf8')
  expect(page).toContain('<main id="desk">')
  expect(page).not.toMatch(/<style|\sstyle=|\son\w+=|<script(?![^>]*\ssrc=)|https?:\/\//)
})

it('packs what is text, and tells the service worker every file with its hash', async () => {
  const folder = await builtWeb()
  const page = readFileSync(join(folder, 'index.html'), 'utf8')
  const worker = readFileSync(join(folder, 'service-worker.js'), 'utf8')
  const named = [...page.matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].map((match) => match[1] ?? '')
  expect(named.length).toBeGreaterThan(1)
  for (const path of named) {
    expect(path).toMatch(/-[\w-]{8}\.\w+$/)
    expect(worker).toContain(path)
    expect(gunzipSync(readFileSync(join(folder, `${path}.gz`)))).toEqual(readFileSync(join(folder, path)))
  }
  for (const face of ['DejaVuSansCondensed-', 'DejaVuSansCondensed-Bold-', 'DejaVuSansMono-']) expect(worker).toContain(`/assets/${face}`)
  expect(existsSync(join(folder, 'service-worker.js.gz'))).toBe(true)
})
