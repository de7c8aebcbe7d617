/** The working behind a figure that was touched: opened beside the sentences, and brought into sight. */
import { openWorking, working } from '../desk.js'

export const isOpened = (id: string): boolean => working()?.id === id

export async function openFigure(id: string): Promise<void> {
  await openWorking(id)
  document.querySelector('.sentences .working')?.scrollIntoView({ block: 'nearest' })
}
