/**
 * The frozen revisions of a coach on the desk, and any two states of it compared: as it is now, as it was opened, as it stands on
 * the disk, as it was frozen. A frozen revision is text; it is read and derived when somebody asks for it, and kept a while.
 */
import { readDefinition } from '../definition/read-definition.js'
import type { Definition } from '../definition/types.js'
import type { Written } from '../definition/written.js'
import type { Design } from '../derive/design.js'
import type { UnitSystem } from '../quantity/format.js'
import { compare } from '../ripple/compare.js'
import type { RippleOptions } from '../ripple/documents.js'
import type { Ripple } from '../ripple/nouns.js'
import { rippleLines, rippleText } from '../ripple/ripple-text.js'
import type { FrozenRevision, RippleLineShown, RippleShown, SideId } from './nouns.js'
import { rippleLine } from './ripple-line.js'

/** A state of the coach, read and derived. */
export interface Standing {
  readonly name: string
  readonly text: string
  readonly design: Design
  readonly merged: Written | null
}

/** What the book needs of the coach it is about. */
export interface Bound {
  readonly path: string
  readonly files: Readonly<Record<string, string>>
  readonly now: () => Standing
  /** sharing with the coach as it is now whatever is the same */
  readonly derive: (definition: Definition) => Design
}

export interface Revisions {
  readonly all: () => readonly FrozenRevision[]
  /** what edits are compared with */
  readonly baseline: () => SideId
  readonly nameOf: (side: SideId) => string
  readonly freeze: (name: string, when: string) => FrozenRevision
  /** revisions a screen has kept; the last of them is what edits are compared with */
  readonly keep: (kept: readonly FrozenRevision[]) => void
  /** the text on the disk is this one now */
  readonly saved: (text: string) => void
  /** a sentence where it does not read any more */
  readonly standing: (side: SideId) => Standing | string
  readonly compare: (from: SideId, to: SideId, units: UnitSystem) => RippleShown | string
  readonly ripple: (from: SideId, to: SideId, units: UnitSystem) => Ripple | string
}

/** So many are held ready; a design is some megabytes. */
const READY = 4

/** The same object every time, so that what was worked out for it is found again. */
const PACKETS: Readonly<Record<UnitSystem, RippleOptions>> = { metric: { units: 'metric' }, inch: { units: 'inch' } }

export function revisionsOf(bound: Bound): Revisions {
  const { path, files } = bound
  const opened: Standing = { ...bound.now(), name: `revision ${bound.now().design.revision}` }
  let onDisk = files[path] ?? ''
  let frozen: readonly FrozenRevision[] = []
  const ready = new Map<string, Standing>()

  const hold = (key: string, standing: Standing): Standing => {
    ready.delete(key)
    ready.set(key, standing)
    const [oldest] = ready.keys()
    if (ready.size > READY && oldest !== undefined) ready.delete(oldest)
    return standing
  }
  const read = (key: string, name: string, of: Readonly<Record<string, string>>): Standing | string => {
    const known = ready.get(key)
    if (known) return hold(key, known)
    const text = of[path] ?? ''
    const { definition, faults, merged } = readDefinition(path, text, (other) => of[other] ?? null)
    if (!definition) return `${name} does not read: line ${faults[0]?.line}, ${faults[0]?.says}`
    return hold(key, { name, text, design: bound.derive(definition), merged })
  }
  const standing = (side: SideId): Standing | string => {
    const now = bound.now()
    if (side === 'now') return now
    if (side === 'opened') return opened
    if (side === 'disk') return onDisk === now.text ? { ...now, name: DISK } : read(`disk ${onDisk}`, DISK, { ...files, [path]: onDisk })
    const one = frozen.find(({ id }) => id === side)
    return one ? read(one.id, one.name, one.files) : 'That revision is not kept here any more.'
  }
  const ripple = (from: SideId, to: SideId, units: UnitSystem): Ripple | string => {
    const [a, b] = [standing(from), standing(to)]
    if (typeof a === 'string') return a
    return typeof b === 'string' ? b : compare(a.design, b.design, PACKETS[units])
  }
  const nameOf = (side: SideId): string =>
    ({ now: 'the coach as it is now', opened: opened.name, disk: DISK })[side] ?? frozen.find(({ id }) => id === side)?.name ?? side
  return {
    all: () => frozen,
    baseline: () => frozen.at(-1)?.id ?? 'opened',
    nameOf,
    freeze: (name, when) => {
      const now = bound.now()
      const { revision } = now.design
      const one = Object.freeze({
        id: `${revision} ${frozen.length + 1}`,
        name: name || `revision ${revision}`,
        revision,
        when,
        files: { ...files, [path]: now.text },
      })
      frozen = [...frozen, one]
      hold(one.id, { ...now, name: one.name })
      return one
    },
    keep: (kept) => {
      frozen = kept
    },
    saved: (text) => {
      onDisk = text
    },
    standing,
    ripple,
    compare: (from, to, units) => {
      const found = ripple(from, to, units)
      if (typeof found === 'string') return found
      const [since, until] = [nameOf(from), to === 'now' ? null : nameOf(to)]
      return {
        ...{ since, until, line: rippleLine(found, since, until) },
        lines: counted(found, units),
        text: rippleText(found, units),
      }
    },
  }
}

const DISK = 'the file on the disk'

/** Each heading with how many lines stand under it. */
function counted(ripple: Ripple, units: UnitSystem): readonly RippleLineShown[] {
  const lines = rippleLines(ripple, units, true)
  return lines.map((line, i) => {
    if (line.indent > 0) return { ...line, count: null }
    const next = lines.findIndex((other, k) => k > i && other.indent === 0)
    const under = lines.slice(i + 1, next < 0 ? lines.length : next).filter(({ indent }) => indent === 1).length
    return { ...line, count: under }
  })
}
