/** A design whose formed panels have their flat patterns: every document draws them as it draws any other sheet. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import type { BlankPart, BlankStudy, FormedBlank } from './nouns.js'

export function withBlanks<D extends Pick<Design, 'parts' | 'checks'>>(design: D, study: BlankStudy): D {
  const blanks = new Map<string, { readonly blank: FormedBlank; readonly own: BlankPart }>()
  for (const blank of study.blanks) for (const own of blank.parts) blanks.set(own.part, { blank, own })
  const parts = design.parts.map((part) => {
    const found = blanks.get(part.id)
    return found ? withPattern(part, found.blank, found.own) : part
  })
  return Object.freeze({ ...design, parts, checks: [...design.checks, ...study.blanks.flatMap((b) => b.checks)] })
}

function withPattern(part: Part, blank: FormedBlank, own: BlankPart): Part {
  const { notComputed: _, ...rest } = part
  const pattern: Pattern = Object.freeze({
    face: 'sheet',
    flat: own.flat,
    thickness: blank.thickness,
    outline: own.outline,
    cuts: [],
    marks: own.marks,
    holes: own.holes,
  })
  const others = blank.parts.map((p) => p.part).filter((id) => id !== part.id)
  return Object.freeze({
    ...rest,
    stock: blank.stock,
    patterns: [pattern],
    notes: [
      ...part.notes,
      'Pilots only: drill at assembly, on the jig.',
      `One blank with ${others.map((id) => id.replace(/-/g, ' ')).join(', ')}; right and left hand are turned over.`,
      `Stretched ${(100 * blank.stretch.peak).toFixed(1)} % at most; openings are cut after forming.`,
    ],
  })
}
