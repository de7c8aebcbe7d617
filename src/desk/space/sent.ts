/** What goes over to the screen: every part in words, and only those meshes it does not have yet. */
import type { Subject } from '../../checks/explain/entry.js'
import { gapsOf } from '../../studies/space/distance.js'
import type { Body, Mesh, RivetsInSpace, SpacePart } from '../../studies/space/nouns.js'
import { spaceMaker } from '../../studies/space/space.js'

export interface PartSent extends Omit<SpacePart, 'mesh'> {
  /** of its mesh: alike for the same mesh, never for two */
  readonly version: number
}

export interface SpaceSent {
  readonly body: Body
  readonly parts: readonly PartSent[]
  /** by version */
  readonly meshes: readonly (readonly [version: number, mesh: Mesh])[]
  /** null where they are those the screen has */
  readonly rivets: RivetsInSpace | null
  readonly rivetsVersion: number
  /** by part, at each corner of its mesh, m; null where nobody asked */
  readonly gaps: readonly (readonly [part: string, gaps: Float32Array])[] | null
}

/** What the screen holds already, and whether it wants the distances of the gores. */
export interface SpaceAsked {
  readonly have: readonly number[]
  readonly gaps: boolean
}

/** One count for every coach of a desk, since the screen keeps the meshes of the one before until it has the next. */
const VERSIONS = new WeakMap<object, number>()
const count = { last: 0 }

function versionOf(made: object): number {
  const known = VERSIONS.get(made) ?? ++count.last
  VERSIONS.set(made, known)
  return known
}

export function spaceSender(): (subject: Subject, asked: SpaceAsked) => SpaceSent {
  const make = spaceMaker()
  return (subject, { have, gaps }) => {
    const space = make(subject)
    const held = new Set(have)
    const rivetsVersion = versionOf(space.rivets)
    return {
      body: space.body,
      parts: space.parts.map(({ mesh, ...rest }) => ({ ...rest, version: versionOf(mesh) })),
      meshes: space.parts.flatMap(({ mesh }) => (held.has(versionOf(mesh)) ? [] : [[versionOf(mesh), mesh] as const])),
      rivets: held.has(rivetsVersion) ? null : space.rivets,
      rivetsVersion,
      gaps: gaps ? [...gapsOf(subject.derived, space)] : null,
    }
  }
}
