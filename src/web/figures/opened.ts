/** The working behind a figure that was touched: opened beside the sentences, and brought into sight. */
import { openWorking } from '../desk.js'
import { noteAt } from '../way.js'

export const isOpened = (id: string): boolean => noteAt() === id

export async function openFigure(id: string): Promise<void> {
  await openWorking(id)
  document.querySelector('.sentences .working')?.scrollIntoView({ block: 'nearest' })
}
