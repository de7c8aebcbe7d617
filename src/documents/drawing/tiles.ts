/**
 * A drawing at full size cut into sheets that are laid edge to edge: register crosses on every corner, the tile's name and place in a
 * small plan, and a 100 mm square on every sheet. Only tiles with ink on them are printed.
 */

import type { Mark, Shape } from './page.js'
import { FINE, letter, lines, OUTLINE, path, rectangle, rectangleShape, THIN } from './page.js'
import { insideBorder, sheetsOf } from './paper-sizes.js'
import type { Body, PrintOptions, TitleDraft } from './sheet.js'
import { roomAbove, seriesOf } from './sheet.js'
import { checkSquare } from './symbols.js'
import { alongEdge } from './view.js'

/** A drawing in its own millimetres from its top left corner. */
export interface Drawing {
  readonly widthMm: number
  readonly heightMm: number
  readonly marks: readonly Mark[]
}

/** Column beside the tile that holds square, plan and words, mm. */
const PANEL = 112
/** Ink printed beyond the register lines, so that sheets may be lapped, mm. */
const LAP = 5

const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** `dx`, `dy`: where the drawing's corner lies in the grid, chosen so that the fewest tiles carry ink. */
interface Grid {
  readonly columns: number
  readonly rows: number
  readonly width: number
  readonly height: number
  readonly dx: number
  readonly dy: number
}

const nameOf = (column: number, row: number): string => `${LETTERS[row % LETTERS.length]}${column + 1}`

/** Points along a mark, no more than 10 mm apart. */
function pointsAlong(mark: Mark): readonly (readonly [number, number])[] {
  if (mark.kind === 'circles') return Array.from({ length: mark.xyd.length / 3 }, (_, i) => [mark.xyd[i * 3], mark.xyd[i * 3 + 1]] as const)
  if (mark.kind === 'text') return [[mark.x, mark.y]]
  if (mark.kind === 'window' || mark.kind === 'code') return []
  return mark.shapes.flatMap(({ points, closed }: Shape) =>
    points.flatMap((p, i) => {
      if (!closed && i === points.length - 1) return [[p[0], p[1]] as const]
      const q = points[(i + 1) % points.length]
      const steps = Math.max(1, Math.ceil((Math.hypot(q[0] - p[0], q[1] - p[1]) * (1 + Math.abs(p[2]))) / 10))
      return Array.from({ length: steps }, (_, n) => alongEdge(p, q, n / steps))
    }),
  )
}

/** Points of the marks that are worth a sheet: names and centre lines alone print none. */
const heavyPoints = (drawing: Drawing): readonly (readonly [number, number])[] =>
  drawing.marks.flatMap((mark) => (mark.kind === 'text' || (mark.kind === 'path' && mark.width === FINE) ? [] : pointsAlong(mark)))

const cellsOf = (points: readonly (readonly [number, number])[], grid: Grid): ReadonlySet<number> =>
  new Set(points.map(([x, y]) => Math.floor((y + grid.dy) / grid.height) * grid.columns + Math.floor((x + grid.dx) / grid.width)))

/** Offsets tried along each axis. */
const TRIES = 8

/** The grid on which the fewest tiles carry ink, and those tiles in reading order. */
function gridFor(
  drawing: Drawing,
  width: number,
  height: number,
): { readonly grid: Grid; readonly tiles: readonly (readonly [number, number])[] } {
  const points = heavyPoints(drawing)
  let best: { grid: Grid; cells: ReadonlySet<number> } | null = null
  for (let i = 0; i < TRIES; i++) {
    for (let j = 0; j < TRIES; j++) {
      const [dx, dy] = [(i * width) / TRIES, (j * height) / TRIES]
      const grid: Grid = {
        columns: Math.ceil((drawing.widthMm + dx) / width),
        rows: Math.ceil((drawing.heightMm + dy) / height),
        width,
        height,
        dx,
        dy,
      }
      const cells = cellsOf(points, grid)
      if (best === null || cells.size < best.cells.size) best = { grid, cells }
    }
  }
  const { grid, cells } = best!
  return {
    grid,
    tiles: [...cells]
      .filter((n) => n >= 0)
      .sort((a, b) => a - b)
      .map((n) => [n % grid.columns, Math.floor(n / grid.columns)] as const),
  }
}

