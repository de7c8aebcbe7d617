/** Pictures of every sheet at desk and tablet size, for docs/screens/: taken when asked for, and otherwise held to be there. */
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { SHEETS } from '../../src/desk/sheets.js'
import { root } from '../tree.js'
import { type DeskInBrowser, openDesk } from './desk.js'

const folder = join(root, 'docs', 'screens')
const SIZES = [
  { says: 'desk', width: 1440, height: 900 },
  { says: 'tablet', width: 820, height: 1180 },
] as const
/** Looks that are no sheet: the coach in space, drawn apart, and the desk in the dark. */
const LOOKS = ['in-space', 'drawn-apart', 'dark'] as const
const pathOf = (sheet: string, size: string): string => join(folder, `${sheet.toLowerCase().replaceAll(' ', '-')}-${size}.png`)

it('every sheet has its pictures (COACHWRIGHT_SCREENS=1 takes them anew)', async () => {
  if (process.env.COACHWRIGHT_SCREENS === '1') await take()
  const wanted = [
    ...SHEETS.flatMap(({ name }) => SIZES.map(({ says }) => pathOf(name, says))),
    ...LOOKS.map((look) => pathOf(look, 'desk')),
  ]
  const missing = wanted.filter((path) => !existsSync(path))
  expect(missing).toEqual([])
})

async function take(): Promise<void> {
  mkdirSync(folder, { recursive: true })
  const desk = await openDesk()
  try {
    await desk.page.getByRole('button', { name: 'Understood' }).click()
    for (const { says, width, height } of SIZES) {
      await desk.page.setViewportSize({ width, height })
      for (const { name } of SHEETS) {
        await desk.page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name, exact: true }).click()
        await desk.page.waitForTimeout(1500)
        await desk.page.screenshot({ path: pathOf(name, says) })
      }
    }
    await takeLooks(desk)
  } finally {
    await desk.close()
  }
}

async function takeLooks({ page }: DeskInBrowser): Promise<void> {
  const [{ says, width, height }] = SIZES
  const picture = async (look: (typeof LOOKS)[number]): Promise<void> => {
    await page.waitForTimeout(3000)
    await page.screenshot({ path: pathOf(look, says) })
  }
  await page.setViewportSize({ width, height })
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Ends', exact: true }).click()
  await page.getByRole('button', { name: 'In space' }).click()
  await page.locator('.space canvas').waitFor()
  await picture('in-space')
  await page.locator('#apart').fill('35')
  await picture('drawn-apart')
  await page.locator('#apart').fill('0')
  await page.getByRole('button', { name: 'Road side' }).click()
  await page.getByRole('button', { name: 'Dark' }).click()
  await page.selectOption('#thing', 'RW3')
  await page.getByRole('navigation', { name: 'Sheets' }).getByRole('button', { name: 'Towing', exact: true }).click()
  await picture('dark')
}
