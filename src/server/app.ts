/**
 * What the desk asks of its server.
 *
 *   GET  /, /assets/…, /service-worker.js   the built screens
 *   GET  /api/coaches                       [{path, name}] of the coaches it may open, the one it was started with first
 *   GET  /api/coach?path=                   {path, stamp, files: {path: text}}, with everything the coach extends, and its
 *                                           first drawing as `drawn` where one of these texts was made already
 *   PUT  /api/coach?path=   {text, stamp}   saves; 409 {says, text, stamp} when it was changed elsewhere since
 *   POST /api/coach?path=   {text}          a new file; 409 {says} when there is one of that name
 *   POST /api/packet?path=  {text}          events while the packet is written; closing the request stops it
 *   GET  /api/packet/NAME/…                 documents of a written packet; packet.json lists them
 *
 * A no is {says} with its status. What it does not cover: who is asking; it stands on loopback and has no login.
 */
import { Hono } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import type { ContentfulStatusCode } from 'hono/utils/http-status'
import { z } from 'zod'
import { no } from './answers.js'
import type { CoachFiles, Unavailable } from './coach-files.js'
import { type DrawsFirst, firstDrawings } from './first-drawings.js'
import { onlyLoopback, onlyOwnPage, safeHeaders } from './guards.js'
import { packetRoutes, type WritesPacket } from './packets.js'
import { type WebFile, webFiles } from './web-files.js'

export interface DeskOptions {
  /** folder of the built screens */
  readonly web: string
  readonly files: CoachFiles
  /** folder packets are written below */
  readonly packets: string
  readonly writePacket: WritesPacket
  /** draws a coach ahead of the page that opens it; without it a page waits for its own worker */
  readonly drawFirst?: DrawsFirst
  /** also answers to other names than loopback's: only where the person asked for it */
  readonly anyHost?: boolean
}

const LARGEST = 5 * 1024 * 1024
const YEAR = 365 * 24 * 3600

const saveForm = z.object({ text: z.string(), stamp: z.string() })
const newForm = z.object({ text: z.string() })
const packetForm = z.object({ text: z.string() })

const STATUS: Readonly<Record<Unavailable['no'], ContentfulStatusCode>> = {
  'not allowed': 403,
  'not there': 404,
  'not writable': 500,
}

/** Throws a sentence when no screens were built. */
export function deskApp({ web, files, packets, writePacket, drawFirst, anyHost }: DeskOptions): Hono {
  const screens = webFiles(web)
  const { make, document } = packetRoutes({ files, packets, write: writePacket })
  const drawings = drawFirst && firstDrawings(drawFirst)
  const [first] = files.list()
  const begun = drawings && first && files.open(first.path)
  if (begun && !('no' in begun)) drawings.ahead(begun)
  const app = new Hono()
  app.use(safeHeaders)
  if (!anyHost) app.use(onlyLoopback)
  app.use(onlyOwnPage)
  app.use('/api/*', async (c, next) => {
    c.header('cache-control', 'no-store')
    return next()
  })
  app.use(
    '/api/*',
    bodyLimit({ maxSize: LARGEST, onError: (c) => no(c, 413, 'That is more than 5 MB, which is no definition of a coach.') }),
  )

  app.get('/api/coaches', (c) => c.json(files.list()))

  app.get('/api/coach', (c) => {
    const opened = files.open(c.req.query('path') ?? '')
    if ('no' in opened) return no(c, STATUS[opened.no], opened.says)
    const drawn = drawings?.of(opened)
    return c.json(drawn ? { ...opened, drawn } : opened)
  })

  app.put('/api/coach', async (c) => {
    const asked = saveForm.safeParse(await c.req.json().catch(() => null))
    if (!asked.success) return no(c, 400, 'Saving takes {text, stamp}: the new text, and the stamp it was opened with.')
    const saved = files.save(c.req.query('path') ?? '', asked.data.text, asked.data.stamp)
    if (!('no' in saved)) return c.json(saved)
    return saved.no === 'overtaken' ? no(c, 409, saved.says, { text: saved.text, stamp: saved.stamp }) : no(c, STATUS[saved.no], saved.says)
  })

  app.post('/api/coach', async (c) => {
    const asked = newForm.safeParse(await c.req.json().catch(() => null))
    if (!asked.success) return no(c, 400, 'A new coach takes {text}: the text of its definition.')
    const made = files.create(c.req.query('path') ?? '', asked.data.text)
    if (!('no' in made)) return c.json(made, 201)
    return made.no === 'taken' ? no(c, 409, made.says) : no(c, STATUS[made.no], made.says)
  })

  app.post('/api/packet', async (c) => {
    const asked = packetForm.safeParse(await c.req.json().catch(() => null))
    if (!asked.success) return no(c, 400, 'Making a packet takes {text}: the text of the coach as it stands in the window.')
    return make(c, c.req.query('path') ?? '', asked.data.text)
  })

  app.get('/api/packet/:name/:path{.+}', (c) => document(c, c.req.param('name'), c.req.param('path')))

  app.get('*', (c) => {
    const file = screens.get(c.req.path)
    return file ? screen(file, c.req.header('accept-encoding') ?? '') : no(c, 404, `The desk has nothing at ${c.req.path}.`)
  })
  app.notFound((c) => no(c, 404, `The desk has nothing at ${c.req.path} for ${c.req.method}.`))
  app.onError((reason, c) => {
    console.error(reason)
    return no(
      c,
      500,
      'Coachwright met something it was not made for. This is a fault of the program; the terminal it was started in says more.',
    )
  })
  return app
}

function screen({ type, body, packed, isHashed }: WebFile, accepts: string): Response {
  const isPacked = packed !== null && /\bgzip\b/.test(accepts)
  const bytes = isPacked ? packed : body
  return new Response(bytes, {
    headers: {
      'content-type': type,
      'content-length': String(bytes.length),
      'cache-control': isHashed ? `public, max-age=${YEAR}, immutable` : 'no-cache',
      vary: 'accept-encoding',
      ...(isPacked ? { 'content-encoding': 'gzip' } : {}),
    },
  })
}
