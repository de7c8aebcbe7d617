/** A figure asked why, down to the line it is written in; revisions frozen and compared; the change note on paper. */
import { writeFileSync } from 'node:fs'
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
    expect(await note.getByRole('navigation', { name: 'Way to this figure' }).getByRole('button').allTextContents()).toEqual([
      ...['load on the ball in case D', 'whole mass in case D: waste full, fresh water empty', 'mass of the group AP'],
    ])
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

/** What is selected, and the whole line it is in. */
const chosen = (area: Element): string => {
  const { value, selectionStart, selectionEnd } = area as HTMLTextAreaElement
  return value.slice(selectionStart, selectionEnd)
}
const lineChosen = (area: Element): string => {
  const { value, selectionStart } = area as HTMLTextAreaElement
  return value.slice(value.lastIndexOf('\n', selectionStart) + 1).split('\n')[0]
}
