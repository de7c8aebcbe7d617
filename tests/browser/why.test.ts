/** A figure asked why, down to the line it is written in; revisions frozen and compared; the change note on paper. */
import { writeFileSync } from 'node:fs'
import { AxeBuilder } from '@axe-core/playwright'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type DeskInBrowser, openDesk } from './desk.js'

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
  await desk.page.getByRole('button', { name: 'Understood' }).click()
  await ripples(/nothing changed/)
})
afterAll(() => desk?.close())

/** Waits until the line at the foot says so. */
async function ripples(what: RegExp): Promise<void> {
  await desk.page.waitForFunction((words) => new RegExp(words).test(document.querySelector('#ripple')?.textContent ?? ''), what.source, {
    timeout: 30_000,
  })
}

/** A picture for whoever looks, where a folder for it is named. */
async function picture(name: string): Promise<void> {
  const folder = process.env.PICTURES
  if (folder) writeFileSync(`${folder}/${name}.png`, await desk.page.screenshot())
}

/** The same at tablet width and in the dark, for whoever looks. */
async function narrow(): Promise<void> {
  if (!process.env.PICTURES) return
  await desk.page.setViewportSize({ width: 820, height: 1180 })
  await desk.page.getByRole('button', { name: 'Dark', exact: true }).click()
  await picture(`narrow-${pictures++}`)
  await desk.page.getByRole('button', { name: 'Dark', exact: true }).click()
  await desk.page.setViewportSize({ width: 1440, height: 900 })
}
let pictures = 1

