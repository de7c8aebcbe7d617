/** The ways into the desk: a coach begun, mended, open in two windows at once, and proved by the shop's hole list. */
import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { deskCoach } from '../../src/desk/desk-coach.js'
import { DOORS } from '../../src/web/door.js'
import { type DeskInBrowser, openDesk } from './desk.js'

const COACH = 'examples/sedge-4.yaml'
let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk({ coach: COACH })
  await desk.page.getByRole('button', { name: 'Understood' }).click()
  await derived(desk.page)
})
afterAll(() => desk?.close())

/** Where pictures are wanted to look at, and at no other time. */
const PICTURES = process.env.COACHWRIGHT_LOOK
async function picture(name: string, page = desk.page): Promise<void> {
  if (!PICTURES) return
  mkdirSync(PICTURES, { recursive: true })
  await page.screenshot({ path: join(PICTURES, `${name}.png`) })
}

const derived = (page: Page) =>
  page.waitForFunction(() => /Since .*: /.test(document.querySelector('#ripple')?.textContent ?? ''), undefined, { timeout: 60_000 })
const sheet = (name: string, page = desk.page) =>
  page
    .getByRole('navigation', { name: name === 'Lines' ? 'Sheets' : 'Coaches' })
    .getByRole('button', { name, exact: true })
    .click()
const notice = (page = desk.page) => page.locator('.notice[role=status]').textContent()
const onDisk = (path: string): string => readFileSync(join(desk.folder, path), 'utf8')

describe('a new coach', () => {
  it('is begun from a family and a length, edited, and saved under a name of its own, in a minute of hands', async () => {
    const { page } = desk
    await sheet('New coach')
    await page.locator('#new-name').fill('Wren 5')
    await page.locator('#new-length').fill('17 ft')
    await expect.poll(() => page.locator('#start').isEnabled(), { timeout: 30_000 }).toBe(true)
    await picture('new-coach')
    await page.locator('#start').click()
    await expect.poll(() => notice(), { timeout: 60_000 }).toMatch(/Wren 5 is begun: \d bays of \d+ mm/)
    await derived(page)
    await page.getByRole('button', { name: 'Curb side' }).click()
    await page.selectOption('#thing', 'D1')
    const station = Number(await page.locator('#station').inputValue())
    await page.locator('#station').fill(String(station + 12))
    await page.locator('#station').press('Enter')
    await page.waitForFunction(() => /holes moved/.test(document.querySelector('#ripple')?.textContent ?? ''), undefined, {
      timeout: 30_000,
    })
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    // the name of a coach that is there is refused, and nothing is written over
    const name = page.locator('#save-as')
    expect(await name.inputValue()).toBe('examples/wren-5.yaml')
    await name.fill('examples/sedge-6.yaml')
    await name.press('Enter')
    await page.getByText('There is a file examples/sedge-6.yaml already').waitFor()
    expect(existsSync(join(desk.folder, 'examples/wren-5.yaml'))).toBe(false)
    await name.fill('examples/wren-5.yaml')
    await name.press('Enter')
    await expect.poll(() => notice()).toContain('examples/wren-5.yaml is saved.')
    expect(onDisk('examples/wren-5.yaml')).toContain(`{id: D1, station: ${station + 12} mm`)
    await expect.poll(() => page.locator('#coach option').allTextContents()).toContain('Wren 5')
    const saved = deskCoach({
      path: 'examples/wren-5.yaml',
      files: { 'examples/wren-5.yaml': onDisk('examples/wren-5.yaml'), 'examples/sedge.family.yaml': onDisk('examples/sedge.family.yaml') },
    })
    expect('faults' in saved ? saved.faults : saved.state().name).toBe('Wren 5')
  })

  it("takes one's own section, draws it, and says what is wrong beside its field", async () => {
    const { page } = desk
    await sheet('New coach')
    await page.locator('#own').check()
    await page.locator('.section-picture').waitFor()
    await page.locator('#to-1').fill('10')
    await expect.poll(() => page.locator('#to-1-fault').textContent()).toMatch(/begins at 14 deg and bends down/)
    await page.locator('#to-1').fill('83 deg')
    await expect.poll(() => page.locator('#to-1-fault').textContent()).toBe('')
    await expect.poll(() => page.locator('.picture').textContent()).toMatch(/from crown to toe, as asked/)
    await page.locator('#new-name').fill('Own One')
    await picture('own-section')
    await page.locator('#start').click()
    await expect.poll(() => notice(), { timeout: 60_000 }).toMatch(/Own One is begun/)
    await derived(page)
    // never saved, and still there for the next visit
    await sheet('Files')
    await page.getByRole('button', { name: 'own-one.yaml', exact: true }).waitFor()
    await picture('files')
    await page.getByRole('button', { name: 'Let go' }).click()
    await page.getByRole('button', { name: 'Sedge 4', exact: true }).click()
    await expect.poll(() => page.locator('#coach').inputValue(), { timeout: 30_000 }).toBe(COACH)
  })
})

