/** Parts that came, went and changed, those with the most to scrap first. */
import type { Design } from '../derive/design.js'
import type { Part } from '../derive/nouns.js'
import { same } from '../quantity/same.js'
import { bothUnlessSame, isNothing, matched, swap } from './differ.js'
import { faceChange, lonelyFace, mostMoved } from './faces.js'
import type { FaceChange, PartChange, PartTold, Ripple } from './nouns.js'

export function partChanges(before: Design, after: Design): Ripple['parts'] {
  const { added, removed, kept } = matched(before.parts, after.parts)
  return {
    added: added.map(told),
    removed: removed.map(told),
    changed: kept.flatMap(([was, now]) => partChange(before, after, was, now) ?? []).sort(mostScrapFirst),
  }
}

const told = ({ id, says, kind, side, place, material, thickness, mass }: Part): PartTold => ({
  id,
  says,
  kind,
  side,
  place,
  material,
  thickness: thickness.name,
  mass: mass.value,
})

function partChange(before: Design, after: Design, was: Part, now: Part): PartChange | null {
  const faces = facesOf(before, after, was, now)
  const change: PartChange = {
    id: now.id,
    says: now.says,
    kind: now.kind,
    side: now.side,
    material: bothUnlessSame(was.material, now.material),
    thickness: same(was.thickness, now.thickness) ? null : { before: was.thickness.name, after: now.thickness.name },
    stock: bothUnlessSame(was.stock, now.stock),
    pieces: bothUnlessSame(was.pieces, now.pieces),
    mass: bothUnlessSame(was.mass.value, now.mass.value),
    centre: same(was.centre, now.centre) ? null : Math.hypot(...now.centre.map((x, i) => x - was.centre[i])),
    place: bothUnlessSame(was.place, now.place),
    faces,
    notes: swap(was.notes, now.notes),
    called: bothUnlessSame(was.says, now.says),
    most: Math.max(0, ...faces.map(mostMoved)),
  }
  return isSame(change) ? null : change
}

const isSame = (c: PartChange): boolean =>
  [c.material, c.thickness, c.stock, c.pieces, c.mass, c.centre, c.place, c.called].every((each) => each === null) &&
  c.faces.length === 0 &&
  isNothing(c.notes)

function facesOf(before: Design, after: Design, was: Part, now: Part): readonly FaceChange[] {
  if (was.patterns === now.patterns) return []
  const old = new Map(was.patterns.map((p) => [p.face, p]))
  const kept = now.patterns.flatMap((pattern) => {
    const twin = old.get(pattern.face)
    old.delete(pattern.face)
    return (twin ? faceChange(before, after, twin, pattern) : lonelyFace(pattern, 'added')) ?? []
  })
  return [...kept, ...[...old.values()].map((pattern) => lonelyFace(pattern, 'removed'))]
}

/** Holes and cuts that came or went cannot be undone in a sheet; what moved is next, then what only weighs or is called otherwise. */
export function scrap(change: PartChange): number {
  const counts = change.faces.map(
    (f) => f.holes.reduce((sum, h) => sum + h.added + h.removed, 0) + 100 * f.cuts.filter((c) => c.status !== 'changed').length,
  )
  return (change.pieces ? 1000 : 0) + counts.reduce((a, b) => a + b, 0)
}

function mostScrapFirst(a: PartChange, b: PartChange): number {
  return scrap(b) - scrap(a) || b.most - a.most || (a.id < b.id ? -1 : 1)
}
