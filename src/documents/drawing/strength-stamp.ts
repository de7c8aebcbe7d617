/** What every chassis sheet carries until structure is computed: large enough to be read across a bench. Its right end at x. */
import type { Mark } from './page.js'
import { letter } from './page.js'

export const strengthStamp = (x: number, y: number): Mark =>
  letter(x, y, 'STRENGTH NOT CHECKED: an engineer must approve', { height: 5, anchor: 'end', bold: true, group: 'stamp' })
