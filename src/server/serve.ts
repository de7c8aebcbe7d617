/** Puts the desk on a port of this machine, and takes it off again. */
import type { Server } from 'node:http'
import { createAdaptorServer } from '@hono/node-server'
import { type DeskOptions, deskApp } from './app.js'

export interface ServeOptions extends DeskOptions {
  /** the very port to stand on, 0 for any free one; without it the first free one of the desk's own */
  readonly port?: number
  /** 127.0.0.1 unless the person let others in */
  readonly host?: string
}

export interface ServedDesk {
  readonly url: string
  readonly port: number
  /** ends what is under way and gives the port back */
  readonly close: () => Promise<void>
}

/** No port to be had; the message is a sentence. */
export class PortTaken extends Error {}

/** A browser keeps drafts by address, so the desk comes back to the same one while it is free. */
const FIRST = 8460
const TRIED = 20

/** Throws PortTaken with a sentence. */
export async function serveDesk({ port, host = '127.0.0.1', ...options }: ServeOptions): Promise<ServedDesk> {
  const app = deskApp(options)
  const wanted = port === undefined ? [...Array.from({ length: TRIED }, (_, i) => FIRST + i), 0] : [port]
  for (const one of wanted) {
    const server = createAdaptorServer({ fetch: app.fetch }) as Server
    const got = await listen(server, one, host)
    if (got !== null) return { url: `http://${shown(host)}:${got}/`, port: got, close: () => close(server) }
  }
  throw new PortTaken(`Port ${port} of ${host} is taken. Name another with --port, or leave it out and a free one is found.`)
}

/** The port it stands on; null when that one is taken. */
function listen(server: Server, port: number, host: string): Promise<number | null> {
  return new Promise((resolve, reject) => {
    server.once('error', (reason: NodeJS.ErrnoException) => {
      if (reason.code === 'EADDRINUSE') resolve(null)
      else if (reason.code === 'EACCES') reject(new PortTaken(`This account may not stand on port ${port}. Name one above 1023.`))
      else if (reason.code === 'EADDRNOTAVAIL' || reason.code === 'ENOTFOUND')
        reject(new PortTaken(`${host} is no address of this machine. Leave --host out, or name one that is.`))
      else reject(reason)
    })
    server.listen(port, host, () => {
      const address = server.address()
      resolve(typeof address === 'object' && address ? address.port : port)
    })
  })
}

/** Open connections, a packet under way among them, are cut: who closes the desk does not wait for a browser to let go. */
function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })
}

const shown = (host: string): string => (host.includes(':') ? `[${host}]` : host)
