/** Will the holes meet: from the cache where the coach, the trials and the seed are unchanged, else tried in the worker and kept. */
import { type FitInput, type FitResult, fitKey } from '../../studies/fit/compute-fit.js'
import type { FitStudy } from '../../studies/fit/nouns.js'
import { fromCache, intoCache } from './cache.js'
import { type RunWatch, runStudy } from './run-study.js'

/** Null when it was cancelled. */
export async function fitOf(input: FitInput, watch: RunWatch = {}): Promise<FitStudy | null> {
  const known = fromCache<FitResult>('fit', fitKey(input))
  const result = known ?? (await runStudy('fit', input, watch))
  if (!result) return null
  if (!known) intoCache('fit', result)
  return result.study
}