/** No breach of the accessibility rules as the desk stands now, light and dark. */
async function faultless(): Promise<void> {
  for (const theme of ['light', 'dark']) {
    const { violations } = await new AxeBuilder({ page: desk.page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze()
    expect(violations.map(({ id, nodes }) => `${theme}: ${id} ${nodes[0]?.html}`)).toEqual([])
    await desk.page.getByRole('button', { name: 'Dark', exact: true }).click()
  }
}

const openSheet = (name: string) => desk.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click()

describe('a figure', () => {
  it('is followed from the load on the ball to a mass and its line, and back', async () => {
    const { page } = desk
    await openSheet('Weight')
    await page.getByRole('button', { name: 'load on the ball in case D', exact: true }).click()
    const note = page.getByRole('complementary', { name: 'Working' })
    await note.getByText('Load on the ball').waitFor({ timeout: 20_000 })
    expect(await note.locator('.formula').textContent()).toMatch(/W × \(1 - \(x_c - b\) \/ \(x_a - b\)\)= \d+ kg × .*= [\d.]+ kg$/)
    await picture('note')
    await narrow()
    // by the keys alone from here on
    const into = async (name: RegExp, next: RegExp): Promise<void> => {
      await note.getByRole('button', { name }).focus()
      await page.keyboard.press('Enter')
      await expect.poll(() => note.locator('h4').textContent()).toMatch(next)
    }
    await into(/^W /, /^whole mass in case D/)
    await into(/^AP /, /^mass of the group AP/)
    await into(/^item-62 /, /^mass of roof air conditioner/)
    await picture('note-deep')
    await faultless()
    expect(await note.getByRole('navigation', { name: 'Way to this figure' }).getByRole('button').allTextContents()).toEqual([
      ...['load on the ball in case D', 'whole mass in case D: waste full, fresh water empty', 'mass of the group AP'],
    ])
    await note.locator('h4').focus()
    await page.keyboard.press('Escape')
    await expect.poll(() => note.locator('h4').textContent()).toMatch(/^mass of the group AP/)
    await into(/^item-62 /, /^mass of roof air conditioner/)
    await note.getByRole('button', { name: /^Go to the field masses roof air conditioner mass, line \d+ of sedge-6\.masses\.yaml/ }).click()
    const file = page.locator('#other-file')
    await expect.poll(() => file.evaluate(chosen)).toMatch(/^\d+ kg$/)
    expect(await file.evaluate(lineChosen)).toContain('item: roof air conditioner')
    await picture('field')
    await page.getByRole('button', { name: 'Back to the text of the coach' }).click()
    await openSheet('Weight')
  })
})

describe('revisions', () => {
  const type = async (station: string): Promise<void> => {
    await desk.page.selectOption('#thing', 'RW3')
    await desk.page.locator('#station').fill(station)
    await desk.page.locator('#station').press('Enter')
  }
  const freeze = async (name: string): Promise<void> => {
    await desk.page.locator('#freeze-name').fill(name)
    await desk.page.locator('#freeze-name').press('Enter')
    await ripples(new RegExp(`Since ${name}: nothing changed`))
  }

  it('are frozen and compared, and each line leads to its place', async () => {
    const { page } = desk
    await freeze('as ordered')
    await type('5825')
    await ripples(/Since as ordered: \d+ holes moved/)
    await freeze('window aft')
    await page.locator('#ripple').click()
    await page.selectOption('#compare-from', { label: 'as ordered' })
    await page.selectOption('#compare-to', { label: 'window aft' })
    const told = page.getByRole('region', { name: 'What changed' })
    await told.getByText(/^From as ordered to window aft: /).waitFor({ timeout: 20_000 })
    await picture('ripple')
    await faultless()
    await told
      .getByRole('button', { name: /cuts frame F6/ })
      .first()
      .click()
    await expect.poll(() => page.locator('nav button[aria-current]').textContent(), { timeout: 20_000 }).toBe('Openings')
    await told.getByRole('button', { name: 'openings RW3 station: 5745 mm becomes 5825 mm.' }).click()
    const text = page.locator('#definition')
    await expect.poll(() => text.evaluate(chosen)).toBe('5825 mm')
    // they outlast the window
    await page.reload()
    await ripples(/Since window aft: nothing changed/)
  })

  it('are looked at and nothing can be changed', async () => {
    const { page } = desk
    await page.locator('#ripple').click()
    await page.getByRole('button', { name: 'Look at as ordered' }).click()
    await page.getByText('You are looking at “as ordered”, as it was frozen.').waitFor()
    await page.selectOption('#thing', 'RW3')
    expect(await page.locator('#station').inputValue()).toBe('5745')
    await picture('looking')
    await narrow()
    await page.getByRole('button', { name: 'Back to the coach as it is now' }).click()
    await expect.poll(() => page.locator('#station').inputValue()).toBe('5825')
    await page.locator('#ripple').click()
  })

  it('are told by a change note, page by page and all of it on the printer', async () => {
    const { page } = desk
    await page.locator('#ripple').click()
    await page.selectOption('#compare-from', { label: 'as ordered' })
    await page.locator('#ripple').click()
    await page.getByRole('button', { name: 'Change note' }).click()
    const note = page.getByRole('region', { name: 'Change note' })
    await note.getByRole('img').waitFor({ timeout: 20_000 })
    await note.getByText(/^1 of \d+$/).waitFor()
    await picture('change-note')
    await faultless()
    await narrow()
    const pdf = await getDocument({ data: new Uint8Array(await page.pdf({ format: 'A4' })) }).promise
    const pages = Number((await note.locator('.bar span').first().textContent())?.replace('1 of ', ''))
    expect(pages).toBeGreaterThan(1)
    expect(pdf.numPages).toBe(pages)
    await note.getByRole('button', { name: 'Close the note' }).click()
    expect(desk.complaints).toEqual([])
  })
})

/** What is selected, and the whole line it is in. */
const chosen = (area: Element): string => {
  const { value, selectionStart, selectionEnd } = area as HTMLTextAreaElement
  return value.slice(selectionStart, selectionEnd)
}
const lineChosen = (area: Element): string => {
  const { value, selectionStart } = area as HTMLTextAreaElement
  return value.slice(value.lastIndexOf('\n', selectionStart) + 1).split('\n')[0]
}
