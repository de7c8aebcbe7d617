/** Chassis parts that are cut alike, gathered: what the saw, the shear and the press brake are given. */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import { boundsOf } from '../drawing/view.js'
import { csvLine } from './csv.js'
import type { TextOptions } from './heading.js'
import { CHECK_BEFORE_METAL, mmText } from './heading.js'

/** One blank, and the parts that are cut from it. m, kg */
export interface CutLine {
  readonly parts: readonly string[]
  readonly says: string
  readonly face: string
  readonly material: string
  readonly gauge: string
  readonly length: number
  readonly width: number
  readonly bends: number
  readonly cuts: number
  readonly holes: number
  /** of one part with all its faces, null on faces after the first */
  readonly mass: number | null
}

/** Alike to a tenth of a millimetre, hole for hole; a part and its mirror are alike as blanks and are told apart by name. */
function keyOf(part: Part, face: number): string {
  const { outline, holes, cuts, marks } = part.patterns[face]
  const tenth = (m: number): number => Math.round(Math.abs(m) * 1e4)
  const holeKey = holes.x.map((x, i) => `${tenth(x)},${tenth(holes.y[i])}`).sort()
  const edge = outline.map(([x, y]) => `${tenth(x)},${tenth(y)}`).sort()
  return JSON.stringify([part.kind, part.material, part.thickness.name, face, edge, holeKey, cuts.length, marks.length])
}

export function cutLines(design: Design): readonly CutLine[] {
  const groups = new Map<string, { part: Part; face: number; parts: string[] }>()
  for (const part of design.parts.filter((p) => p.trade === 'chassis'))
    part.patterns.forEach((_, face) => {
      const key = keyOf(part, face)
      const known = groups.get(key)
      if (known) known.parts.push(part.id)
      else groups.set(key, { part, face, parts: [part.id] })
    })
  return [...groups.values()].map(({ part, face, parts }) => {
    const pattern = part.patterns[face]
    const box = boundsOf([pattern.outline])
    return {
      parts,
      says: part.says,
      face: pattern.face,
      material: part.material,
      gauge: part.thickness.name,
      length: Math.max(box.x1 - box.x0, box.y1 - box.y0),
      width: Math.min(box.x1 - box.x0, box.y1 - box.y0),
      bends: pattern.marks.filter((m) => m.kind === 'bend').length,
      cuts: pattern.cuts.length,
      holes: pattern.holes.x.length,
      mass: face === 0 ? part.mass.value : null,
    }
  })
}

const COLUMNS = ['count', 'parts', 'face', 'material', 'gauge', 'length mm', 'width mm', 'bends', 'cut-outs', 'holes', 'kg each'] as const

export function cutListCsv(design: Design, options: TextOptions = {}): string {
  const { coach } = design.definition
  const head = [
    ['what', 'Cut list of the chassis: blanks before bending, alike ones together'],
    ['coach', `${coach.name} by ${coach.maker}`],
    ['unit number', options.unit ?? 'MASTER'],
    ['revision', design.revision],
    ['date', options.date ?? coach.date],
    ...(options.program ? [['made by', options.program]] : []),
    ['caution', `STRENGTH NOT CHECKED: an engineer must approve. ${CHECK_BEFORE_METAL}`],
  ]
  const lines = cutLines(design).map((l) =>
    csvLine([
      String(l.parts.length),
      l.parts.join(' '),
      l.face,
      l.material,
      l.gauge,
      mmText(l.length, 1),
      mmText(l.width, 1),
      String(l.bends),
      String(l.cuts),
      String(l.holes),
      l.mass === null ? '' : l.mass.toFixed(3),
    ]),
  )
  return [...head.map(([name, value]) => `# ${name}: ${value}`), csvLine(COLUMNS), ...lines].map((l) => `${l}\n`).join('')
}
