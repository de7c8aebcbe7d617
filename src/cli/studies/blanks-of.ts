/** Blanks of a coach's formed ends: from the cache where what they depend on is unchanged, else worked out in the worker and kept. */
import type { Definition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import { FORGETFUL, type Memo } from '../../derive/memo.js'
import { type Blanks, blanksKey } from '../../studies/blanks/compute.js'
import type { BlankStudy } from '../../studies/blanks/nouns.js'
import { blanksInput } from '../../studies/blanks/shape.js'
import { blankStudy } from '../../studies/blanks/study.js'
import { fromCache, intoCache } from './cache.js'
import { type RunWatch, runStudy } from './run-study.js'

/** Null when it was cancelled. The coach's ends must be formed ones. With the memo the coach was derived with, nothing is derived twice. */
export async function blanksOf(definition: Definition, watch: RunWatch = {}, memo: Memo = FORGETFUL): Promise<BlankStudy | null> {
  const derived = derive(definition, memo)
  const input = blanksInput(derived)
  const known = fromCache<Blanks>('blanks', blanksKey(input))
  const blanks = known ?? (await runStudy('blanks', input, watch))
  if (!blanks) return null
  if (!known) intoCache('blanks', blanks)
  return blankStudy(derived, blanks)
}
