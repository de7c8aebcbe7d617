/** Given figures of weight and balance: stated masses and their places, ratings, tanks, stowage. */
import type { Step } from '../../definition/set-in-text.js'
import { field, type Given, type GivenAt, lastOf, type Origins, told, words, writtenAt } from './given-nouns.js'

const STATED = 'as stated'

/** A line of the list by its number, or the thing that stands for it. */
const itemOf = (name: string): number | null => {
  const found = /^(?:weight\.line\.)?item-(\d+)(?: |$)/.exec(name)
  return found ? Number(found[1]) - 1 : null
}

/** What is carried besides what is built in, by what a load case calls it. */
const LOADS: readonly (readonly [RegExp, (id: string) => readonly Step[]])[] = [
  [/^gas$/, () => ['weight', 'gas']],
  [/^tank (.+)$/, (id) => ['weight', 'tanks', { id }]],
  [/^cargo (.+)$/, (id) => ['weight', 'places', { id }]],
  [/^carried (.+)$/, (id) => ['weight', 'carried', { id }]],
  [/^(?:weight\.line\.)?bought-(.+?)(?: .*)?$/, (id) => ['chassis', 'bought', { id }]],
  [/^(?:weight\.line\.)?opening-(.+?)(?: .*)?$/, (id) => ['openings', { id }]],
]

function thingOf(name: string): readonly Step[] | null {
  const item = itemOf(name)
  if (item !== null) return ['masses', item]
  for (const [pattern, steps] of LOADS) {
    const found = pattern.exec(name)
    if (found) return steps(found[1] ?? '')
  }
  return null
}

/** The nearest name on the way that says which thing it is. */
const nearest = ({ path, root }: GivenAt, isIt: (name: string) => boolean): string => [root, ...path].reverse().find(isIt) ?? ''

function statedMass(at: GivenAt): Given {
  const item = itemOf(at.root)
  if (lastOf(at) === 'stated rest' && item !== null) return writtenAt(['masses', item, 'rest'], STATED)
  const thing = thingOf(nearest(at, (name) => thingOf(name) !== null))
  return thing ? writtenAt([...thing, 'mass'], STATED) : told(STATED)
}

const AXES: readonly (readonly [RegExp, string])[] = [
  [/\.station$/, 'station'],
  [/\.buttock$/, 'y'],
  [/\.waterline$/, 'wl'],
]

/** Of `weight.case.D.station > M > CH > item-1 …`; what is derived lies where its parts lie, and its own field does not say so. */
function arm(at: GivenAt): Given {
  const key = AXES.find(([pattern]) => pattern.test(at.root))?.[1]
  const thing = thingOf(lastOf(at))
  const otherwise = 'where its centre comes to lie'
  return key && thing ? writtenAt([...thing, key], otherwise) : told(otherwise)
}

const placeOf = (at: GivenAt): number => {
  const id = nearest(at, (name) => name.startsWith('cargo ')).slice('cargo '.length)
  return at.subject.design.definition.weight?.places.findIndex((each) => each.id === id) ?? -1
}

/** The share of a place in the stowage of the case that is asked for. */
function share(at: GivenAt): Given {
  const growth = /^(?:weight\.line\.)?growth-([A-Z]+)/.exec(at.root)?.[1]
  if (growth) return writtenAt(['weight', 'growth', growth])
  const id = /^weight\.case\.([^.]+)\./.exec(at.root)?.[1]
  const stowage = at.subject.design.definition.weight?.cases.find((each) => each.id === id)?.stowage
  return stowage && placeOf(at) >= 0 ? writtenAt(['weight', 'stowage', { id: stowage }, 'shares', placeOf(at)]) : told('share')
}

function cargo(at: GivenAt): Given {
  const id = /^weight\.case\.([^.]+)\./.exec(at.root)?.[1]
  return id ? writtenAt(['weight', 'cases', { id }, 'cargo'], 'what is carried') : told('what is carried')
}

const COUNTED = words('counted')
const GROSS = field('weight', 'gross')
const track = (): Given => ({
  says: 'twice the y of the wheel',
  written: [{ steps: ['weight', 'track'] }, { steps: ['gear', 'wheel', 'y'], times: 2 }],
})
const tank = (at: GivenAt): Given => {
  const id = nearest(at, (name) => name.startsWith('tank ')).slice('tank '.length)
  return id
    ? { says: 'what it holds', written: [{ steps: ['weight', 'tanks', { id }, 'litres'], times: 1e-3, unit: '1' }] }
    : told('what it holds')
}
const rating = ({ subject }: GivenAt): Given => ({
  says: 'rating of the axle',
  written: (subject.design.definition.weight?.axleRatings ?? []).map((_, i) => ({ steps: ['weight', 'axle ratings', i] })),
})
const fromAxles = words('reckoned from where the axles stand')

export const WEIGHT_GIVEN: Origins = {
  'shell.stated-mass': { m: statedMass },
  'weight.lever': { x: arm },
  'weight.spindle-sum': { '*': (at) => writtenAt(['gear', 'spindles', Number(/\d+$/.exec(at.symbol)?.[0] ?? 1) - 1]) },
  'weight.mean-axle': { n: COUNTED },
  'weight.axle-load': { n: COUNTED },
  'weight.hitch-load': { b: field('weight', 'ball') },
  'weight.right-wheel': { n: COUNTED, t: track },
  'weight.stability': {
    t: track,
    z_g: () => ({ says: 'the ground', written: [{ steps: ['weight', 'ground'] }, { steps: ['gear', 'ground'] }] }),
  },
  'weight.capacity': { G: GROSS },
  'weight.filling': { s: share, G: GROSS },
  'weight.share': { s: share, M: cargo },
  'weight.water': { rho: words('water, 1 kg a litre'), V: tank },
  'weight.height-error': {
    R: rating,
    g: words('standard gravity'),
    k: words('both wheels of an axle, by the springs'),
    x: fromAxles,
    S_1: fromAxles,
    S_2: fromAxles,
  },
  'towing.yaw-inertia': { '*': words('added up over every mass and its place') },
}
