/** What is written well but cannot be built. */
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'

export function meaningFaults(_draft: Draft, _reading: Reading): void {}
