/** The live figures as a hand and a keyboard use them: bars and map of the weight, a hole and its mates. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type DeskInBrowser, openDesk } from './desk.js'

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
  await desk.page.getByRole('button', { name: 'Understood' }).click()
})
afterAll(() => desk?.close())

const openSheet = (name: string) => desk.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click()
const says = () => desk.page.locator('#room-says').textContent()

describe('the live figures', () => {
  it('opens the working of a bar, and reads the map by keys and by a typed station', async () => {
    const { page } = desk
    await openSheet('Weight')
    const bar = page.getByRole('button', { name: /^Hitch in case F: 8\.0 %, 189 kg, caution/ })
    await bar.click()
    await expect.poll(() => bar.getAttribute('aria-expanded')).toBe('true')
    expect(await page.locator('.bars tbody tr').count()).toBe(8)

    await expect.poll(says).toMatch(/^STA 4800, on the centre line: you may still add 374 kg/)
    const plan = page.getByRole('application', { name: /^Plan/ })
    await plan.focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowDown')
    await expect.poll(says).toMatch(/^STA 4900, BL 100 on the left \(R\): you may still add \d+ kg/)
    await page.getByLabel('Station, mm').fill('7000')
    await page.getByLabel('Station, mm').press('Enter')
    await expect.poll(says).toMatch(/^STA 7000, .*hitch would be too light\)/)
    // a hand on the middle of the map asks for a place near the axles
    const box = await plan.locator('svg').boundingBox()
    if (!box) throw new Error('the map is not on the screen')
    await plan.locator('svg').click({ position: { x: box.width / 2, y: box.height * 0.4 } })
    await expect.poll(says).toMatch(/^STA [45]\d{3}, /)
    // the paper is one touch away, and the figure again
    await page.getByRole('button', { name: 'Paper', exact: true }).click()
    await page.locator('.print').waitFor()
    await page.getByRole('button', { name: 'Figure', exact: true }).click()
    await plan.waitFor()
  })

  it('says what a hole is and where its mates are, and follows one to its sheet and back', async () => {
    const { page } = desk
    await openSheet('Skins')
    const says = page.locator('.hole-says')
    await page.getByRole('button', { name: 'Next hole' }).click()
    await expect.poll(() => says.textContent()).toMatch(/^R \d+ WL \d+ \(G \d+\) Hole 1 of 740, 3\.3 mm, punched full size/)
    const address = await says.locator('b').textContent()
    await says.getByRole('button', { name: 'shoulder strake, left side' }).click()
    await expect.poll(() => page.locator('#flat').inputValue()).toBe('strake-shoulder-left|sheet')
    await expect.poll(() => says.textContent()).toMatch(/ of 529, /)
    expect(await says.locator('b').textContent()).toBe(address)
    await says.getByRole('button', { name: 'crown strake' }).click()
    await expect.poll(() => says.textContent()).toMatch(/Hole 1 of 740/)
    const picture = page.getByRole('application', { name: /^crown strake/ })
    await picture.focus()
    await page.keyboard.press('ArrowRight')
    await expect.poll(() => says.textContent()).toMatch(/Hole 2 of 740/)
    expect(desk.complaints).toEqual([])
  })
})
