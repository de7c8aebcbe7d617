/**
 * A router program in ISO 6983 words for a panel: windows, then the outside, the cutter's radius taken up by the control (G41),
 * every cut entered and left on an arc, the panel held through its own bolt holes and nothing cut near them.
 *
 * Holes are drilled by the coordinate program of the same revision. Does not cover: nesting, tabs, tool life, the control's own
 * canned cycles. Speeds and depths are places to start from: a shop writes its own.
 */
import type { Design } from '../../derive/design.js'
import type { Outline, Part, Pattern } from '../../derive/nouns.js'
import { remark, remarks } from './coordinate-program.js'
import type { TextOptions } from './heading.js'
import { CHECK_BEFORE_METAL, headingOf, mmText } from './heading.js'
import { type HoldDown, holdDownPoints, KEEP_OUT } from './hold-down-points.js'
import { type RouterContour, routerCuts } from './router-contours.js'
import { DEFAULT_WORDS } from './word-table.js'

export interface RouterTable {
  /** revolutions and feed a minute, mm; plunge feed; clear height and cut below the panel, mm; passes no deeper than this, mm */
  readonly speed: number
  readonly feed: number
  readonly plungeFeed: number
  readonly clearMm: number
  readonly throughMm: number
  readonly passMm: number
}

/** For a 10 mm two-flute cutter in plywood: common practice, no source. */
const DEFAULT_ROUTER: RouterTable = { speed: 16_000, feed: 3000, plungeFeed: 800, clearMm: 40, throughMm: 0.5, passMm: 10 }

export interface RouterProgram {
  readonly text: string
  readonly cuts: number
  readonly held: readonly HoldDown[]
}

/** `cutter` in m. */
export function routerProgram(design: Design, part: Part, pattern: Pattern, cutter: number, options: TextOptions = {}): RouterProgram {
  const words = DEFAULT_WORDS
  const table = DEFAULT_ROUTER
  const { contours, drilled } = routerCuts(pattern, cutter)
  const bolts = new Set(design.bolts.filter((r) => r.kind === 'bolt').map((r) => r.id))
  const held = holdDownPoints(pattern, bolts, cutter)
  const blocks: string[] = []
  const block = (text: string): void => {
    blocks.push(`N${(blocks.length + 1) * 10} ${text}`)
  }
  const depths = passes(pattern.thickness * 1000 + table.throughMm, table.passMm)
  block('G71 G90 G17 G40')
  block(`T1 M06 ${remark(words, `cutter ${mmText(cutter, 1)} mm, its radius ${mmText(cutter / 2, 2)} in D1`)}`)
  block(`S${table.speed} M03`)
  for (const contour of contours) {
    block(remark(words, `cut ${contour.says}`))
    for (const depth of depths) cutOnce(block, contour, depth, table)
  }
  block(`G00 Z${table.clearMm.toFixed(3)} M05`)
  block(words.end)
  const said = headingOf(design, part, pattern, options).map(([name, value]) => `${name}: ${value}`)
  const head = [
    'router program: absolute mm from the origin, z up from the top of the panel',
    ...said,
    `cutter: ${mmText(cutter, 1)} mm, kept on the left of the path by G41 with D1; windows run anticlockwise, the outside clockwise`,
    `passes: ${depths.map((d) => d.toFixed(1)).join(', ')} mm deep`,
    'drill first: holes are in the coordinate program of the same revision',
    ...drilled.map(
      (d) => `drill ${d.says}: ${mmText(d.diameter, 1)} mm at X${mmText(d.at[0])} Y${mmText(d.at[1])}, too narrow for the cutter`,
    ),
    held.length === 0
      ? 'caution: no bolt hole stands clear of the cuts: hold the panel by vacuum'
      : `hold the panel by screws in ${held.length} bolt holes, heads no higher than ${(table.clearMm / 2).toFixed(0)} mm; the cutter keeps ${mmText(KEEP_OUT, 0)} mm away from them`,
    ...held.map((h) => `hold down at X${mmText(h.x)} Y${mmText(h.y)}`),
    'windows fall loose when they are cut through: stop and take them out, or cut the last pass by hand',
    'speed, feed and depth are places to start from, common practice without a source: a shop writes its own',
    'dust of plywood is harmful: extraction and a mask',
    CHECK_BEFORE_METAL,
  ].flatMap((line) => remarks(words, line))
  return { text: ['%', ...head, ...blocks, '%'].map((l) => `${l}\n`).join(''), cuts: contours.length, held }
}

/** Even passes to the full depth. mm */
function passes(full: number, most: number): readonly number[] {
  const n = Math.ceil(full / most - 1e-9)
  return Array.from({ length: n }, (_, i) => (full * (i + 1)) / n)
}

function cutOnce(block: (text: string) => void, contour: RouterContour, depth: number, table: RouterTable): void {
  const { plunge, enter, leave, about, path } = contour
  const [sx, sy] = path[0]
  const xy = (x: number, y: number): string => `X${mmText(x)} Y${mmText(y)}`
  const ij = (from: readonly [number, number], middle: readonly [number, number]): string =>
    `I${mmText(middle[0] - from[0])} J${mmText(middle[1] - from[1])}`
  block(`G00 Z${table.clearMm.toFixed(3)}`)
  block(`G00 ${xy(plunge[0], plunge[1])}`)
  block(`G01 Z${(-depth).toFixed(3)} F${table.plungeFeed}`)
  block(`G01 G41 D1 ${xy(enter[0], enter[1])} F${table.feed}`)
  block(`G03 ${xy(sx, sy)} ${ij(enter, about)}`)
  for (const text of along(path)) block(text)
  block(`G03 ${xy(leave[0], leave[1])} ${ij([sx, sy], about)}`)
  block(`G01 G40 ${xy(plunge[0], plunge[1])}`)
}

/** The path once round, back to its first vertex. */
function along(path: Outline): readonly string[] {
  return path.map((p, i) => {
    const q = path[(i + 1) % path.length]
    const end = `X${mmText(q[0])} Y${mmText(q[1])}`
    if (Math.abs(p[2]) < 1e-9) return `G01 ${end}`
    const rise = (1 - p[2] * p[2]) / (4 * p[2])
    const cx = (p[0] + q[0]) / 2 - rise * (q[1] - p[1])
    const cy = (p[1] + q[1]) / 2 + rise * (q[0] - p[0])
    return `${p[2] > 0 ? 'G03' : 'G02'} ${end} I${mmText(cx - p[0])} J${mmText(cy - p[1])}`
  })
}
