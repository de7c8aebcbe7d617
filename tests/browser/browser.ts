/** The browser the desk is tested in: the one $CHROME_PATH names, the one that came with the packages, or the system's. */
import { existsSync } from 'node:fs'
import bundled from '@sparticuz/chromium'
import { type Browser, chromium } from 'playwright-core'
import { bundledBrowser } from './bundled-browser.js'

interface Candidate {
  readonly name: string
  readonly path: () => string | Promise<string>
}

const SYSTEM = '/usr/bin/chromium'
/** Made for another place: with them one page that fails takes the browser with it. */
const LEFT_OUT = new Set(['--single-process', '--no-zygote'])

/** Throws a sentence naming what was tried: a test without its browser has failed, not passed. */
export async function openBrowser(from: readonly Candidate[] = candidates()): Promise<Browser> {
  const args = bundled.args.filter((arg) => !LEFT_OUT.has(arg))
  const tried: string[] = []
  for (const { name, path } of from) {
    try {
      return await chromium.launch({ executablePath: await path(), args, headless: true })
    } catch (reason) {
      tried.push(`${name}: ${(reason instanceof Error ? reason.message : String(reason)).split('\n')[0]}`)
    }
  }
  throw new Error(`No browser could be started, so the desk was not tested. Name one with CHROME_PATH. Tried ${tried.join('; ')}.`)
}

function candidates(): readonly Candidate[] {
  const named = process.env.CHROME_PATH
  return [
    ...(named ? [{ name: `CHROME_PATH ${named}`, path: () => named }] : []),
    { name: 'the package @sparticuz/chromium', path: bundledBrowser },
    ...(existsSync(SYSTEM) ? [{ name: SYSTEM, path: () => SYSTEM }] : []),
  ]
}
