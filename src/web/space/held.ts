/** What the screen holds of the coach in space: asked of the worker, which sends only what has changed since. */

import type { PartSent, SpaceAsked, SpaceSent } from '../../desk/space/sent.js'
import type { Body, Mesh, RivetsInSpace } from '../../studies/space/nouns.js'

export interface PartHeld extends PartSent {
  readonly mesh: Mesh
}

export interface Held {
  readonly body: Body
  readonly parts: readonly PartHeld[]
  readonly rivets: RivetsInSpace
  readonly rivetsVersion: number
  /** by part, at each corner, m; null until they are asked for */
  readonly gaps: ReadonlyMap<string, Float32Array> | null
  /** the most of them, m */
  readonly deepest: number
}

export const askedWith = (held: Held | null, gaps: boolean): SpaceAsked => ({
  have: held ? [...held.parts.map(({ version }) => version), held.rivetsVersion] : [],
  gaps,
})

export function heldWith(before: Held | null, sent: SpaceSent): Held {
  const meshes = new Map([...(before?.parts ?? []).map(({ version, mesh }) => [version, mesh] as const), ...sent.meshes])
  const rivets = sent.rivets ?? before?.rivets
  if (!rivets) throw new Error('the worker sent no rivets')
  const gaps = sent.gaps && new Map(sent.gaps)
  return {
    body: sent.body,
    parts: sent.parts.map((part) => {
      const mesh = meshes.get(part.version)
      if (!mesh) throw new Error(`the worker sent no mesh of ${part.id}`)
      return { ...part, mesh }
    }),
    rivets,
    rivetsVersion: sent.rivetsVersion,
    gaps,
    deepest: gaps ? Math.max(0, ...[...gaps.values()].map((list) => list.reduce((most, v) => Math.max(most, v), 0))) : 0,
  }
}
