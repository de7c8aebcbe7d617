/** The thread that tries the joints, started by run-fit.ts: a design is derived again here, because a thread is handed data only. */
import { parentPort, workerData } from 'node:worker_threads'
import { derive } from '../derive/index.js'
import { fitStudy } from '../studies/fit/fit-study.js'
import type { FitOrder, FitReply } from './run-fit.js'

const { definition, options } = workerData as FitOrder
const say = (reply: FitReply): void => parentPort?.postMessage(reply)
let told = 0
const study = fitStudy(derive(definition), {
  ...options,
  onProgress: (done, total) => {
    const percent = Math.floor((100 * done) / total)
    if (percent > told) {
      told = percent
      say({ percent })
    }
  },
})
say({ study })
