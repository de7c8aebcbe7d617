/**
 * Opens the desk when its server is away. Files with a hash in their name never change, so the kept one is taken first; the page
 * itself and the coaches are asked of the server first and taken from what was kept where it does not answer. Nothing is saved
 * offline: a draft stays in the window until the server is back.
 */

declare const self: ServiceWorkerGlobalScope
/** Written in by the build: the name of this build, and the paths of what it made. */
declare const BUILD: { readonly stamp: string; readonly files: readonly string[] }

const FILES = `desk-${BUILD.stamp}`
/** Outlives a build: a coach stays readable offline after the program was updated. */
const COACHES = 'coaches'
const LIST = '/api/coaches'

self.addEventListener('install', (event) => {
  event.waitUntil(keepAll().then(() => self.skipWaiting()))
})

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOldBuilds().then(() => self.clients.claim()))
})

self.addEventListener('fetch', (event) => {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin) return
  if (request.mode === 'navigate' && pathname === '/') event.respondWith(serverFirst(request, FILES, '/'))
  else if (pathname === LIST || pathname === '/api/coach') event.respondWith(serverFirst(request, COACHES, request.url))
  else if (BUILD.files.includes(pathname)) event.respondWith(keptFirst(request))
})

async function keepAll(): Promise<void> {
  const files = await caches.open(FILES)
  await files.addAll(['/', ...BUILD.files])
  // the page asked for its coach before this worker stood between them, so the coaches are asked for once more
  await keepCoaches().catch(() => undefined)
}

async function keepCoaches(): Promise<void> {
  const kept = await caches.open(COACHES)
  const answer = await fetch(LIST)
  if (!answer.ok) return
  await kept.put(LIST, answer.clone())
  const coaches = (await answer.json()) as readonly { readonly path: string }[]
  await Promise.all(coaches.map(({ path }) => kept.add(`/api/coach?path=${encodeURIComponent(path)}`)))
}

async function dropOldBuilds(): Promise<void> {
  const names = await caches.keys()
  await Promise.all(names.filter((name) => name.startsWith('desk-') && name !== FILES).map((name) => caches.delete(name)))
}

async function serverFirst(request: Request, cache: string, key: string): Promise<Response> {
  const kept = await caches.open(cache)
  try {
    const answer = await fetch(request)
    if (answer.ok) await kept.put(key, answer.clone())
    return answer
  } catch (reason) {
    const known = await kept.match(key)
    if (known) return known
    throw reason
  }
}

async function keptFirst(request: Request): Promise<Response> {
  const kept = await caches.open(FILES)
  return (await kept.match(request)) ?? fetch(request)
}
