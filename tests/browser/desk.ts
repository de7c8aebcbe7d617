/** A desk of a test's own: built, served on a free port over a copy of the examples, and opened in the browser. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, BrowserContext, Page, Response } from 'playwright-core'
import { runStudy } from '../../src/cli/studies/run-study.js'
import { builtWeb } from '../../src/cli/web-build.js'
import { coachFiles } from '../../src/server/coach-files.js'
import { type ServedDesk, serveDesk } from '../../src/server/serve.js'
import { root } from '../tree.js'
import { openBrowser } from './browser.js'

export interface DeskInBrowser {
  readonly page: Page
  /** address of the desk, with the closing slash */
  readonly url: string
  /** the copy of the checkout's examples and packets it works in */
  readonly folder: string
  readonly context: BrowserContext
  readonly browser: Browser
  /** what the page complained of: errors on the console, exceptions, breaches of the content security policy */
  readonly complaints: readonly string[]
  /** every answer the page got */
  readonly answers: readonly Response[]
  /** takes the server away and leaves the page */
  readonly stopServer: () => Promise<void>
  readonly close: () => Promise<void>
}

export interface DeskOptions {
  /** path below the copy, such as examples/sedge-8.yaml */
  readonly coach?: string
  readonly width?: number
  readonly height?: number
}

/** Waits until main#desk shows something. Whoever opens it closes it. */
export async function openDesk({ coach = 'examples/sedge-6.yaml', width = 1440, height = 900 }: DeskOptions = {}): Promise<DeskInBrowser> {
  const folder = mkdtempSync(join(tmpdir(), 'coachwright-desk-'))
  const closing: (() => Promise<unknown> | unknown)[] = [() => rmSync(folder, { recursive: true, force: true })]
  const close = async (): Promise<void> => {
    while (closing.length > 0) await closing.pop()?.()
  }
  try {
    const served = await serve(folder, coach)
    closing.push(served.close)
    const browser = await openBrowser()
    closing.push(() => browser.close())
    // a context of its own locale: the bundled browser has none and then takes neither dates nor numbers
    const context = await browser.newContext({ locale: 'en-US', viewport: { width, height } })
    const page = await context.newPage()
    const complaints = listen(page)
    const answers: Response[] = []
    page.on('response', (answer) => answers.push(answer))
    await page.goto(served.url)
    await page.locator('main#desk > *').first().waitFor()
    return { page, url: served.url, folder, context, browser, complaints, answers, stopServer: served.close, close }
  } catch (reason) {
    await close()
    throw reason
  }
}

async function serve(folder: string, coach: string): Promise<ServedDesk> {
  cpSync(join(root, 'examples'), join(folder, 'examples'), { recursive: true })
  const files = coachFiles({ root: folder, examples: join(folder, 'examples'), also: join(folder, coach) })
  return serveDesk({
    web: await builtWeb(),
    files,
    packets: join(folder, 'packet'),
    // loaded only by the test that asks for a packet
    writePacket: async (ask) => (await import('../../src/cli/desk-packet.js')).deskPacket(ask),
    drawFirst: (opened) => runStudy('drawing', opened),
    port: 0,
  })
}

function listen(page: Page): readonly string[] {
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`${message.text()} (${message.location().url})`)
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return complaints
}
