/** The desk as its users use it, in a real browser: drag, type, undo, print, ask, by mouse and by keyboard alone. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SHEETS } from '../../src/desk/sheets.js'
import { type DeskInBrowser, openDesk } from './desk.js'

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
  await desk.page.getByRole('button', { name: 'Understood' }).click()
  await ripples(/nothing changed/)
})
afterAll(() => desk?.close())

const line = () => desk.page.locator('#ripple')

/** Waits until the line at the foot says so. */
async function ripples(what: RegExp): Promise<void> {
  await desk.page.waitForFunction((words) => new RegExp(words).test(document.querySelector('#ripple')?.textContent ?? ''), what.source, {
    timeout: 30_000,
  })
}

/** Everything at the foot, opened and closed again. */
async function rippleLines(): Promise<string> {
  await line().click()
  const text = (await desk.page.locator('.ripple-lines > *').allTextContents()).join('\n')
  await line().click()
  return text
}

async function undoAll(): Promise<void> {
  const button = desk.page.getByRole('button', { name: 'Undo' })
  while (await button.isEnabled()) {
    // the last undo may have been done between the look and the click
    await button.click({ timeout: 2000 }).catch(() => undefined)
    await desk.page.waitForTimeout(100)
  }
  await ripples(/nothing changed/)
}

/** Pixels of a millimetre on the elevation: two things, whose stations are known, found by what is said when they are pointed at. */
async function middleOf(says: string): Promise<readonly [number, number]> {
  const box = await desk.page.locator('canvas').boundingBox()
  if (!box) throw new Error('the elevation is not on the screen')
  for (const level of [0.35, 0.45, 0.8, 0.85]) {
    let [first, last] = [Number.NaN, Number.NaN]
    const y = box.y + box.height * level
    for (let x = box.x + 4; x < box.x + box.width; x += 8) {
      await desk.page.mouse.move(x, y)
      const told = await desk.page.locator('.hover').textContent()
      if (!told?.startsWith(says)) continue
      first = Number.isNaN(first) ? x : first
      last = x
    }
    if (!Number.isNaN(first)) return [(first + last) / 2, y]
  }
  throw new Error(`nothing on the elevation is called ${says}`)
}

async function choose(id: string): Promise<void> {
  await desk.page.selectOption('#thing', id)
}

/** The words of the page as it goes to the printer, which has paper of the sheet's own size: on less its title would be cut off. */
async function printed(): Promise<string> {
  const pdf = await desk.page.pdf({ format: 'A2', landscape: true, pageRanges: '1' })
  const document = await getDocument({ data: new Uint8Array(pdf) }).promise
  const { items } = await (await document.getPage(1)).getTextContent()
  return items.map((item) => ('str' in item ? item.str : '')).join(' ')
}

const openSheet = (name: string) => desk.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click()