describe('a coach that does not read', () => {
  it('opens as text, and is drawn once it is mended; a family that is not there is asked for', async () => {
    const { page } = desk
    const text = onDisk(COACH).replace('sedge.family.yaml', 'heath.family.yaml').replace('spindles: [4580 mm]', 'spindles: [4580]')
    await sheet('Files')
    await page.locator('#open-files').setInputFiles({ name: 'heath-4.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) })
    await page.getByText('This coach does not read yet').waitFor({ timeout: 30_000 })
    await expect.poll(() => page.locator('.wanted').textContent()).toContain('heath.family.yaml')
    await picture('mending')
    const family = Buffer.from(onDisk('examples/sedge.family.yaml'))
    await page.locator('#wanted').setInputFiles({ name: 'heath.family.yaml', mimeType: 'application/yaml', buffer: family })
    const fault = page.locator('.faults button').first()
    await expect.poll(() => fault.textContent(), { timeout: 30_000 }).toMatch(/^line \d+: gear spindles 1: .*4580/)
    await fault.click()
    const area = page.locator('#definition')
    await area.fill(text.replace('spindles: [4580]', 'spindles: [4580 mm]'))
    await derived(page)
    expect(await page.locator('canvas').isVisible()).toBe(true)
    await sheet('Lines')
    await page.selectOption('#coach', COACH)
    await expect.poll(() => page.locator('.revision').textContent(), { timeout: 30_000 }).toMatch(/revision [0-9a-f]{12}/)
  })
})

describe('two windows on one coach', () => {
  it('hear of each other, choose, and lose nothing', async () => {
    const { page } = desk
    await derived(page)
    const other = await desk.context.newPage()
    await other.goto(`${desk.url}?coach=${COACH}`)
    await derived(other)
    const move = async (where: Page, station: string): Promise<void> => {
      await where.getByRole('button', { name: 'Road side' }).click()
      await where.selectOption('#thing', 'RW2')
      await where.locator('#station').fill(station)
      await where.locator('#station').press('Enter')
    }
    const choices = (where: Page) => where.locator('.choices')
    await move(other, '4230')
    await choices(page).waitFor({ timeout: 30_000 })
    expect(await choices(page).textContent()).toContain('is being edited in another window too')
    await choices(page).getByRole('button', { name: 'See what differs' }).click()
    await expect
      .poll(() => choices(page).locator('.differs').textContent(), { timeout: 60_000 })
      .toMatch(/openings RW2 station: 4230 mm becomes 4220 mm/)
    await picture('two-windows')
    await choices(page).getByRole('button', { name: 'Keep mine' }).click()
    // theirs is saved: that is said, and a save of ours over it asks instead of failing
    await other.getByRole('button', { name: 'Save', exact: true }).click()
    await expect.poll(() => choices(page).textContent(), { timeout: 30_000 }).toContain('was saved in another window')
    await choices(page).getByRole('button', { name: 'Keep mine' }).click()
    await move(page, '4210')
    await derived(page)
    await page.getByRole('button', { name: 'Save', exact: true }).click()
    await expect.poll(() => choices(page).textContent(), { timeout: 30_000 }).toContain('nothing was saved yet')
    expect(onDisk(COACH)).toContain('{id: RW2, station: 4230 mm')
    await choices(page).getByRole('button', { name: 'Keep mine, and save it over theirs' }).click()
    await expect.poll(() => onDisk(COACH), { timeout: 30_000 }).toContain('{id: RW2, station: 4210 mm')
    // and the other window is told in its turn, and takes it
    await expect.poll(() => choices(other).textContent(), { timeout: 30_000 }).toContain('was saved in another window')
    await choices(other).getByRole('button', { name: 'Take theirs' }).click()
    await expect.poll(() => other.locator('#station').inputValue(), { timeout: 30_000 }).toBe('4210')
    await expect.poll(() => other.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true)
    await other.close()
  })
})

describe('proving and laying beside', () => {
  it("lays the shop's hole list on a sheet, and says where they differ", async () => {
    const { page } = desk
    const files = Object.fromEntries(
      ['sedge-4.yaml', 'sedge.family.yaml', 'sedge-4.masses.yaml'].map((name) => [`examples/${name}`, onDisk(`examples/${name}`)]),
    )
    const coach = deskCoach({ path: COACH, files })
    if ('faults' in coach) throw new Error('it does not read')
    const part = coach.design().parts.find(({ id }) => id === 'strake-crown')
    if (!part) throw new Error('no such part')
    const { x, y } = part.patterns[0].holes
    // as a punch has them, in its own place: shifted, and one hole a millimetre and a half off
    const lines = Array.from(
      x,
      (at, i) => `${i + 1},${(at * 1000 + 100 + (i === 30 ? 1.5 : 0)).toFixed(2)},${(y[i] * 1000 + 50).toFixed(2)}`,
    )
    await sheet('Prove')
    await page.selectOption('#prove-part', 'strake-crown')
    await page
      .locator('#prove-list')
      .setInputFiles({ name: 'punch.csv', mimeType: 'text/csv', buffer: Buffer.from(['no,x mm,y mm', ...lines].join('\n')) })
    await expect
      .poll(() => page.locator('#verdict').textContent({ timeout: 30_000 }), { timeout: 60_000 })
      .toMatch(/^DISAGREES at 0\.30 mm/)
    expect(await page.locator('.differences li').first().textContent()).toMatch(/^Hole 31 \(line 32\) stands 1\.5\d? mm off /)
    await page.locator('.prove img.print').waitFor()
    await picture('prove')
  })

  it('shows a second coach to the same scale, the rows that differ first', async () => {
    const { page } = desk
    await sheet('Beside')
    await page.selectOption('#beside', 'examples/sedge-6.yaml')
    await expect.poll(() => page.locator('.pictures figure').count(), { timeout: 60_000 }).toBe(2)
    const first = page.locator('.beside-table tbody tr').first()
    expect(await first.getAttribute('class')).toBe('differs')
    await picture('beside')
  })

  it('breaks no rule of accessibility on these pages', async () => {
    const { page } = desk
    const all = process.env.COACHWRIGHT_PROOF === '1' ? DOORS : null
    for (const { width, height, dark, names } of [
      { width: 1440, height: 900, dark: true, names: all ?? (['New coach', 'Beside'] as const) },
      // high enough that the foot covers no word of the list
      { width: 820, height: 1400, dark: false, names: all ?? (['Files', 'Prove'] as const) },
    ]) {
      await page.setViewportSize({ width, height })
      const button = page.getByRole('button', { name: 'Dark' })
      if (((await button.getAttribute('aria-pressed')) === 'true') !== dark) await button.click()
      for (const name of names) {
        await sheet(name)
        await page.locator('.door h2').first().waitFor()
        if (name === 'Prove') await page.locator('#verdict').waitFor({ timeout: 60_000 })
        await picture(`${name}-${width}${dark ? '-dark' : ''}`)
        const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze()
        expect(violations.map(({ id, nodes }) => `${name}: ${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([])
      }
    }
    expect(desk.complaints.filter((each) => !/409|status of 4/.test(each))).toEqual([])
  })
})
