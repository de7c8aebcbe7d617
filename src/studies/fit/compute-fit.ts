/** The study of meeting holes as a thread is handed it: a definition in, figures out, kept under the name of what they depend on. */
import { revisionOf } from '../../definition/revision.js'
import type { Definition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import { fitStudy } from './fit-study.js'
import type { FitStudy } from './nouns.js'

export interface FitInput {
  readonly definition: Definition
  readonly trials: number
  readonly seed: number
  /** one joint only, or null for all */
  readonly joint: string | null
}

export interface FitResult {
  readonly key: string
  readonly study: FitStudy
}

interface Watch {
  readonly onProgress?: (progress: { readonly done: number; readonly of: number; readonly says: string }) => void
  readonly cancelled?: () => boolean
}

/** Counted up whenever the same input would give other figures, so that nothing old is taken for new. */
const METHOD = 2

export const fitKey = ({ definition, trials, seed, joint }: FitInput): string =>
  [METHOD, revisionOf(definition), trials, seed, joint === null ? 'all' : encodeURIComponent(joint)].join('-')

/** Null when it was cancelled. Progress is told in whole percents. */
export function computeFit(input: FitInput, watch: Watch = {}): FitResult | null {
  const { definition, trials, seed, joint } = input
  let told = -1
  let stopped = false
  const study = fitStudy(derive(definition), {
    trials,
    seed,
    ...(joint === null ? {} : { joint }),
    onProgress: (done, total) => {
      const percent = Math.floor((100 * done) / total)
      if (percent <= told) return
      told = percent
      watch.onProgress?.({ done: percent, of: 100, says: 'of the hole trials' })
    },
    cancelled: () => {
      stopped = stopped || watch.cancelled?.() === true
      return stopped
    },
  })
  return stopped ? null : Object.freeze({ key: fitKey(input), study })
}
