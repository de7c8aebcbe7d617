/** The written form of a new coach: the whole of its pattern's, with every station, girth and list that follows from length or section put anew. */
import type { Definition } from '../../definition/types.js'
import { growthOf, masses, reaches, stood } from './borrowed.js'
import { type Change, lengthBy, metres, mm } from './change.js'
import { type Door, doorOf } from './door.js'
import { strakesOf } from './strakes.js'
import { type Branch, isBranch, type Tree, word } from './tree.js'
import { bayTree, crossMembers, litresIn, tankBays } from './under.js'

export interface Layout {
  readonly name: string
  readonly change: Change
  readonly spindles: readonly number[]
  /** whether members and tanks are placed round the axles, or left out to see where these may stand */
  readonly isWhole: boolean
  /** the section's own written form; null where it is the pattern's */
  readonly section: Branch | null
}

const branch = (tree: Tree | undefined): Branch => (isBranch(tree) ? tree : {})
const items = (tree: Tree | undefined): readonly Branch[] => (Array.isArray(tree) ? tree.filter(isBranch) : [])
/** Where there was such a group, that group changed. */
const within = (tree: Branch, key: string, by: (group: Branch) => Branch): Branch =>
  isBranch(tree[key]) ? { ...tree, [key]: by(branch(tree[key])) } : tree

export function laidOut(pattern: Tree, definition: Definition, layout: Layout): Branch {
  const { change, spindles, name, section } = layout
  const last = change.frames.length - 1
  const door = doorOf(definition, change)
  let tree = branch(pattern)
  tree = within(tree, 'coach', (coach) => ({ ...coach, name: word(name) }))
  if (section) tree = { ...tree, section }
  tree = {
    ...tree,
    frames: change.frames.map((station, i) => ({
      id: `F${i + 1}`,
      station: mm(station),
      ...(i === 0 ? { joint: 'nose' } : i === last ? { joint: 'tail' } : {}),
    })),
    openings: door
      ? items(tree.openings)
          .filter((each) => each.id === door.id)
          .map((each) => ({
            ...each,
            station: mm(door.station),
            wl: lengthBy(each.wl, door.lower),
            height: lengthBy(each.height, door.lower),
          }))
      : [],
  }
  tree = within(tree, 'shell', (shell) => strakesOf(shell, definition, change))
  tree = within(tree, 'lining', (lining) => ({ ...lining, seams: girths(lining.seams, change), joints: liningJoints(definition, last) }))
  tree = within(tree, 'ends', (ends) => endsOf(ends, change))
  tree = within(tree, 'gear', (gear) => gearOf(gear, change, spindles))
  tree = within(tree, 'floor', (floor) => floorOf(floor, change))
  return underneath(tree, definition, layout, door)
}

const girths = (seams: Tree | undefined, { girth }: Change): Tree =>
  items(seams).map((seam) => ({ ...seam, girth: lengthBy(seam.girth, (g) => g * girth) }))

/** Lining panels are as many bays long as those of the pattern. */
function liningJoints({ lining, frames }: Definition, last: number): Tree {
  const ids = frames.map(({ id }) => id)
  const first = lining.joints.length > 0 ? ids.indexOf(lining.joints[0]) : 0
  if (first <= 0) return []
  return Array.from({ length: last }, (_, i) => i)
    .filter((i) => i > 0 && i % first === 0)
    .map((i) => `F${i + 1}`)
}

/** The profile grows and shrinks as a whole, so that it still ends at the toe. */
const endsOf = (ends: Branch, { height }: Change): Branch => ({
  ...ends,
  cap: lengthBy(ends.cap, (m) => m * height),
  profile: items(ends.profile).map((piece) => ({
    ...piece,
    ...(piece.radius === undefined ? {} : { radius: scaled(piece.radius, height) }),
    ...(piece.length === undefined ? {} : { length: scaled(piece.length, height) }),
  })),
})

/** A radius is kept to the hundredth, or the profile would end off the toe. */
function scaled(tree: Tree, by: number): Tree {
  const m = metres(tree)
  return m === null || by === 1 ? tree : `${Number((m * by * 1000).toFixed(2))} mm`
}

/** Wheels stand as far inside the skin as before. */
const gearOf = (gear: Branch, { wider }: Change, spindles: readonly number[]): Branch => {
  const out = (tree: Tree | undefined): Tree => lengthBy(tree ?? '', (m) => m + wider)
  const tree: Branch = { ...gear, spindles: spindles.map(mm) }
  const wheels = within(tree, 'wheel', (wheel) => ({ ...wheel, y: out(wheel.y) }))
  return within(wheels, 'wheel box', (box) => ({ ...box, inner: out(box.inner) }))
}

const floorOf = (floor: Branch, { wider, height }: Change): Branch => ({
  ...floor,
  'half width': lengthBy(floor['half width'], (m) => m + wider),
  'end reach': lengthBy(floor['end reach'], (m) => m * height),
  ...(floor.openings === undefined ? {} : { openings: [] }),
})

function underneath(tree: Branch, definition: Definition, layout: Layout, door: Door | null): Branch {
  const { change, spindles, isWhole } = layout
  // what belongs to the door goes with it, wherever the frames go
  const things: Change = {
    ...change,
    stationOf: (x) => (door && Math.abs(x - door.was) < 1e-3 ? door.station : change.stationOf(x)),
  }
  const members = crossMembers(definition, change, isWhole ? spindles : null)
  const bays = isWhole ? tankBays(definition, change, members, spindles) : []
  const barrel = definition.frames.length > 0 ? (definition.frames.at(-1)?.station ?? 0) - definition.frames[0].station : 0
  const extents = branch(tree.towing).extents
  const growth = growthOf(extents, barrel, change)
  const weighed = masses(tree.masses, door ? [door.id] : [], growth, things)
  const named = new Set(weighed.map(({ item }) => String(item)))
  let out: Branch = tree.masses === undefined ? tree : { ...tree, masses: weighed }
  out = within(out, 'chassis', (chassis) => ({
    ...within(chassis, 'outrigger', (arm) => ({ ...arm, reach: lengthBy(arm.reach, (m) => m + change.wider) })),
    'cross-members': members.map(mm),
    ...(chassis.plates === undefined ? {} : { plates: stood(chassis.plates, { ...things, beam: 1 }) }),
    ...(chassis.bought === undefined ? {} : { bought: stood(chassis.bought, { ...things, beam: 1 }) }),
    ...(chassis.bays === undefined
      ? {}
      : { bays: bays.map((bay) => bayTree(bay, items(chassis.bays).find((each) => each.id === bay.was.id) ?? {})) }),
  }))
  out = within(out, 'weight', (weight) => ({
    ...weight,
    ...(weight.tanks === undefined
      ? {}
      : {
          tanks: items(weight.tanks).flatMap(({ station, ...tank }) => {
            const bay = bays.find((each) => each.was.id === tank.bay)
            return bay ? [{ ...tank, litres: String(litresIn(bay, Number(tank.litres))) }] : []
          }),
        }),
    ...(weight.places === undefined
      ? {}
      : { places: items(weight.places).flatMap((each) => (each.from ? [each] : stood([each], things))) }),
    ...(isBranch(weight.lift) ? { lift: { ...weight.lift, fore: 'F2', aft: `F${change.frames.length - 1}` } } : {}),
  }))
  return within(out, 'towing', (towing) => ({
    ...towing,
    ...(extents === undefined ? {} : { extents: reaches(extents, named, barrel, definition.floor?.halfWidth ?? 0, change) }),
  }))
}
