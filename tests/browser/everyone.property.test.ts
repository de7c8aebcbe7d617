/** No breach of the accessibility rules (WCAG 2.2 AA as axe tries them) on any sheet, in both themes and at tablet width. */
import { AxeBuilder } from '@axe-core/playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SHEETS } from '../../src/desk/sheets.js'
import { type DeskInBrowser, openDesk } from './desk.js'

let desk: DeskInBrowser
beforeAll(async () => {
  desk = await openDesk()
  await desk.page.getByRole('button', { name: 'Understood' }).click()
})
afterAll(() => desk?.close())

/** A minute for each look: every sheet in the long run, those that differ most in the short one. */
const ASKED = process.env.COACHWRIGHT_PROOF === '1' ? SHEETS : SHEETS.filter(({ name }) => name === 'Weight' || name === 'Packet')

describe('the desk for everyone', () => {
  for (const { says, width, isDark } of [
    { says: 'light', width: 1440, isDark: false },
    { says: 'dark', width: 1440, isDark: true },
    { says: 'at tablet width', width: 820, isDark: false },
  ])
    it(`breaks no rule of accessibility on any sheet, ${says}`, async () => {
      await desk.page.setViewportSize({ width, height: 1000 })
      const button = desk.page.getByRole('button', { name: 'Dark' })
      if (((await button.getAttribute('aria-pressed')) === 'true') !== isDark) await button.click()
      for (const { name } of ASKED) {
        await desk.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click()
        await expect.poll(() => desk.page.locator('.sentences h2').textContent(), { timeout: 20_000 }).toBe(name)
        const { violations } = await new AxeBuilder({ page: desk.page })
          .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
          .analyze()
        expect(
          violations.map(({ id, nodes }) => `${name}: ${id}: ${nodes.map((node) => node.html).join(' ')}`),
          name,
        ).toEqual([])
      }
      expect(desk.complaints).toEqual([])
    })
})
