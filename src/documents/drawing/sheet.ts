/** Bodies of drawings put on bordered, titled, numbered sheets. */
import type { Design } from '../../derive/design.js'
import type { Part, Pattern } from '../../derive/nouns.js'
import { borderMarks } from './border.js'
import type { Mark, Page } from './page.js'
import type { PaperSeries, PaperSize, Room } from './paper-sizes.js'
import { insideBorder } from './paper-sizes.js'
import type { BlockKind, TitleFacts } from './title-block.js'
import { BLOCK_WIDTH, blockHeight, titleBlock } from './title-block.js'
import type { PrintUnits } from './units.js'
import { boughtWords, massWords } from './units.js'
import { sideWords, viewWords } from './words.js'

/** What a print run is told: the same for every sheet of a packet. */
export interface PrintOptions {
  /** serial of the unit; MASTER unless told */
  readonly unit?: string
  /** ISO date; the definition's unless told */
  readonly date?: string
  readonly units?: PrintUnits
  readonly series?: PaperSeries
}

export const unitsOf = (options: PrintOptions): PrintUnits => options.units ?? 'metric'
export const seriesOf = (options: PrintOptions): PaperSeries => options.series ?? 'iso'

/** Stations run from F1; holes are checked at 0.3 mm from the sheet's own origin. Common practice, no source. */
const toleranceWords = (units: PrintUnits): string =>
  units === 'metric'
    ? 'Holes ±0.3 mm and edges ±0.5 mm from the origin mark. Stations ±1.0 mm from F1, never from the frame before.'
    : 'Holes ±0.012 in and edges ±0.020 in from the origin mark. Stations ±0.040 in from F1, never from the frame before.'

export type TitleDraft = Omit<TitleFacts, 'sheet' | 'of'>

/** Title facts of a sheet about the whole coach. */
export function coachTitle(design: Design, options: PrintOptions, document: string, title: string, says: string): TitleDraft {
  return {
    design,
    unit: options.unit ?? 'MASTER',
    date: options.date ?? design.definition.coach.date,
    document,
    title,
    says,
    view: 'Whole coach',
    material: 'as listed',
    gauge: '',
    mass: '—',
    scale: '—',
    tolerance: toleranceWords(unitsOf(options)),
    part: null,
  }
}

/** Title facts of a sheet about one part, seen as its pattern is seen. */
export function partTitle(design: Design, options: PrintOptions, document: string, part: Part, pattern: Pattern | null): TitleDraft {
  const { market } = design.definition.coach
  const units = unitsOf(options)
  return {
    ...coachTitle(design, options, document, part.id, part.says),
    view: pattern ? viewWords(part.side, pattern.flat, part.place.buttock !== undefined, market) : sideWords(part.side, market),
    material: part.material,
    gauge: boughtWords(part.thickness, units),
    mass: massWords(part.mass.value, units),
    part,
  }
}

export interface Body {
  readonly name: string
  readonly says: string
  readonly size: PaperSize
  readonly block: BlockKind
  readonly title: TitleDraft
  readonly marks: readonly Mark[]
}

/** Room left above the title block; on a wide sheet the room beside the block is left for notes. */
export function roomAbove(size: PaperSize, block: BlockKind): Room {
  const inside = insideBorder(size)
  return { ...inside, height: inside.height - blockHeight(block) }
}

/** Room beside the block at the foot of a wide sheet; no width on an upright one. */
export function roomBeside(size: PaperSize, block: BlockKind): Room {
  const inside = insideBorder(size)
  const height = blockHeight(block)
  return { x: inside.x, y: inside.y + inside.height - height, width: Math.max(0, inside.width - BLOCK_WIDTH), height }
}

/** The bodies as pages, numbered n of m. */
export function sheetsFrom(bodies: readonly Body[]): readonly Page[] {
  return bodies.map((body, i) => {
    const inside = insideBorder(body.size)
    const [right, foot] = [inside.x + inside.width, inside.y + inside.height]
    const title = titleBlock(
      { ...body.title, sheet: i + 1, of: bodies.length },
      body.block,
      right - BLOCK_WIDTH,
      foot - blockHeight(body.block),
    )
    return {
      name: body.name,
      says: body.says,
      widthMm: body.size.widthMm,
      heightMm: body.size.heightMm,
      marks: [...borderMarks(body.size), ...body.marks, ...title],
    }
  })
}
