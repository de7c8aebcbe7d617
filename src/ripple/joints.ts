/** Joints that came, went and changed: their layers, their lap, and how many of which length go through which parts. */
import type { Design } from '../derive/design.js'
import { rowsById } from '../derive/holes.js'
import type { FastenerRow, Joint, Stack } from '../derive/nouns.js'
import { same } from '../quantity/same.js'
import { both, bothUnlessSame, isNothing, matched, swap } from './differ.js'
import type { JointChange, Ripple, StackChange } from './nouns.js'

export function jointChanges(before: Design, after: Design): Ripple['joints'] {
  // a joint may keep its words while its rows do not: those are looked at as well
  const { added, removed } = matched(before.joints, after.joints)
  const old = new Map(before.joints.map((j) => [j.id, j]))
  const told = ({ id, says }: Joint) => ({ id, says })
  const changed = after.joints.flatMap((now) => {
    const was = old.get(now.id)
    return was ? (jointChange(before, after, was, now) ?? []) : []
  })
  return { added: added.map(told), removed: removed.map(told), changed }
}

function jointChange(before: Design, after: Design, was: Joint, now: Joint): JointChange | null {
  const change: JointChange = {
    id: now.id,
    says: now.says,
    layers: was === now ? [] : layersOf(was, now),
    lap: bothUnlessSame(was.lap, now.lap),
    rows: swap(was.rows, now.rows),
    stacks: [...new Set([...was.rows, ...now.rows])].flatMap((id) =>
      stackChanges(rowsById(before.rows).get(id), rowsById(after.rows).get(id)),
    ),
  }
  const stays = change.layers.length === 0 && change.lap === null && isNothing(change.rows) && change.stacks.length === 0
  return stays && was.says === now.says ? null : change
}

function layersOf(was: Joint, now: Joint): JointChange['layers'] {
  const [old, layers] = [was, now].map((joint) => new Map(joint.layers.map((layer) => [layer.says, layer])))
  return [...new Set([...old.keys(), ...layers.keys()])].flatMap((says) => {
    const [a, b] = [old.get(says), layers.get(says)]
    const change = {
      says,
      parts: swap(a?.parts ?? [], b?.parts ?? []),
      material: bothUnlessSame(a?.material ?? null, b?.material ?? null),
      thickness: bothUnlessSame(a?.thickness ?? null, b?.thickness ?? null),
    }
    return isNothing(change.parts) && change.material === null && change.thickness === null ? [] : [change]
  })
}

function stackChanges(was: FastenerRow | undefined, now: FastenerRow | undefined): readonly StackChange[] {
  if (was === now) return []
  const [old, stacks] = [was, now].map((row) => byThrough(row?.stacks ?? []))
  const row = (now ?? was)?.id ?? ''
  return [...new Set([...old.keys(), ...stacks.keys()])].flatMap((key) => {
    const [a, b] = [old.get(key) ?? null, stacks.get(key) ?? null]
    if (same(a?.count, b?.count) && a?.name === b?.name && same(a?.grip, b?.grip)) return []
    return [
      {
        row,
        through: (b ?? a)?.parts ?? [],
        count: both(a?.count ?? 0, b?.count ?? 0),
        length: both(a?.name ?? null, b?.name ?? null),
        grip: both(a?.grip ?? null, b?.grip ?? null),
      },
    ]
  })
}

/** A stack is known by the parts it goes through; were there two of the same parts, the second goes by its place. */
function byThrough(stacks: readonly Stack[]): ReadonlyMap<string, Stack> {
  const out = new Map<string, Stack>()
  for (const stack of stacks) {
    const key = stack.parts.join(' ')
    out.set(out.has(key) ? `${key} ${out.size}` : key, stack)
  }
  return out
}
