/** The gores of an end laid flat in a row, coloured by their distance from the mould line or by their strain. */
import type { Subject } from '../../checks/explain/entry.js'
import { gorePart } from '../../derive/end-names.js'
import type { Part, WrappedGoreFacts } from '../../derive/nouns.js'
import { fixed, lengthWords } from '../../documents/drawing/units.js'
import { flatten } from '../../documents/drawing/view.js'
import type { UnitSystem } from '../../quantity/format.js'
import { type Blanks, blanksKey } from '../../studies/blanks/compute.js'
import type { FormedBlank } from '../../studies/blanks/nouns.js'
import { blanksInput } from '../../studies/blanks/shape.js'
import { blankStudy } from '../../studies/blanks/study.js'
import { distanceFields } from '../../studies/gores/distance-field.js'
import { seenAt } from '../answer.js'
import type { GoreFlat, GoresFigure } from './nouns.js'

type End = GoresFigure['end']

/** Values at the nodes of a net over a flat pattern. */
interface Field {
  readonly across: number
  readonly along: number
  readonly x: readonly number[]
  readonly y: readonly number[]
  readonly value: readonly number[]
}

/** What a gore is drawn from. */
interface Drawn {
  readonly part: Part
  readonly number: number
  readonly outline: Part['patterns'][number]['outline'] | null
  readonly holes: { readonly x: readonly number[]; readonly y: readonly number[] }
  readonly field: Field | null
  readonly figures: GoreFlat['figures']
  readonly why: string | null
}

/** `blanks` are those of this coach, worked out beside; without them formed gores say so, and what their blanks hang on. */
export function goresFigure(subject: Subject, end: End, blanks: Blanks | null, units: UnitSystem): GoresFigure {
  const { make } = subject.derived.definition.ends
  const measure = make === 'wrapped' ? 'Distance inside the mould line' : 'Greatest stretch'
  const input = make === 'formed' ? blanksInput(subject.derived) : null
  const key = input && blanksKey(input)
  const isDone = make === 'wrapped' || blanks?.key === key
  const drawn = make === 'wrapped' ? wrappedGores(subject, end, units) : formedGores(subject, end, isDone ? blanks : null, units)
  const levels = levelsOf(drawn, make === 'wrapped' && units === 'inch' ? INCH : 1)
  return {
    ...{ end, make, measure },
    bands: bandWords(levels, make === 'wrapped' ? (value) => lengthWords(value, units) : (value) => `${fixed(value * 100, 1)} %`),
    gores: drawn.map((each) => flatOf(subject, each, levels)),
    needs: input && key !== null && !isDone ? { key, input } : null,
  }
}

const goreParts = ({ derived, design }: Subject, end: End): readonly { readonly part: Part; readonly number: number }[] =>
  derived.ends.edges.slice(1).flatMap((_, i) => {
    const part = design.parts.find(({ id }) => id === gorePart(end, i + 1))
    return part ? [{ part, number: i + 1 }] : []
  })

function wrappedGores(subject: Subject, end: End, units: UnitSystem): readonly Drawn[] {
  const fields = distanceFields(subject.derived, end)
  return goreParts(subject, end).map(({ part, number }) => {
    const facts = subject.derived.ends.wrapped?.find((each) => each.gore === number)
    const [pattern] = part.patterns
    return {
      ...{ part, number, outline: pattern?.outline ?? null, holes: pattern?.holes ?? NONE },
      field: fields.find((each) => each.part === part.id) ?? null,
      figures: facts ? wrappedFigures(facts, units) : [],
      why: facts?.refused ?? part.notComputed ?? null,
    }
  })
}

const NONE = { x: [], y: [] } as const

function wrappedFigures({ drop, bend, crease, inside, kinks, elastic }: WrappedGoreFacts, units: UnitSystem): GoreFlat['figures'] {
  const size = (m: number): string => lengthWords(m, units)
  const turn = (angle: number): string => `${fixed((angle * 180) / Math.PI, 1)}°`
  const at = (waterline: number): string => `at WL ${fixed(waterline * 1000, 0)}`
  const kink = (side: 'right' | 'left'): GoreFlat['figures'] => {
    const found = kinks[side]
    return found ? [{ says: `Kink on the ${side}`, words: `${turn(found.angle)} ${at(found.waterline)}` }] : []
  }
  return [
    ...(inside ? [{ says: 'Inside the mould line', words: `${size(inside.depth)} ${at(inside.waterline)}` }] : []),
    ...(drop ? [{ says: 'Drop of the bending lines', words: `${size(drop.most)} ${at(drop.waterline)}` }] : []),
    ...(bend
      ? [{ says: 'Least bend', words: `R ${size(bend.radius)} ${at(bend.waterline)}; above ${size(elastic.value)} it springs back` }]
      : []),
    ...(crease ? [{ says: 'Warp of the corners', words: `${turn(crease.top)} at the cap, ${turn(crease.foot)} at the toe` }] : []),
    ...kink('right'),
    ...kink('left'),
  ]
}

