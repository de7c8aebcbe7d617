/** Pictures of every sheet at desk and tablet size, for docs/screens/: taken when asked for, and otherwise held to be there. */
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { SHEETS } from '../../src/desk/sheets.js'
import { root } from '../tree.js'
import { openDesk } from './desk.js'

const folder = join(root, 'docs', 'screens')
const SIZES = [
  { says: 'desk', width: 1440, height: 900 },
  { says: 'tablet', width: 820, height: 1180 },
] as const
const pathOf = (sheet: string, size: string): string => join(folder, `${sheet.toLowerCase().replaceAll(' ', '-')}-${size}.png`)

it('every sheet has its pictures (COACHWRIGHT_SCREENS=1 takes them anew)', async () => {
  if (process.env.COACHWRIGHT_SCREENS === '1') await take()
  const missing = SHEETS.flatMap(({ name }) => SIZES.map(({ says }) => pathOf(name, says))).filter((path) => !existsSync(path))
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
  } finally {
    await desk.close()
  }
}
