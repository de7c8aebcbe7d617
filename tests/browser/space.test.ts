/** The coach in space, in a real browser: fetched when somebody looks, drawn, turned, drawn apart, cut, coloured, chosen from. */
import { AxeBuilder } from '@axe-core/playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type DeskInBrowser, openDesk } from './desk.js'

/** Three dimensions as they come over the wire, packed. */
const MOST = 160 * 1024

let desk: DeskInBrowser
let atFirst: readonly string[]
beforeAll(async () => {
  desk = await openDesk({ width: 1100, height: 720 })
  await desk.page.getByRole('button', { name: 'Understood' }).click()
  await desk.page.waitForLoadState('networkidle')
  atFirst = desk.answers.map((answer) => new URL(answer.url()).pathname)
  await desk.page.getByRole('button', { name: 'In space' }).click()
  await isShown()
}, 120_000)
afterAll(() => desk?.close())

const status = () => desk.page.locator('.space .part [role=status]')

/** Waits until the worker has sent the coach and it is on the page. */
async function isShown(): Promise<void> {
  await desk.page.locator('.space canvas').waitFor()
  await desk.page.waitForFunction(() => document.querySelector('.space .part [role=status]')?.textContent === '', null, { timeout: 60_000 })
  await isStill()
}

/** Waits until two pictures, a while apart, are the same, and gives it: the machine may be slow, and the last frame comes when a hand rests. */
async function isStill(): Promise<string> {
  let before = ''
  for (let i = 0; i < 60; i++) {
    const now = (await desk.page.locator('.space canvas').screenshot({ timeout: 60_000 })).toString('base64')
    if (now === before) return now
    before = now
    await desk.page.waitForTimeout(400)
  }
  throw new Error('the picture never comes to rest')
}

interface Seen {
  /** tones of the picture, each a few steps wide */
  readonly tones: number
  /** share of it that is not the paper of its corner */
  readonly drawn: number
  /** share that is plainly red: the accent of the light sheet */
  readonly red: number
}

/** The picture's own pixels. */
async function seen(still?: string): Promise<Seen> {
  const picture = still ?? (await isStill())
  return desk.page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0))
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height)
    const context = canvas.getContext('2d')
    if (!context) throw new Error('no canvas to read by')
    context.drawImage(bitmap, 0, 0)
    const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height)
    const tones = new Set<number>()
    let [drawn, red] = [0, 0]
    for (let i = 0; i < data.length; i += 4) {
      const [r, g, b] = [data[i], data[i + 1], data[i + 2]]
      tones.add(((r >> 3) << 10) | ((g >> 3) << 5) | (b >> 3))
      if (Math.abs(r - data[0]) + Math.abs(g - data[1]) + Math.abs(b - data[2]) > 12) drawn++
      if (r - g > 30) red++
    }
    return { tones: tones.size, drawn: (4 * drawn) / data.length, red: (4 * red) / data.length }
  }, picture)
}

describe('the coach in space', () => {
  it('is fetched when somebody looks, and no sooner', async () => {
    const isPicture = (path: string): boolean => /space-view.*\.js$/.test(path)
    expect(atFirst.filter(isPicture)).toEqual([])
    const answer = desk.answers.find((each) => isPicture(new URL(each.url()).pathname))
    const headers = await answer?.allHeaders()
    expect(headers?.['content-encoding']).toBe('gzip')
    expect(Number(headers?.['content-length'])).toBeGreaterThan(50 * 1024)
    expect(Number(headers?.['content-length'])).toBeLessThan(MOST)
  })

  it('is on the page in ink and tones, and told in words', async () => {
    const { tones, drawn, red } = await seen()
    expect(tones).toBeGreaterThan(20)
    expect(drawn).toBeGreaterThan(0.1)
    expect(red).toBe(0)
    const words = await desk.page.getByRole('application', { name: /The coach in space/ }).getAttribute('aria-label')
    expect(words).toMatch(/The coach in space: \d{3} parts and \d{4} rivets and bolts\./)
  })

  it('shows another picture when it is turned, drawn apart, cut or coloured, and the same when it is put back', async () => {
    const { page } = desk
    const first = await isStill()
    await page.locator('.space canvas').focus()
    await page.keyboard.press('ArrowLeft')
    const turned = await isStill()
    expect(turned).not.toBe(first)
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('0')
    await page.locator('#apart').fill('100')
    expect(await isStill()).not.toBe(first)
    await page.locator('#apart').fill('0')
    expect(await isStill()).toBe(first)
    const whole = await seen(first)
    await page.selectOption('#cut', 'across')
    expect((await seen()).drawn).toBeLessThan(0.8 * whole.drawn)
    await page.selectOption('#cut', '')
    for (const by of ['margin', 'distance']) {
      await page.selectOption('#colour', by)
      await page.locator('.legend .marks span').last().waitFor()
      expect((await seen()).red, by).toBeGreaterThan(0.01)
    }
    await page.selectOption('#colour', 'plain')
    expect(await isStill()).toBe(first)
  })

  it('chooses what is clicked, here and on the elevation, and lights up what is chosen elsewhere', async () => {
    const { page } = desk
    const box = await page.locator('.space canvas').boundingBox()
    if (!box) throw new Error('the picture is not on the screen')
    await page.mouse.click(box.x + box.width / 2, box.y + box.height * 0.45)
    await page.waitForFunction(() => document.querySelector('.space .part [role=status]')?.textContent !== '')
    expect(await status().textContent()).toMatch(/, \d+(\.\d+)? kg|RW|window/)
    expect((await seen()).red).toBeGreaterThan(0.001)
    await page.mouse.click(box.x + 4, box.y + 4)
    await page.waitForFunction(() => document.querySelector('.space .part [role=status]')?.textContent === '')
    await page.selectOption('#thing', 'RW3')
    await page.waitForFunction(() => /^RW3/.test(document.querySelector('.space .part [role=status]')?.textContent ?? ''))
    expect((await seen()).red).toBeGreaterThan(0.001)
  })

  it('shows an edit', async () => {
    const { page } = desk
    const before = await isStill()
    await page.locator('#station').fill('5825')
    await page.keyboard.press('Enter')
    await page.waitForFunction(
      () =>
        /RW3/.test(document.querySelector('#ripple')?.textContent ?? '') ||
        /holes? moved/.test(document.querySelector('#ripple')?.textContent ?? ''),
      null,
      { timeout: 60_000 },
    )
    expect(await isStill()).not.toBe(before)
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.waitForFunction(() => /nothing changed/.test(document.querySelector('#ripple')?.textContent ?? ''), null, {
      timeout: 60_000,
    })
    expect(await isStill()).toBe(before)
  })

  it('draws nothing while nothing changes', async () => {
    await isStill()
    const frames = await desk.page.evaluate(async () => {
      const asked = window.requestAnimationFrame
      let count = 0
      window.requestAnimationFrame = (then) => {
        count++
        return asked(then)
      }
      await new Promise((resolve) => setTimeout(resolve, 600))
      window.requestAnimationFrame = asked
      return count
    })
    expect(frames).toBe(0)
  })

  it('breaks no rule of accessibility, and complains of nothing', async () => {
    const { violations } = await new AxeBuilder({ page: desk.page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
      .analyze()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([])
    expect(desk.complaints).toEqual([])
  })
})
