/**
 * Runs a study in a thread of its own, so that keys, signals and the rest of a packet go on meanwhile. The thread starts the way a
 * command does, from one bundled file: see docs/decisions/0003.
 */
import { Worker } from 'node:worker_threads'
import type { StudyInput, StudyName, StudyResult, StudyWatch } from './studies.js'
import type { Posted, Work } from './work.js'

const START = new URL('../../../scripts/run.mjs', import.meta.url)

export interface RunWatch extends Pick<StudyWatch, 'onProgress'> {
  /** aborting ends the thread at once */
  readonly signal?: AbortSignal
}

/** Null when it was cancelled. What a study throws is thrown here. */
export function runStudy<N extends StudyName>(name: N, input: StudyInput<N>, watch: RunWatch = {}): Promise<StudyResult<N> | null> {
  const { onProgress, signal } = watch
  if (signal?.aborted) return Promise.resolve(null)
  return new Promise((resolve, reject) => {
    const workerData: Work = { name, input }
    const worker = new Worker(START, { argv: ['src/cli/studies/work.ts'], workerData })
    const stop = (): void => {
      resolve(null)
      void worker.terminate()
    }
    signal?.addEventListener('abort', stop, { once: true })
    worker.on('message', (posted: Posted) => {
      if ('progress' in posted) onProgress?.(posted.progress)
      else resolve(posted.result as StudyResult<N>)
    })
    worker.on('error', reject)
    worker.on('exit', () => {
      signal?.removeEventListener('abort', stop)
      reject(new Error(`the study "${name}" ended without a result`))
    })
  })
}
