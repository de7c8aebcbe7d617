/** Where each given figure of a working comes from. A figure that is not on the list is said to be handed on by the derivation. */
import type { Given, GivenAt, Origins } from './given-nouns.js'
import { SHELL_GIVEN } from './given-shell.js'
import { UNDER_GIVEN } from './given-under.js'
import { WEIGHT_GIVEN } from './given-weight.js'

const ORIGINS: Origins = { ...SHELL_GIVEN, ...UNDER_GIVEN, ...WEIGHT_GIVEN }

export function givenOf(at: GivenAt): Given {
  const of = ORIGINS[at.formula]
  const origin = of?.[at.symbol] ?? of?.['*']
  return origin?.(at) ?? { says: UNNAMED, written: [] }
}

/** For what nobody has named yet; a test looks for it. */
export const UNNAMED = 'handed on by the derivation'
