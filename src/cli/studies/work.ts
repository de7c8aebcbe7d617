/** The thread's own start, by run-study.ts: runs the study it is given and posts how far it is, then what came out. */
import { parentPort, workerData } from 'node:worker_threads'
import { STUDIES, type StudyName, type StudyProgress, type StudyWatch } from './studies.js'

/** What the worker is started with, and what it posts. */
export interface Work {
  readonly name: StudyName
  readonly input: unknown
}
export type Posted = { readonly progress: StudyProgress } | { readonly result: unknown }

if (parentPort) {
  const port = parentPort
  const { name, input } = workerData as Work
  const post = (message: Posted): void => port.postMessage(message)
  // which input goes with which name was settled where the work was handed over
  const study = STUDIES[name] as (input: unknown, watch: StudyWatch) => unknown
  post({ result: await study(input, { onProgress: (progress) => post({ progress }) }) })
}