describe('the desk at work', () => {
  it('drags RW3 by 80 mm, and the ripple is that of scene 1', async () => {
    const [a, b] = [await middleOf('RW1'), await middleOf('RW3')]
    // RW1 stands at STA 3313, RW3 at STA 5745
    const perMm = (b[0] - a[0]) / (5745 - 3313)
    const { page } = desk
    await page.mouse.move(...b)
    await page.mouse.down()
    for (let i = 1; i <= 10; i++) await page.mouse.move(b[0] + 8 * i * perMm, b[1])
    await page.mouse.up()
    // a pixel of the screen is some ten millimetres: the last of them are typed
    await page.locator('#station').fill('5825')
    await page.locator('#station').press('Enter')
    await ripples(/holes moved, \d+ holes fewer in 3 parts, 4 new parts/)
    // where the drag itself rested the line says much the same
    await expect.poll(rippleLines, { timeout: 20_000, interval: 500 }).toContain('openings RW3 station: 5745 mm becomes 5825 mm.')
    await expect.poll(rippleLines, { timeout: 20_000, interval: 500 }).toContain('hoop-F6: 13 solid rivets fewer (139 in place of 152).')
    await undoAll()
  })

  it('slides the axles into the clash of scene 5', async () => {
    await choose('axle-1')
    await desk.page.locator('#station').fill('4790')
    await desk.page.locator('#station').press('Enter')
    await ripples(/checks now fail/)
    await expect
      .poll(rippleLines, { timeout: 20_000, interval: 500 })
      .toMatch(/FAILS: The axle at STA 5580 has its tube at STA 5430, 130 mm from the cross-member at STA 5560/)
    await undoAll()
  })

  it('nudges by a millimetre with the keys', async () => {
    await choose('RW3')
    await desk.page.locator('canvas').focus()
    await desk.page.keyboard.press('ArrowRight')
    await expect.poll(() => desk.page.locator('#station').inputValue()).toBe('5746')
    await desk.page.keyboard.press('Shift+ArrowLeft')
    // the pitch its rim is written with, 31.75 mm
    await expect.poll(() => desk.page.locator('#station').inputValue()).toBe('5714.3')
    await undoAll()
  })

  it('loses no push of a quick hand, and leaves the zoom where it was', async () => {
    await choose('RW3')
    const canvas = desk.page.locator('canvas')
    await canvas.focus()
    await desk.page.keyboard.press('+')
    for (let i = 0; i < 6; i++) await desk.page.keyboard.press('ArrowRight', { delay: 0 })
    await expect.poll(() => desk.page.locator('#station').inputValue(), { timeout: 20_000 }).toBe('5751')
    const near = await canvas.screenshot()
    await desk.page.keyboard.press('0')
    // had an edit fitted the coach to the screen again, there would be nothing left to fit
    expect((await canvas.screenshot()).equals(near)).toBe(false)
    await undoAll()
  })

  it('keeps half a figure that is being typed while an earlier edit comes back', async () => {
    await choose('RW3')
    const box = desk.page.locator('#station')
    await box.click()
    await box.fill('58')
    // a push on the drawing that the hand on the keys knows nothing of
    await desk.page.locator('canvas').dispatchEvent('keydown', { key: 'ArrowRight' })
    await ripples(/holes? moved/)
    expect(await box.inputValue()).toBe('58')
    await box.press('End')
    await box.pressSequentially('25')
    await box.press('Enter')
    await expect.poll(rippleLines, { timeout: 20_000, interval: 500 }).toContain('openings RW3 station: 5745 mm becomes 5825 mm.')
    await undoAll()
  })

  it('answers rubbish in a field with a sentence, and takes none of it', async () => {
    await choose('RW3')
    const said = desk.page.locator('.notice[role=status]')
    for (const [field, rubbish, says] of [
      ['#width', '6 kg', /^Width of RW3: .*length/],
      ['#station', '', /^Station of RW3: /],
      ['#station', '9000', /^That was not taken: openings RW3 station: .*off the barrel/],
    ] as const) {
      const box = desk.page.locator(field)
      const before = await box.inputValue()
      await box.fill(rubbish)
      await box.press('Enter')
      await expect.poll(() => said.textContent()).toMatch(says)
      await expect.poll(() => box.inputValue()).toBe(before)
    }
    await ripples(/nothing changed/)
    await desk.page.getByRole('button', { name: 'Inch' }).click()
    await desk.page.locator('#width').fill('20 1/2')
    await desk.page.locator('#width').press('Enter')
    await ripples(/documents to issue again/)
    expect(await desk.page.locator('#width').inputValue()).toBe('20.5')
    await desk.page.getByRole('button', { name: 'Inch' }).click()
    await undoAll()
  })

  it('shows a fault of the section on its line, and leads there', async () => {
    await openSheet('Text')
    const text = desk.page.locator('#definition')
    const before = await text.inputValue()
    await text.fill(before.replace('schema: 1', 'schema: 1\nsection: {exponent: two}'))
    const fault = desk.page.locator('.faults button').first()
    await expect.poll(() => fault.textContent(), { timeout: 20_000 }).toMatch(/^line 4: /)
    // and on every sheet, since the drawing is no longer of the text
    expect(await desk.page.getByRole('alert').textContent()).toMatch(/sedge-6\.yaml, line 4: /)
    await fault.click()
    expect(await text.evaluate((area: HTMLTextAreaElement) => area.value.slice(0, area.selectionStart).split('\n').length)).toBe(4)
    await desk.page.locator('h1').click()
    await undoAll()
    expect(await text.inputValue()).toBe(before)
  })

  it('prints the sheet that is open, alone on its page', async () => {
    await openSheet('Skins')
    await desk.page.selectOption('#document', 'sheets/flat-patterns.pdf')
    // the sheet that was open before stays until the new one is drawn
    await expect.poll(printed, { timeout: 30_000, interval: 500 }).toMatch(/crown strake/i)
    expect(await printed()).not.toContain('Freeze')
  })

  it('answers a place from the box that one keystroke reaches', async () => {
    await desk.page.locator('canvas').focus()
    await desk.page.keyboard.press('Control+k')
    const begun = Date.now()
    await desk.page.keyboard.type('R 5745 WL 1160')
    await desk.page.keyboard.press('Enter')
    await desk.page.locator('.answer').waitFor()
    expect(Date.now() - begun).toBeLessThan(5000)
    expect(await desk.page.locator('.answer').textContent()).toContain('In the cut of RW3')
    await desk.page.locator('.answer').getByRole('button', { name: 'Close' }).click()
  })

  it('writes the packet with its progress, and stops it when asked', async () => {
    await openSheet('Packet')
    await desk.page.getByRole('button', { name: 'Write the packet' }).click()
    const stop = desk.page.getByRole('button', { name: 'Stop' })
    await stop.waitFor()
    await stop.click()
    await desk.page.getByText('Stopped. Nothing was changed.').waitFor({ timeout: 20_000 })
  })

  it('goes to every sheet by the keyboard alone', async () => {
    await openSheet('Lines')
    const names = [...SHEETS.map(({ name }) => name), 'Text']
    for (const name of names.slice(1)) {
      await desk.page.keyboard.press('Tab')
      await desk.page.keyboard.press('Enter')
      await expect.poll(() => desk.page.locator('nav button[aria-current]').textContent(), { timeout: 20_000 }).toBe(name)
    }
  })
})
