/** The study of meeting holes in a thread of its own, so that progress is shown and a packet can be drawn meanwhile. */
import { Worker } from 'node:worker_threads'
import type { Definition } from '../definition/types.js'
import type { FitOptions } from '../studies/fit/fit-study.js'
import type { FitStudy } from '../studies/fit/nouns.js'

export interface FitOrder {
  readonly definition: Definition
  readonly options: Pick<FitOptions, 'trials' | 'seed' | 'joint'>
}

export type FitReply = { readonly percent: number } | { readonly study: FitStudy }

/** The same way a command is started, so that the thread runs from one bundled file too: see docs/decisions/0003. */
const START = new URL('../../scripts/run.mjs', import.meta.url)

/** Rejects with what the thread threw, or with the signal's reason when it is aborted. */
export function runFit(order: FitOrder, onPercent?: (percent: number) => void, signal?: AbortSignal): Promise<FitStudy> {
  return new Promise((resolve, reject) => {
    signal?.throwIfAborted()
    const worker = new Worker(START, { argv: ['src/cli/fit-worker.ts'], workerData: order })
    const onAbort = (): void => {
      reject(signal?.reason)
      void worker.terminate()
    }
    signal?.addEventListener('abort', onAbort, { once: true })
    worker.on('message', (reply: FitReply) => {
      if ('study' in reply) resolve(reply.study)
      else onPercent?.(reply.percent)
    })
    worker.on('error', reject)
    worker.on('exit', () => {
      signal?.removeEventListener('abort', onAbort)
      reject(new Error('the thread that tries the joints ended without an answer'))
    })
  })
}
