/** Works out the blanks of formed gores: some seconds, so in a worker of its own, where no edit waits for it. */
import { expose } from 'comlink'
import { type Blanks, computeBlanks } from '../studies/blanks/compute.js'
import type { BlanksInput } from '../studies/blanks/shape.js'

const blanks = {
  compute: (input: BlanksInput, says: (words: string) => void): Blanks | null =>
    computeBlanks(input, { onProgress: (now) => says(`${now.says}, ${now.done + 1} of ${now.of}`) }),
}

export type BlanksWorker = typeof blanks

expose(blanks)
