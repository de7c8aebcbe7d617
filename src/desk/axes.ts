import type { Look } from './nouns.js'

/** Sideways and up on a drawing are station and waterline, in plan station and across, from nose and tail across and waterline. */
export function axesOf(look: Look): { readonly x: 'station' | 'across'; readonly y: 'waterline' | 'across' } {
  if (look === 'plan') return { x: 'station', y: 'across' }
  return { x: look === 'nose' || look === 'tail' ? 'across' : 'station', y: 'waterline' }
}
