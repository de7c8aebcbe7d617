/** The desk as it is served, in a real browser: it opens, keeps its policy, works offline, and loses nobody's text. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type DeskInBrowser, openDesk } from './desk.js'

const MOST = 350 * 1024

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
})
afterAll(() => desk?.close())

/** Whether the service worker holds every file and every coach. */
const isKept = () =>
  desk.page.waitForFunction(async () => {
    const ready = await navigator.serviceWorker.ready
    return ready.active?.state === 'activated' && navigator.serviceWorker.controller !== null
  })

describe('the desk in the browser', () => {
  it('opens with its page, without a word on the console', async () => {
    expect(await desk.page.locator('main#desk').count()).toBe(1)
    expect(await desk.page.title()).toBe('Coachwright')
    expect(desk.complaints).toEqual([])
  })

  it('sets its own faces and asks nobody else for anything', async () => {
    await desk.page.waitForLoadState('networkidle')
    const loaded = await desk.page.evaluate(async () => (await document.fonts.load('400 16px "DejaVu Sans Condensed"')).length)
    expect(loaded).toBe(1)
    expect(desk.answers.map((answer) => new URL(answer.url()).origin).filter((origin) => origin !== new URL(desk.url).origin)).toEqual([])
  })

  it('holds to a policy under which nothing inline and nothing foreign runs', async () => {
    const breaches = await desk.page.evaluate(async () => {
      const seen: string[] = []
      document.addEventListener('securitypolicyviolation', (breach) => seen.push(breach.effectiveDirective))
      const script = document.createElement('script')
      script.textContent = 'window.inlineRan = true'
      document.body.append(script)
      const styled = document.createElement('p')
      styled.setAttribute('style', 'color: red')
      const picture = new Image()
      picture.src = 'http://127.0.0.1:1/elsewhere.png'
      await new Promise((resolve) => setTimeout(resolve, 200))
      for (const one of [script, styled, picture]) one.remove()
      return { seen: seen.sort(), ran: 'inlineRan' in window }
    })
    expect(breaches).toEqual({ seen: ['img-src', 'script-src-elem', 'style-src-attr'], ran: false })
  })

  it('takes less than 350 KB for its first screen, packed, without fonts and workers', async () => {
    const counted = desk.answers.filter(
      (answer) => /\.(js|css|svg|html)$|\/$/.test(new URL(answer.url()).pathname) && !/worker/.test(answer.url()),
    )
    const sizes = await Promise.all(
      counted.map(async (answer) => {
        const headers = await answer.allHeaders()
        return { path: new URL(answer.url()).pathname, packed: headers['content-encoding'], bytes: Number(headers['content-length']) }
      }),
    )
    expect(sizes.map(({ path }) => path)).toContain('/')
    expect(sizes.filter(({ path }) => path.endsWith('.js')).length).toBeGreaterThan(0)
    expect(sizes.filter(({ packed }) => packed !== 'gzip')).toEqual([])
    const sum = sizes.reduce((all, { bytes }) => all + bytes, 0)
    expect(sum).toBeGreaterThan(0)
    expect(sum).toBeLessThan(MOST)
  })

  it('has no breach of the accessibility rules on its first screen', async () => {
    const { violations } = await new AxeBuilder({ page: desk.page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([])
  })
})

describe('two windows on one coach', () => {
  const save = (text: string, stamp: string) =>
    desk.page.evaluate(
      async ([body]) => {
        const answer = await fetch('/api/coach?path=examples/sedge-4.yaml', {
          method: 'PUT',
          headers: { 'content-type': 'application/json' },
          body,
        })
        return { status: answer.status, body: (await answer.json()) as { says?: string; text?: string; stamp: string } }
      },
      [JSON.stringify({ text, stamp })] as const,
    )
  const onDisk = () => readFileSync(join(desk.folder, 'examples/sedge-4.yaml'), 'utf8')

  it('save in turn, and the one that did not see the other is told so and keeps its text', async () => {
    const opened = await desk.page.evaluate(async () => {
      const answer = await fetch('/api/coach?path=examples/sedge-4.yaml')
      return (await answer.json()) as { stamp: string; files: Record<string, string> }
    })
    const before = opened.files['examples/sedge-4.yaml'] ?? ''
    expect(before).toBe(onDisk())
    const first = await save(`${before}# one window\n`, opened.stamp)
    expect(first.status).toBe(200)
    const second = await save(`${before}# the other window\n`, opened.stamp)
    expect(second.status).toBe(409)
    expect(second.body).toMatchObject({ text: `${before}# one window\n`, stamp: first.body.stamp })
    expect(second.body.says).toContain('was changed elsewhere since it was opened here')
    expect(onDisk()).toBe(`${before}# one window\n`)
    writeFileSync(join(desk.folder, 'examples/sedge-4.yaml'), before)
  })

  it('may not reach a file that is no coach of the desk', async () => {
    const refused = await desk.page.evaluate(async () => {
      const answer = await fetch('/api/coach?path=../../../../etc/passwd')
      return { status: answer.status, says: ((await answer.json()) as { says: string }).says }
    })
    expect(refused.status).toBe(403)
    expect(refused.says).toContain('The desk may not open ../../../../etc/passwd')
  })
})

// last, since it takes the server away
describe('the desk without its server', () => {
  it('opens again, with its coaches', async () => {
    await isKept()
    await desk.stopServer()
    await desk.page.reload()
    await desk.page.locator('main#desk > *').first().waitFor()
    const known = await desk.page.evaluate(async () => {
      const coaches = (await (await fetch('/api/coaches')).json()) as { path: string }[]
      const texts = await Promise.all(
        coaches.map(async ({ path }) => {
          const { files } = (await (await fetch(`/api/coach?path=${encodeURIComponent(path)}`)).json()) as { files: Record<string, string> }
          return files[path]?.includes('frames:') === true
        }),
      )
      return { paths: coaches.map(({ path }) => path).sort(), texts }
    })
    expect(known).toEqual({ paths: ['examples/sedge-4.yaml', 'examples/sedge-6.yaml', 'examples/sedge-8.yaml'], texts: [true, true, true] })
  })
})