/** Marks with anything inside a rectangle; groups of circles are thinned to those inside. */
export function marksIn(marks: readonly Mark[], x0: number, y0: number, x1: number, y1: number): readonly Mark[] {
  return marks.flatMap((mark): readonly Mark[] => {
    if (mark.kind === 'circles') {
      const xyd: number[] = []
      for (let i = 0; i < mark.xyd.length; i += 3) {
        const [x, y, r] = [mark.xyd[i], mark.xyd[i + 1], mark.xyd[i + 2] / 2]
        if (x + r > x0 && x - r < x1 && y + r > y0 && y - r < y1) xyd.push(x, y, mark.xyd[i + 2])
      }
      return xyd.length === 0 ? [] : [{ ...mark, xyd }]
    }
    if (mark.kind === 'text') return mark.x > x0 - 150 && mark.x < x1 + 150 && mark.y > y0 - 150 && mark.y < y1 + 150 ? [mark] : []
    if (mark.kind === 'window' || mark.kind === 'code') return [mark]
    const shapes = mark.shapes.filter(
      ({ points }) =>
        points.length > 4 ||
        points.some((p, i) => p[2] !== 0 && i < points.length) ||
        (Math.max(...points.map((p) => p[0])) >= x0 &&
          Math.min(...points.map((p) => p[0])) <= x1 &&
          Math.max(...points.map((p) => p[1])) >= y0 &&
          Math.min(...points.map((p) => p[1])) <= y1),
    )
    return shapes.length === 0 ? [] : [{ ...mark, shapes }]
  })
}

function plan(
  drawing: Drawing,
  grid: Grid,
  tiles: readonly (readonly [number, number])[],
  now: readonly [number, number],
  x: number,
  y: number,
  width: number,
  height: number,
): readonly Mark[] {
  const k = Math.min(width / (grid.columns * grid.width), height / (grid.rows * grid.height))
  const cell = (c: number, r: number): Shape =>
    rectangleShape(x + c * grid.width * k, y + r * grid.height * k, grid.width * k, grid.height * k)
  const group = 'plan'
  const heavy = drawing.marks.filter((mark): mark is Extract<Mark, { kind: 'path' }> => mark.kind === 'path' && mark.width === OUTLINE)
  return [
    path([cell(now[0], now[1])], { width: null, fill: 0.75, group }),
    path(
      tiles.map(([c, r]) => cell(c, r)),
      { width: FINE, group },
    ),
    ...heavy.map((mark) =>
      path(
        mark.shapes.map((shape) => ({
          ...shape,
          points: shape.points.map(([px, py, b]) => [x + (px + grid.dx) * k, y + (py + grid.dy) * k, b] as const),
        })),
        { width: THIN, group },
      ),
    ),
  ]
}

/** The tiles of a drawing as sheet bodies on the second size of the series. */
export function tileBodies(
  drawing: Drawing,
  title: TitleDraft,
  name: string,
  says: string,
  notes: readonly string[],
  options: PrintOptions,
): readonly Body[] {
  const size = sheetsOf(seriesOf(options))[1]
  const room = roomAbove(size, 'slim')
  const [width, height] = [room.width - PANEL - 2 * LAP - 4, room.height - 2 * LAP - 4]
  const { grid, tiles } = gridFor(drawing, width, height)
  const inside = insideBorder(size)
  return tiles.map(([column, row], n) => {
    const [x, y] = [inside.x + PANEL + LAP + 2, inside.y + LAP + 2]
    const [u, v] = [column * width - grid.dx, row * height - grid.dy]
    const near = marksIn(drawing.marks, u - LAP, v - LAP, u + width + LAP, v + height + LAP)
    const group = 'register'
    const cross = [
      [x, y],
      [x + width, y],
      [x, y + height],
      [x + width, y + height],
    ].flatMap(
      ([a, b]) =>
        [
          [a - LAP, b, a + LAP, b],
          [a, b - LAP, a, b + LAP],
        ] as const,
    )
    const beside = (c: number, r: number, a: number, b: number): readonly Mark[] =>
      tiles.some((t) => t[0] === c && t[1] === r)
        ? [letter(a, b, nameOf(c, r), { height: 2.5, anchor: 'middle', sits: 'middle', group })]
        : []
    const words = [`Tile ${nameOf(column, row)}: ${n + 1} of ${tiles.length}`, ...notes]
    const marks: Mark[] = [
      {
        kind: 'window',
        x: x - LAP,
        y: y - LAP,
        width: width + 2 * LAP,
        height: height + 2 * LAP,
        shift: [x - u, y - v],
        marks: near,
        group: 'full-size',
      },
      lines(cross, { width: THIN, group }),
      rectangle(x, y, width, height, { width: FINE, type: 'dotted', group }),
      ...beside(column - 1, row, x - LAP + 1.5, y + height / 2),
      ...beside(column + 1, row, x + width + LAP - 1.5, y + height / 2),
      ...beside(column, row - 1, x + width / 2, y - LAP + 1.8),
      ...beside(column, row + 1, x + width / 2, y + height + LAP - 1.8),
      ...checkSquare(inside.x + 5, inside.y + 5),
      ...words.map((text, i) =>
        letter(inside.x + 5, inside.y + 114 + i * 4.6, text, { height: i === 0 ? 3.5 : 2.5, bold: i === 0, group: 'words' }),
      ),
      ...plan(
        drawing,
        grid,
        tiles,
        [column, row],
        inside.x + 5,
        inside.y + 118 + words.length * 4.6,
        PANEL - 16,
        room.height - 124 - words.length * 4.6,
      ),
    ]
    return {
      name: `${name}-${nameOf(column, row)}`,
      says: `${says}, tile ${n + 1} of ${tiles.length}`,
      size,
      block: 'slim' as const,
      title,
      marks,
    }
  })
}
