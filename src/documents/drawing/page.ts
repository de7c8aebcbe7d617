/**
 * A page of paper as plain data: what every sheet gives and what SVG and PDF print.
 *
 * Millimetres on paper, x right and y DOWN from the top left corner of the trimmed sheet. Nothing here knows a coach.
 * Does not cover: images, colour (a shop prints black), text along a curve.
 */

/** Vertices `[x, y, bulge]`; bulge = tan(angle/4) of the arc to the next vertex, positive CLOCKWISE as seen on paper (y runs down). */
export interface Shape {
  readonly points: readonly (readonly [x: number, y: number, bulge: number])[]
  readonly closed: boolean
}

/** The three line widths of every sheet, mm: outline, thin, and the lightest for dimensions and hatching (ISO 128-2 series). */
export const OUTLINE = 0.5
export const THIN = 0.25
export const FINE = 0.18
export type LineWidth = typeof OUTLINE | typeof THIN | typeof FINE

/** Line types of ISO 128-2 that the sheets use: 01, 02, 04, 05, 07. */
export type LineType = 'continuous' | 'dashed' | 'long-dash-dot' | 'long-dash-double-dot' | 'dotted'

/** Dash patterns in multiples of the line width: dash 12, long dash 24, gap 3, dot 0.5 (ISO 128-2, table of line elements; from memory). */
export const DASHES: Readonly<Record<LineType, readonly number[]>> = {
  continuous: [],
  dashed: [12, 3],
  'long-dash-dot': [24, 3, 0.5, 3],
  'long-dash-double-dot': [24, 3, 0.5, 3, 0.5, 3],
  dotted: [0.5, 3],
}

/** Lettering heights of ISO 3098, mm of a capital letter. 40 is for hand letters read across a jig. */
export type LetterHeight = 1.8 | 2.5 | 3.5 | 5 | 7 | 10 | 14 | 20 | 40

export interface PathMark {
  readonly kind: 'path'
  readonly shapes: readonly Shape[]
  /** null draws no line, only the fill */
  readonly width: LineWidth | null
  readonly type: LineType
  /** 0 black to 1 white; null leaves the inside open */
  readonly fill: number | null
  /** even-odd filling, for outlines with windows in them */
  readonly group: string | null
}

/** Many circles as one mark: `xyd` holds x, y, diameter of each in turn. One path in the file, however many holes. */
export interface CirclesMark {
  readonly kind: 'circles'
  readonly xyd: readonly number[]
  /** of the ring; black dots have none */
  readonly width: LineWidth
  readonly fill: number | null
  readonly group: string | null
}

export interface TextMark {
  readonly kind: 'text'
  readonly x: number
  readonly y: number
  readonly text: string
  readonly height: LetterHeight
  readonly anchor: 'start' | 'middle' | 'end'
  /** which part of the lettering lies on y: its foot, the middle of its capitals, or their tops */
  readonly sits: 'foot' | 'middle' | 'top'
  /** degrees anticlockwise as read on paper; 90 reads from below upward */
  readonly turn: number
  readonly bold: boolean
  readonly group: string | null
}

/** Part of a larger drawing seen through a rectangle: the marks are moved by `shift` and cut off at the edge. */
export interface WindowMark {
  readonly kind: 'window'
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly shift: readonly [number, number]
  readonly marks: readonly Mark[]
  readonly group: string | null
}

/** Black squares in rows for a machine to read: `runs` holds column, row and length of each run in turn, in modules from the corner. */
export interface CodeMark {
  readonly kind: 'code'
  readonly x: number
  readonly y: number
  /** side of one square */
  readonly module: number
  readonly runs: readonly number[]
  readonly group: string | null
}

export type Mark = PathMark | CirclesMark | TextMark | WindowMark | CodeMark

export interface Page {
  /** short and unique in its document, usable in a file name */
  readonly name: string
  /** one sentence for a contents list and for a screen reader */
  readonly says: string
  readonly widthMm: number
  readonly heightMm: number
  readonly marks: readonly Mark[]
  /** nothing but the part's own lines: no paper is drawn under them, a machine may read them */
  readonly bare?: boolean
}

interface Pen {
  readonly width?: LineWidth | null
  readonly type?: LineType
  readonly fill?: number | null
  readonly group?: string
}

export function path(shapes: readonly Shape[], pen: Pen = {}): PathMark {
  const { width = THIN, type = 'continuous', fill = null, group = null } = pen
  return { kind: 'path', shapes, width, type, fill, group }
}

export function polyline(points: readonly (readonly [number, number])[], pen: Pen = {}): PathMark {
  return path([{ points: points.map(([x, y]) => [x, y, 0] as const), closed: false }], pen)
}

export function line(x1: number, y1: number, x2: number, y2: number, pen: Pen = {}): PathMark {
  return polyline(
    [
      [x1, y1],
      [x2, y2],
    ],
    pen,
  )
}

/** Several straight lines in one mark: pairs of ends. */
export function lines(ends: readonly (readonly [number, number, number, number])[], pen: Pen = {}): PathMark {
  return path(
    ends.map(([a, b, c, d]) => ({
      points: [
        [a, b, 0],
        [c, d, 0],
      ] as const,
      closed: false,
    })),
    pen,
  )
}

export function rectangleShape(x: number, y: number, width: number, height: number): Shape {
  return {
    points: [
      [x, y, 0],
      [x + width, y, 0],
      [x + width, y + height, 0],
      [x, y + height, 0],
    ],
    closed: true,
  }
}

export function rectangle(x: number, y: number, width: number, height: number, pen: Pen = {}): PathMark {
  return path([rectangleShape(x, y, width, height)], pen)
}

export function circles(
  xyd: readonly number[],
  pen: { readonly width?: LineWidth; readonly fill?: number | null; readonly group?: string } = {},
): CirclesMark {
  const { width = FINE, fill = null, group = null } = pen
  return { kind: 'circles', xyd, width, fill, group }
}

export interface Lettering {
  readonly height?: LetterHeight
  readonly anchor?: TextMark['anchor']
  readonly sits?: TextMark['sits']
  readonly turn?: number
  readonly bold?: boolean
  readonly group?: string
}

export function letter(x: number, y: number, text: string, how: Lettering = {}): TextMark {
  const { height = 2.5, anchor = 'start', sits = 'foot', turn = 0, bold = false, group = null } = how
  return { kind: 'text', x, y, text, height, anchor, sits, turn, bold, group }
}

/** An arrow head at a point, its tip pointing along `angle` (radians, y down), 15 degrees each side and filled (ISO 129-1). */
export function arrowHead(x: number, y: number, angle: number, length = 2.5, group?: string): PathMark {
  const spread = Math.PI / 12
  const back = (turn: number): readonly [number, number, number] => [
    x - length * Math.cos(angle + turn),
    y - length * Math.sin(angle + turn),
    0,
  ]
  return path([{ points: [[x, y, 0], back(spread), back(-spread)], closed: true }], { width: null, fill: 0, ...(group ? { group } : {}) })
}
