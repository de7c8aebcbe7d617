/** Blanks worked out beside the coach, the last ones kept: most edits move nothing that a blank hangs on. */
import { proxy, type Remote, wrap } from 'comlink'
import { createSignal } from 'solid-js'
import type { GoresFigure } from '../../desk/figures/nouns.js'
import type { Blanks } from '../../studies/blanks/compute.js'
import type { BlanksWorker } from '../blanks-worker.js'
import { setNotice } from '../desk.js'

const [blanks, setBlanks] = createSignal<Blanks | null>(null)
const [progress, setProgress] = createSignal<string | null>(null)

export { blanks, progress }

let worker: Remote<BlanksWorker> | null = null
let underWay: string | null = null

/** Once for each key; a second asking while it is under way waits for the first. */
export async function workOut({ key, input }: NonNullable<GoresFigure['needs']>): Promise<void> {
  if (underWay !== null || blanks()?.key === key) return
  underWay = key
  worker ??= wrap<BlanksWorker>(new Worker(new URL('../blanks-worker.ts', import.meta.url), { type: 'module' }))
  try {
    setBlanks(
      await worker.compute(
        input,
        proxy((says: string) => void setProgress(says)),
      ),
    )
  } catch (reason) {
    setNotice(`The blanks could not be worked out, which is a fault of the program: ${reason}`)
  } finally {
    underWay = null
    setProgress(null)
  }
}
