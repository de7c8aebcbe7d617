/** One thing written plainly wrong in a written coach: as a slip of the pen, a wrong unit, or nonsense. */
import type { Chance } from './random.js'

type Tree = Record<string, unknown> | unknown[]

const NONSENSE = [
  '',
  '0 mm',
  '-25 mm',
  '1e9 mm',
  '25',
  25,
  0,
  -1,
  null,
  'banana',
  '25 parsecs',
  '1/0 in',
  '22 1/2 1/2 in',
  'NaN mm',
  'Infinity mm',
  [],
  {},
  [[]],
  { at: '1 mm' },
  '12 deg',
  '400 deg',
  '-3 deg',
  'true',
  false,
  '48 in x',
  'x',
  '48 in x 0 in',
  'fit',
  'none',
  '2026-02-30',
  '０ mm',
  '9'.repeat(80),
  '\u0007',
] as const

/** Changes the tree it is given. */
export function spoil(c: Chance, coach: Tree): void {
  const places = leaves(coach)
  const { inside, key } = c.pick(places)
  const how = c.whole(0, 9)
  if (how <= 6) put(inside, key, structuredClone(c.pick(NONSENSE)))
  else if (how === 7) remove(inside, key)
  else if (how === 8 && !Array.isArray(inside)) inside[`${String(key)}x`] = '1 mm'
  else if (Array.isArray(inside)) inside.push(structuredClone(inside[Number(key)]))
  else put(inside, key, { ...inside })
}

interface Spot {
  readonly inside: Tree
  readonly key: string | number
}

/** Every value of the tree, branches among them. */
function leaves(tree: Tree): Spot[] {
  return Object.entries(tree).flatMap(([key, value]) => {
    const here: Spot = { inside: tree, key }
    return value !== null && typeof value === 'object' ? [here, ...leaves(value as Tree)] : [here]
  })
}

function put(tree: Tree, key: string | number, value: unknown): void {
  ;(tree as Record<string, unknown>)[key] = value
}

function remove(tree: Tree, key: string | number): void {
  if (Array.isArray(tree)) tree.splice(Number(key), 1)
  else delete tree[String(key)]
}
