/** `open [FILE]`: the desk in the browser, until Ctrl-C. `npm start` is this command on the demonstration coach. */
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { coachFiles } from '../../server/coach-files.js'
import { isLoopback } from '../../server/guards.js'
import { PortTaken, type ServedDesk, serveDesk } from '../../server/serve.js'
import { openBrowser } from '../open-browser.js'
import { openText } from '../open-text.js'
import { refuse } from '../refused.js'
import { runStudy } from '../studies/run-study.js'
import type { ExitCode, Terminal } from '../terminal.js'
import { builtWeb } from '../web-build.js'

export interface OpenOptions {
  readonly port?: number
  readonly host?: string
  /** false with --no-browser */
  readonly browser?: boolean
}

const top = fileURLToPath(new URL('../../..', import.meta.url))

export async function openCommand(file: string | undefined, options: OpenOptions, terminal: Terminal): Promise<ExitCode> {
  const closing = new AbortController()
  const { url, close } = await desk(file, options, closing.signal)
  const stopped = untilStopped()
  terminal.out(`The desk is open at ${url} (Ctrl-C closes it).`)
  if (options.browser !== false) openBrowser(url)
  await stopped
  closing.abort()
  await close()
  return 0
}

async function desk(file: string | undefined, { port, host }: OpenOptions, closing: AbortSignal): Promise<ServedDesk> {
  const also = file ?? join(top, 'examples', 'sedge-6.yaml')
  // said now, in the terminal, rather than later in a browser
  openText(also, 'a definition')
  const files = coachFiles({ root: top, examples: join(top, 'examples'), also: resolve(also) })
  const web = await builtWeb()
  try {
    return await serveDesk({
      web,
      files,
      packets: join(top, 'packet'),
      // what draws and checks a coach is large, and the desk is open long before a packet is asked for
      writePacket: async (ask) => (await import('../desk-packet.js')).deskPacket(ask),
      drawFirst: (coach) => runStudy('drawing', coach, { signal: closing }),
      ...(port === undefined ? {} : { port }),
      ...(host === undefined ? {} : { host, anyHost: !isLoopback(host) }),
    })
  } catch (reason) {
    if (!(reason instanceof PortTaken)) throw reason
    throw refuse(port === undefined ? '--host' : '--port', reason.message, { found: String(port ?? host) })
  }
}

function untilStopped(): Promise<void> {
  return new Promise((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve())
  })
}
