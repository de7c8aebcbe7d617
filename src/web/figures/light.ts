/** A place of a figure lit up on the elevation, from the side it is seen from. */
import type { At } from '../../desk/figures/nouns.js'
import { look, setLit, setLook } from '../desk.js'

export async function light(at: At): Promise<void> {
  setLit(at)
  if (at && at.look !== look()) await setLook(at.look)
}
