/** Who may ask what: the desk has no login, so it answers only its own pages, opened on this machine. */
import type { MiddlewareHandler } from 'hono'
import { secureHeaders } from 'hono/secure-headers'
import { no } from './answers.js'

const NONE = "'none'"
const SELF = "'self'"

/** On every answer. Nothing is loaded from elsewhere, nothing inline runs, and no other page may frame the desk. */
export const safeHeaders: MiddlewareHandler = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: [SELF],
    scriptSrc: [SELF],
    styleSrc: [SELF],
    imgSrc: [SELF, 'data:', 'blob:'],
    fontSrc: [SELF],
    connectSrc: [SELF],
    workerSrc: [SELF],
    objectSrc: [NONE],
    baseUri: [NONE],
    frameAncestors: [NONE],
    formAction: [NONE],
  },
  xFrameOptions: 'DENY',
  referrerPolicy: 'no-referrer',
  // plain http on one machine: there is nothing to make strict
  strictTransportSecurity: false,
  // a document of the packet states its own policy
  overwrite: false,
  permissionsPolicy: { camera: [], geolocation: [], microphone: [], payment: [], usb: [] },
})

/** A printed document has styles of its own and may be shown in a frame of the desk, but runs nothing. */
export const DOCUMENT_POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; frame-ancestors 'self'"

const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])(:\d+)?$/i

/** A host as an address names it, with or without a port. */
export const isLoopback = (host: string): boolean => LOOPBACK.test(host) || host === '::1'

/** A foreign page can point its own name at this machine; the name it then asks by gives it away. */
export const onlyLoopback: MiddlewareHandler = async (c, next) => {
  const host = c.req.header('host') ?? new URL(c.req.url).host
  if (!isLoopback(host))
    return no(c, 403, `The desk answers to 127.0.0.1 and localhost only, not to ${host}. Start it with --host to let others in.`)
  return next()
}

/** Saving and making come from the desk's own page; a browser says where a request comes from, and what says nothing is refused. */
export const onlyOwnPage: MiddlewareHandler = async (c, next) => {
  if (c.req.method === 'GET' || c.req.method === 'HEAD') return next()
  const host = c.req.header('host') ?? new URL(c.req.url).host
  const site = c.req.header('sec-fetch-site')
  const origin = c.req.header('origin')
  const isOwn = site === undefined ? origin !== undefined && hostOf(origin) === host : site === 'same-origin'
  if (!isOwn) return no(c, 403, 'Only the desk itself may save or make anything. Open its address in the browser and do it there.')
  return next()
}

function hostOf(origin: string): string | null {
  try {
    return new URL(origin).host
  } catch {
    return null
  }
}
