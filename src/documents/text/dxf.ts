/**
 * A flat pattern as DXF at 1:1 in millimetres: what the shop's own drawing and cutting programs read.
 *
 * Layers: OUTLINE the blank as sheared, CUT what is cut out of it, CONTOUR the edge that is left where cuts reach the blank's
 * edge, HOLES, ROLL, BEND, MARK, TEXT. Use OUTLINE with CUT, or CONTOUR with the cuts that lie wholly inside it.
 * Edges are polylines with true arcs (bulges); x and y are the pattern's own. The same design gives the same bytes.
 */
import { DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf'
import type { Design } from '../../derive/design.js'
import type { MarkLine, Outline, Part, Pattern } from '../../derive/nouns.js'
import { netOutline } from '../drawing/net-outline.js'
import type { TextOptions } from './heading.js'
import { headingOf } from './heading.js'

/** Layer names with a colour number each, 1 red to 7 black or white: colours only part the layers on a screen. */
const DXF_LAYERS = { OUTLINE: 7, CUT: 1, CONTOUR: 3, HOLES: 5, ROLL: 4, BEND: 6, MARK: 8, TEXT: 7 } as const
type DxfLayerName = keyof typeof DXF_LAYERS

const LAYER_OF_MARK: Readonly<Record<MarkLine['kind'], DxfLayerName>> = { roll: 'ROLL', bend: 'BEND', centre: 'MARK', lap: 'MARK' }

/** mm to a nanometre, so that the last bit of another machine changes no byte. */
const mm = (metres: number): number => {
  if (!Number.isFinite(metres)) throw new RangeError(`A DXF was asked to hold the length ${metres}`)
  return Math.round(metres * 1e9) / 1e6 || 0
}

function addOutline(dxf: DxfWriter, layer: DxfLayerName, outline: Outline): void {
  dxf.addLWPolyline(
    outline.map(([x, y, bulge]) => ({ point: point2d(mm(x), mm(y)), ...(bulge === 0 ? {} : { bulge: Math.round(bulge * 1e12) / 1e12 }) })),
    { flags: LWPolylineFlags.Closed, layerName: layer },
  )
}

/** DXF text of this version is UTF-8, but many readers are not: plain characters only. */
const plain = (text: string): string =>
  text
    .replace(/[–—]/g, '-')
    .replace(/[×]/g, 'x')
    .replace(/[^\x20-\x7e]/g, '?')

function addHeading(dxf: DxfWriter, lines: readonly (readonly [string, string])[], x: number, y: number): void {
  const height = 8
  lines.forEach(([name, value], i) => {
    dxf.addText(point3d(x, y - i * height * 1.6), height, plain(`${name.toUpperCase()}: ${value}`), { layerName: 'TEXT' })
  })
}

/** The whole file as text. */
export function patternDxf(design: Design, part: Part, pattern: Pattern, options: TextOptions = {}): string {
  const dxf = new DxfWriter()
  dxf.setUnits(Units.Millimeters)
  dxf.setVariable('$MEASUREMENT', { 70: 1 })
  dxf.setVariable('$LASTSAVEDBY', { 1: options.program ?? 'Coachwright' })
  for (const [name, colour] of Object.entries(DXF_LAYERS)) dxf.addLayer(name, colour, 'Continuous')
  addOutline(dxf, 'OUTLINE', pattern.outline)
  for (const cut of pattern.cuts) addOutline(dxf, 'CUT', cut.outline)
  const net = netOutline(pattern)
  if (net.notches.length) for (const contour of net.contours) addOutline(dxf, 'CONTOUR', contour)
  const { x, y, diameter } = pattern.holes
  for (let i = 0; i < x.length; i++) dxf.addCircle(point3d(mm(x[i]), mm(y[i])), mm(diameter[i] / 2), { layerName: 'HOLES' })
  for (const mark of pattern.marks) {
    dxf.addLine(point3d(mm(mark.from[0]), mm(mark.from[1])), point3d(mm(mark.to[0]), mm(mark.to[1])), {
      layerName: LAYER_OF_MARK[mark.kind],
    })
  }
  const left = Math.min(...pattern.outline.map((v) => mm(v[0])))
  const foot = Math.min(...pattern.outline.map((v) => mm(v[1])))
  addHeading(dxf, [...headingOf(design, part, pattern, options), ['holes', String(x.length)]], left, foot - 40)
  return dxf.stringify()
}
