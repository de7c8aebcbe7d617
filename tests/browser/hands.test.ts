/** Hands on the drawing, in a real browser: what is under the pointer, things drawn to clean places, edges pulled, masses moved. */
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { root } from '../tree.js'
import { type DeskInBrowser, openDesk } from './desk.js'

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
  await desk.page.getByRole('button', { name: 'Understood' }).click()
})
afterAll(() => desk?.close())

/** Takes back the one edit of a test, as soon as it is there. */
async function undone(): Promise<void> {
  const undo = desk.page.getByRole('button', { name: 'Undo' })
  await undo.click()
  await expect.poll(() => undo.isDisabled(), { timeout: 20_000 }).toBe(true)
}

/** px of a metre once an address was gone to */
const NEAR = 260

/** Goes to an address: it comes to lie in the middle of the drawing. Gives its place on the screen. */
async function goTo(address: string): Promise<readonly [number, number]> {
  const { page } = desk
  await page.locator('#ask').fill(address)
  await page.keyboard.press('Enter')
  const answer = page.locator('.answer')
  await answer.getByText(new RegExp(`^${address}`)).waitFor()
  await answer.getByRole('button', { name: 'Close' }).click()
  const box = await page.locator('canvas').boundingBox()
  if (!box) throw new Error('the elevation is not on the screen')
  return [box.x + box.width / 2, box.y + box.height / 2]
}

const value = (field: string): Promise<string> => desk.page.locator(field).inputValue()

/** A picture to be looked at, where somebody asks for it. */
async function picture(name: string): Promise<void> {
  const folder = process.env.COACHWRIGHT_LOOK
  if (folder) await desk.page.screenshot({ path: join(root, folder, `${name}.png`) })
}

describe('hands on the drawing', () => {
  it('goes to an address, and tells what is there where the pointer rests', async () => {
    const [x, y] = await goTo('R 5745 WL 1160')
    const { page } = desk
    await page.mouse.move(x - 10, y)
    await page.mouse.move(x, y)
    const note = page.locator('.slip')
    await expect.poll(() => note.textContent(), { timeout: 20_000 }).toMatch(/^R 574\d.* WL 1160.*Outside.*In the cut of RW3/)
    expect(await page.locator('.hover').textContent()).toMatch(/^RW3, window W1.*: R 574/)
    // on a rivet of a frame: how many are in its row
    await picture('note')
    await page.mouse.move(x, y - 200)
    await expect.poll(() => note.allTextContents().then((all) => all.join('')), { timeout: 20_000 }).not.toContain('In the cut of RW3')
  })

  it('draws a window to a clean place, says why, lands exactly there, and puts it back on Escape', async () => {
    const [x, y] = await goTo('R 5745 WL 1160')
    const { page } = desk
    const told = page.locator('#in-hand')
    const drag = async (): Promise<void> => {
      await page.mouse.move(x, y)
      await page.mouse.down()
      // F6 stands at 6050: half its flange, the rivet line and the edge distance before it the cut ends
      for (let by = 4; by <= 14 && !(await told.allTextContents()).join('').includes('clear of frame F6'); by++) {
        await page.mouse.move(x + by, y)
        await page.waitForTimeout(250)
      }
      await expect.poll(() => told.textContent(), { timeout: 20_000 }).toMatch(/^rim rivets [\d.]+ mm clear of frame F6: least allowed/)
    }
    await page.locator('canvas').focus()
    await drag()
    await picture('drawn-to')
    await page.keyboard.press('Escape')
    await page.mouse.up()
    await expect.poll(() => value('#station')).toBe('5745')
    await drag()
    await page.mouse.up()
    // 6050 less half a flange of 28, two diameters of 3.175, the line 11 outside the cut, and half of 520; to the tenth before it
    await expect.poll(() => value('#station')).toBe('5758.6')
    await expect.poll(() => page.locator('#counts').textContent(), { timeout: 20_000 }).toMatch(/^0 fail/)
    await undone()
  })

  it('pulls an edge by its handle, the other one staying where it is', async () => {
    const [x, y] = await goTo('R 5745 WL 1160')
    const { page } = desk
    await page.mouse.click(x, y)
    await expect.poll(() => value('#width')).toBe('520')
    await picture('handles')
    const aft = x + 0.26 * NEAR + 11
    await page.mouse.move(aft, y)
    await page.keyboard.down('Alt')
    await page.mouse.down()
    for (const by of [-6, -13, -26]) await page.mouse.move(aft + by, y)
    await page.mouse.up()
    await page.keyboard.up('Alt')
    await expect.poll(() => value('#width')).toBe('420')
    expect(await value('#station')).toBe('5695')
    await undone()
  })

  it('moves a stated mass, and writes its line over that of the extended file', async () => {
    const { page } = desk
    await page.getByLabel('masses').check()
    const [x, y] = await goTo('R 4300 WL 450')
    await page.selectOption('#thing', { label: (await page.locator('#thing option', { hasText: 'galley carcass' }).textContent()) ?? '' })
    const before = await value('#station')
    const from = x + (Number(before) / 1000 - 4.3) * NEAR
    await page.keyboard.down('Alt')
    await page.mouse.move(from, y)
    await page.mouse.down()
    for (const by of [9, 18, 26]) await page.mouse.move(from + by, y)
    await page.mouse.up()
    await page.keyboard.up('Alt')
    await expect.poll(() => value('#station')).toBe(String(Number(before) + 100))
    await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Text', exact: true }).click()
    // the field follows the hand, the text is written where it rests
    const written = async (): Promise<string | undefined> => /masses:.*/s.exec(await page.locator('#definition').inputValue())?.[0]
    await expect.poll(written, { timeout: 20_000 }).toBe(`masses: [{item: galley carcass, station: ${Number(before) + 100} mm}]\n`)
    await picture('mass')
    await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Lines', exact: true }).click()
    await page.getByLabel('masses').uncheck()
    await undone()
  })
})