function formedGores(subject: Subject, end: End, blanks: Blanks | null, units: UnitSystem): readonly Drawn[] {
  const study = blanks && blankStudy(subject.derived, blanks)
  return goreParts(subject, end).map(({ part, number }) => {
    const blank = study?.blanks.find((each) => each.parts.some((own) => own.part === part.id))
    const own = blank?.parts.find((each) => each.part === part.id)
    if (!blank || !own) return { ...{ part, number, outline: null, holes: NONE, field: null, figures: [] }, why: NOT_YET }
    const isOver = own.turned !== blank.parts[0].turned
    const { field, width } = blank
    const y = isOver ? field.y.map((each) => width - each) : field.y
    return {
      ...{ part, number, outline: own.outline, holes: own.holes, field: { ...field, y, value: field.major } },
      ...{ figures: formedFigures(blank, units), why: null },
    }
  })
}

const NOT_YET = 'Its blank is not worked out yet.'

function formedFigures(
  { stretch, shrink, leastThickness, thickness, springback, stock }: FormedBlank,
  units: UnitSystem,
): GoreFlat['figures'] {
  const percent = (share: number, decimals = 1): string => `${fixed(share * 100, decimals)} %`
  return [
    { says: 'Stretched at most', words: `${percent(stretch.peak)}: ${stretch.says}` },
    { says: 'On the whole', words: percent(stretch.mean, 2) },
    { says: 'Shrunk at most', words: percent(Math.abs(shrink)) },
    { says: 'Least thickness', words: `${lengthWords(leastThickness, units, 1)} of ${lengthWords(thickness, units, 1)}` },
    { says: 'Stretched less than springs back', words: `${percent(springback.share, 0)} of the blank` },
    { says: 'Cut from', words: stock ?? 'no stock sheet is large enough' },
  ]
}

const INCH = 0.0254

/** Five bands at most, in steps of 1, 2 or 5 of a unit (or its tenths, or its tens). */
function levelsOf(drawn: readonly Drawn[], unit: number): readonly number[] {
  const peak = Math.max(0, ...drawn.flatMap(({ field }) => (field ? [Math.max(...field.value)] : [])))
  if (peak <= 0) return []
  const rough = peak / unit / 5
  const ten = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map((k) => k * ten).find((each) => each >= rough) ?? 10 * ten
  return Array.from({ length: 5 }, (_, i) => (i + 1) * step * unit).filter((level) => level < peak)
}

const bandWords = (levels: readonly number[], words: (value: number) => string): readonly string[] =>
  levels.length === 0
    ? []
    : [
        `under ${words(levels[0])}`,
        ...levels.slice(1).map((level, i) => `${words(levels[i])} to ${words(level)}`),
        `${words(levels[levels.length - 1])} and more`,
      ]

function flatOf({ design }: Subject, { part, number, outline, holes, field, figures, why }: Drawn, levels: readonly number[]): GoreFlat {
  return {
    ...{ part: part.id, says: `Gore ${number}`, figures, why },
    outline: outline ? flatten(outline, 6).flat() : [],
    holes: holes.x.flatMap((x, i) => [x, holes.y[i]]),
    above: field ? aboveLevels(field, levels) : [],
    at: seenAt(design, part.place),
  }
}

type Node = readonly [x: number, y: number, value: number]

/** For each level what of the net lies above it, as quarters of four corners: the more levels a place is above, the more ink it gets. */
function aboveLevels({ across, along, x, y, value }: Field, levels: readonly number[]): readonly (readonly number[])[] {
  const node = (k: number): Node => [x[k], y[k], value[k]]
  return levels.map((level) => {
    const above: number[] = []
    for (let j = 0; j < along; j++)
      for (let i = 0; i < across; i++) {
        const a = j * (across + 1) + i
        const corners = [node(a), node(a + 1), node(a + across + 2), node(a + across + 1)] as const
        if (corners.every((each) => each[2] < level)) continue
        if (corners.every((each) => each[2] >= level))
          above.push(corners[0][0], corners[0][1], corners[1][0], corners[1][1], corners[2][0], corners[2][1], corners[3][0], corners[3][1])
        else
          for (const half of [[corners[0], corners[1], corners[2]] as const, [corners[0], corners[2], corners[3]] as const])
            above.push(...halfAbove(half, level))
      }
    return above
  })
}

/** What of a triangle lies above a level, as four corners, the last one twice where there are three; none where nothing does. */
function halfAbove(half: readonly Node[], level: number): readonly number[] {
  const kept: (readonly [number, number])[] = []
  half.forEach((from, k) => {
    const to = half[(k + 1) % 3]
    if (from[2] >= level) kept.push([from[0], from[1]])
    if (from[2] >= level !== to[2] >= level) {
      const t = (level - from[2]) / (to[2] - from[2])
      kept.push([from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t])
    }
  })
  if (kept.length < 3) return []
  return [...kept, kept[kept.length - 1]].slice(0, 4).flat()
}
