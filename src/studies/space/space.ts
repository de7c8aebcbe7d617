/** The whole coach in space. What has not changed since it was last asked for is the same object again, so that only the rest is made. */
import type { Subject } from '../../checks/explain/entry.js'
import { gathered } from '../../derive/common/gathered.js'
import type { Design } from '../../derive/design.js'
import type { Derived } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import type { Check, OpeningDerived, Part, PartKind } from '../../derive/nouns.js'
import { apartOf, bodyOf, paneApart, TANK, WHEEL } from './apart.js'
import { barrelMeshes } from './barrel-sheets.js'
import { endMembers } from './end-members.js'
import { endSheets } from './end-sheets.js'
import type { Mesh, Space, SpaceLayer, SpacePart } from './nouns.js'
import { paneCentre, paneMesh } from './panes.js'
import { rivetsInSpace } from './rivets.js'
import { axleMesh, bayMesh, underMesh } from './under-meshes.js'

const LAYER: Partial<Record<PartKind, SpaceLayer>> = {
  strake: 'skin',
  gore: 'skin',
  'crown-cap': 'skin',
  lining: 'lining',
  'end-lining': 'lining',
  'trim-ring': 'lining',
  'floor-panel': 'floor',
  'wheel-box': 'floor',
  rail: 'chassis',
  'cross-member': 'chassis',
  outrigger: 'chassis',
  'wheel-box-header': 'chassis',
  'a-frame': 'chassis',
  'chassis-plate': 'chassis',
  'bay-bearer': 'chassis',
  underbelly: 'chassis',
}

/** Layers outside each; the skin and what hangs free of it have none. */
const UNDER: Partial<Record<SpaceLayer, number>> = { frames: 1, lining: 1, floor: 1, chassis: 1, tanks: 1 }

/** The underbelly lies inside the skin's lower edge, and outside of everything else under the floor. */
const BELLY = 0.5

/** Asked again and again for one coach; keeps what it made. */
export function spaceMaker(): (subject: Subject) => Space {
  const memo = createMemo()
  return ({ design, derived }) => {
    memo.turn()
    const named = gathered(design.checks, ({ concerns }) => concerns)
    const meshes = meshMaker(derived, design)
    const parts: SpacePart[] = []
    const add = (
      key: string,
      inputs: readonly unknown[],
      mesh: () => Mesh | null,
      rest: Omit<SpacePart, 'mesh' | 'margin' | 'under'> & { readonly under?: number },
    ): void => {
      const made = memo.keep(key, inputs, mesh)
      if (made) parts.push({ under: UNDER[rest.layer] ?? 0, ...rest, margin: marginOf(named, [rest.id, rest.thing]), mesh: made })
    }
    for (const part of design.parts)
      add(`part ${part.id}`, [part, ...meshes.inputs(part)], () => meshes.make(part), {
        id: part.id,
        thing: thingOf(part),
        says: part.says,
        layer: LAYER[part.kind] ?? 'frames',
        material: part.material,
        mass: part.mass.value,
        apart: apartOf(design, part),
        ...(part.kind === 'underbelly' ? { under: BELLY } : {}),
      })
    for (const opening of design.openings)
      add(`pane ${opening.id}`, [opening, derived.shell.section], () => paneMesh(derived.shell, opening), {
        id: `pane-${opening.id}`,
        thing: opening.id,
        says: `${opening.id}, ${opening.says}`,
        layer: 'panes',
        ...BOUGHT,
        apart: paneApart(design, paneCentre(derived.shell, opening), opening.end !== undefined),
      })
    const { gear, chassis } = design.under
    for (const { axle } of gear?.tubes ?? [])
      add(`axle ${axle}`, [gear, design.definition.gear], () => axleMesh(design, axle), {
        id: `axle-${axle}`,
        thing: `axle-${axle}`,
        says: `axle ${axle} with its wheels`,
        layer: 'wheels',
        ...BOUGHT,
        apart: WHEEL,
      })
    for (const bay of chassis?.bays ?? [])
      add(`bay ${bay.id}`, [bay.x, bay.y, bay.z].flat(), () => bayMesh(bay), {
        id: `bay-${bay.id}`,
        thing: bay.id,
        says: `${bay.id}, ${bay.says}`,
        layer: 'tanks',
        ...BOUGHT,
        apart: TANK,
      })
    const ids = parts.map(({ id }) => id)
    const { section } = derived.shell
    const { loft } = derived.endSections.local.ground
    const rivets = memo.keep('rivets', [section, loft, ...derived.rows, ...derived.bolts, ids.join()], () =>
      rivetsInSpace(derived, (row, make) => memo.keep(`row ${row.id}`, [row, section, loft], make), ids),
    )
    return { body: bodyOf(design), parts, rivets }
  }
}

/** Not made in the shop and no part of the design's list: its mass is among the masses, under its own name. */
const BOUGHT = { material: null, mass: null } as const

/** What choosing it elsewhere is called: a frame goes by its own name, its part by another. */
function thingOf({ id, kind }: Part): string {
  return kind === 'frame' || kind === 'joint-frame' ? id.replace(/^frame-/, '') : id
}

interface Maker {
  /** what a mesh is made from besides the part */
  readonly inputs: (part: Part) => readonly unknown[]
  readonly make: (part: Part) => Mesh | null
}

function meshMaker(derived: Derived, design: Design): Maker {
  const { shell, endSections } = derived
  const { local } = endSections
  const openingsOf = (end: 'nose' | 'tail'): readonly OpeningDerived[] => design.openings.filter(({ surface }) => surface === end)
  const cache: { barrel?: (part: Part) => Mesh | null; ends?: readonly ((part: Part) => Mesh | null)[] } = {}
  const barrel = (): ((part: Part) => Mesh | null) => (cache.barrel ??= barrelMeshes(shell))
  const ends = (): readonly ((part: Part) => Mesh | null)[] =>
    (cache.ends ??= design.definition.frames.flatMap(({ joint, station }) => {
      if (!joint) return []
      const at = { end: joint, joint: station }
      return [endSheets(local, at, design, openingsOf(joint)), endMembers(local, at, design)]
    }))
  return {
    inputs: (part) => {
      if (part.trade === 'shell') return [shell.section, shell.laid.token]
      if (part.trade === 'ends') return [local, ...openingsOf(part.place.end?.which ?? 'nose')]
      return [design.under]
    },
    make: (part) => {
      if (part.trade === 'shell') return barrel()(part)
      if (part.trade !== 'ends') return underMesh(design, part)
      for (const each of ends()) {
        const mesh = each(part)
        if (mesh) return mesh
      }
      return null
    },
  }
}

type Named = ReadonlyMap<string, readonly Check[]>

/** The least margin of the checks that name one of these. */
function marginOf(named: Named, ids: readonly string[]): number | null {
  const all = [...new Set(ids)].flatMap((id) => named.get(id) ?? [])
  const margins = all.flatMap(({ margin }) => (margin === null ? [] : [margin]))
  return margins.length === 0 ? null : Math.min(...margins)
}
