/**
 * The mass schedule: every stated item, or the derived parts that stand in its stead, or a part the list does not know; each
 * thing once. A stated item gives way only when everything named as its twin is derived: half of a twin would lose the rest.
 */
import type { MassDefinition, MassGroup, WeightDefinition } from '../../definition/weight-types.js'
import type { Worked } from '../../quantity/formula.js'
import { gathered } from '../common/gathered.js'
import { massTotal, statedMass } from '../common/mass.formulas.js'
import type { Memo } from '../memo.js'
import type { MassReach } from '../road-nouns.js'
import type { MassLine, Twice, Twin, Twinned } from '../weight-nouns.js'
import { middle } from './middle.js'
import { sameTwice, statedToo } from './twice.js'
import { shareOf } from './weight.formulas.js'

export interface LinesInput {
  readonly masses: readonly MassDefinition[]
  readonly listOnly: boolean
  readonly growth: WeightDefinition['growth']
  readonly twins: readonly Twin[]
  readonly axle: number
  /** how far stated items reach along and across, by name */
  readonly reach: ReadonlyMap<string, { readonly along: number; readonly across: number }>
}

export interface Lines {
  readonly lines: readonly MassLine[]
  readonly twinned: readonly Twinned[]
  readonly twice: readonly Twice[]
}

const GROWTH = 'growth'

export function linesOf(input: LinesInput, memo: Memo): Lines {
  const { masses, listOnly } = input
  const byWord = listOnly ? new Map<string, readonly Twin[]>() : gathered(input.twins, ({ words }) => words)
  const grows = !listOnly && input.growth !== null
  const taken = new Set<Twin>()
  const [lines, twinned, twice]: [MassLine[], Twinned[], Twice[]] = [[], [], []]
  masses.forEach((each, i) => {
    const isGrowth = each.twins.includes(GROWTH)
    const words = each.twins.filter((word) => word !== GROWTH)
    const missing = listOnly ? [] : [...words.filter((word) => !byWord.has(word)), ...(isGrowth && !grows ? [GROWTH] : [])]
    // a thing that goes by several of the words stands once
    const found = words.length === 1 ? (byWord.get(words[0]) ?? []) : [...new Set(words.flatMap((word) => byWord.get(word) ?? []))]
    const again = found.filter((twin) => taken.has(twin))
    for (const twin of again)
      twice.push({ says: `${each.item}: ${twin.says} stands for another item of the list already`, at: middle(twin.points) })
    for (const twin of found) taken.add(twin)
    const reach = input.reach.get(each.item)
    // only what has no station of its own follows the axles
    const on = [each, each.station ?? input.axle, reach]
    const note = { item: each.item, group: each.group, stated: each.mass, missing }
    if (each.twins.length > 0 && !listOnly && missing.length === 0) {
      if (isGrowth) return
      const own = again.length === 0 ? found : found.filter((twin) => !again.includes(twin))
      const line = memo.keep(`mass of item ${i + 1}`, [...on, ...own], () => inStead(each, i, own, input))
      lines.push(line)
      twinned.push({ ...note, derived: line.mass.value })
      return
    }
    if (missing.length > 0) twinned.push({ ...note, derived: null })
    lines.push(memo.keep(`mass of item ${i + 1}`, on, () => statedLine(each, i, input)))
  })
  const untaken = listOnly ? [] : input.twins.filter((twin) => !taken.has(twin))
  lines.push(...memo.each('masses of derived things', [], untaken, lineOf))
  const same = sameTwice(lines)
  // a thing of one name at one place is said once
  twice.push(...same, ...statedToo(masses, untaken).filter((each) => !same.some(({ says }) => each.says.startsWith(`${says}, `))))
  return { lines: grows && input.growth ? [...lines, ...growthLines(lines, input.growth, masses, memo)] : lines, twinned, twice }
}

function pointOf(each: MassDefinition, mass: number, { axle, reach }: LinesInput): MassReach {
  const { along = 0, across = 0 } = reach.get(each.item) ?? {}
  return { mass, x: each.station ?? axle, y: each.y, z: each.waterline, along, across }
}

function statedLine(each: MassDefinition, i: number, input: LinesInput): MassLine {
  const point = pointOf(each, each.mass, input)
  return {
    id: `item-${i + 1}`,
    says: each.item,
    group: each.group,
    by: each.by,
    mass: statedMass({ m: each.mass }),
    centre: [point.x, point.y, point.z],
    points: [point],
    count: 1,
    rest: 0,
    stated: each.mass,
  }
}

function inStead(each: MassDefinition, i: number, twins: readonly Twin[], input: LinesInput): MassLine {
  const terms: Record<string, Worked<'kg'>> = {}
  const points: MassReach[] = []
  for (const twin of twins) {
    terms[twin.id] = twin.mass
    points.push(...twin.points)
  }
  if (each.rest > 0) {
    terms['stated rest'] = statedMass({ m: each.rest })
    points.push(pointOf(each, each.rest, input))
  }
  return {
    id: `item-${i + 1}`,
    says: each.item,
    group: each.group,
    by: twins.length > 0 && twins.every((twin) => twin.by === 'bought') ? 'bought' : 'derived',
    mass: massTotal(terms),
    centre: middle(points),
    points,
    count: twins.length,
    rest: each.rest,
    stated: each.mass,
  }
}

function lineOf({ id, says, group, by, mass, points }: Twin): MassLine {
  return { id, says, group, by, mass, centre: middle(points), points, count: 1, rest: 0, stated: null }
}

/** Growth of a group lies where the group lies: each of its points grows by the share. What is weighed does not grow. */
function growthLines(
  lines: readonly MassLine[],
  growth: NonNullable<WeightDefinition['growth']>,
  masses: readonly MassDefinition[],
  memo: Memo,
): MassLine[] {
  const stated = masses.find((each) => each.twins.includes(GROWTH))?.mass ?? null
  const all = lines.reduce((sum, line) => sum + line.mass.value, 0)
  return (Object.keys(growth) as (keyof typeof growth)[]).flatMap((group) => {
    const share = growth[group]
    const own = lines.filter((line) => line.group === group && line.by !== 'weighed')
    if (share === 0 || own.length === 0) return []
    const { grown, of } = memo.keep(`growth of ${group}`, [share, ...own], () => grownBy(share, group, own))
    return [{ ...grown, stated: stated === null ? null : (stated * of) / all }]
  })
}

function grownBy(
  share: number,
  group: MassGroup,
  own: readonly MassLine[],
): { readonly grown: Omit<MassLine, 'stated'>; readonly of: number } {
  const of = massTotal(Object.fromEntries(own.map((line) => [`${line.id} ${line.says}`, line.mass])))
  const points = own.flatMap((line) =>
    line.points.map(({ mass, x, y, z, along, across }) => ({ mass: mass * share, x, y, z, along, across })),
  )
  return {
    of: of.value,
    grown: {
      ...{ id: `growth-${group}`, says: `growth of ${group}, ${Number((share * 100).toFixed(4))} %`, group: 'GR', by: 'derived' },
      ...{ mass: shareOf({ s: share, M: of }), centre: middle(points), points, count: 1, rest: 0 },
    },
  }
}
