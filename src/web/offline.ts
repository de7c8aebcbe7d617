/** Lets the desk open without its server once it has been open with it: see service-worker.ts. */

/** Where a browser has no service workers the desk works all the same, only not offline. */
export function workOffline(): void {
  if (!('serviceWorker' in navigator)) return
  navigator.serviceWorker
    .register('/service-worker.js', { updateViaCache: 'none' })
    .catch((reason) => console.warn(`The desk will not open offline: ${reason}`))
}
