/** A made-up design for tests of the sheets: one road-side strake with its rows, a window and a notch. No derivation behind it. */
import type { Definition } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import type { Check, FastenerRow, HoleSet, OpeningDerived, Outline, Part, SectionPoint } from '../../derive/nouns.js'
import type { Worked } from '../../quantity/formula.js'

const worked = (value: number): Worked => ({ value, unit: 'kg', formula: 'made-up', inputs: {} })

const DEG = Math.PI / 180
const chain = [[3600, 0, 13.5], [380, 13.5, 82], [7000, 82, 95], [300, 95, 150]] as const

/** The half section of an arc chain with points at the ends of elements and every 10 degrees of heading between. */
function section(): readonly SectionPoint[] {
  let [g, y, z] = [0, 0, 2.03]
  const out: SectionPoint[] = [{ id: 'crown', says: 'crown', girth: 0, y, z, heading: 0, liningGirth: 0 }]
  for (const [radius, from, to] of chain) {
    const r = radius / 1000
    g += r * (to - from) * DEG
    y += r * (Math.sin(to * DEG) - Math.sin(from * DEG))
    z += r * (Math.cos(to * DEG) - Math.cos(from * DEG))
    out.push({ id: `g${out.length}`, says: `end of ${radius}`, girth: g, y, z, heading: to * DEG, liningGirth: g * 0.96 })
  }
  return out
}

function rounded(x0: number, y0: number, x1: number, y1: number, r: number): Outline {
  const b = Math.tan(Math.PI / 8)
  return [[x0 + r, y0, 0], [x1 - r, y0, b], [x1, y0 + r, 0], [x1, y1 - r, b], [x1 - r, y1, 0], [x0 + r, y1, b], [x0, y1 - r, 0], [x0, y0 + r, b]]
}

const LENGTH = 3.71
const HEIGHT = 1.213

function rows(): { readonly holes: HoleSet; readonly rows: readonly FastenerRow[] } {
  const names: string[] = []
  const set = { row: [] as number[], index: [] as number[], x: [] as number[], y: [] as number[], diameter: [] as number[] }
  const made: FastenerRow[] = []
  const add = (id: string, kind: FastenerRow['kind'], points: readonly (readonly [number, number])[], pitch: number): void => {
    names.push(id)
    points.forEach(([x, y], i) => {
      set.row.push(names.length - 1)
      set.index.push(i)
      set.x.push(x)
      set.y.push(y)
      set.diameter.push(0.0033)
    })
    made.push({
      id, says: `made-up row ${id}`, kind, joint: `J-${id}`, fastener: 'S4', diameter: 0.003175, pitch, spans: [{ from: 'F1', to: 'F7', first: 0, count: points.length, pitch }],
      span: points.map(() => 0), number: points.map((_, i) => i), station: points.map(p => p[0] + 2.975), girth: points.map(p => p[1] - 2.62), stack: points.map(() => 0),
      stacks: [{ parts: ['skin-left-side', 'frame-F3'], thickness: [0.00081, 0.0016], grip: 0.00241, length: 0.00794, name: '-4-5', count: points.length }], shared: {}, source: 'made up',
    })
  }
  const line = (from: number, to: number, pitch: number): number[] => {
    const n = Math.round((to - from) / pitch)
    return Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)
  }
  for (let f = 0; f < 7; f++) {
    const x = 0.025 + f * 0.61 + 0.007
    const ys = line(0.035, HEIGHT - 0.035, 0.0381).filter(y => !(f === 2 && y > 0.38 && y < 0.94))
    add(`hoop-F${f + 1}`, 'hoop', ys.map(y => [x, y] as const), 0.0381)
  }
  add('seam-2', 'seam', line(0.02, LENGTH - 0.02, 0.0254).map(x => [x, HEIGHT - 0.0125] as const), 0.0254)
  add('seam-3', 'seam', line(0.02, LENGTH - 0.02, 0.0254).filter(x => x < 2.3 || x > 3.1).map(x => [x, 0.0125] as const), 0.0254)
  const rim: (readonly [number, number])[] = []
  for (let i = 0; i < 52; i++) {
    const s = i / 52
    const a = s * 2 * Math.PI
    rim.push([1.245 + 0.586 * Math.sign(Math.cos(a)) * Math.abs(Math.cos(a)) ** 0.3, 0.66 + 0.266 * Math.sign(Math.sin(a)) * Math.abs(Math.sin(a)) ** 0.3])
  }
  add('rim-RW2', 'rim', rim, 0.03175)
  add('rim-HC2', 'rim', line(0, 14, 1).map(i => [3.4 + 0.06 * Math.cos((i / 15) * 2 * Math.PI), 0.3 + 0.05 * Math.sin((i / 15) * 2 * Math.PI)] as const), 0.03)
  return { holes: { rows: names, ...set }, rows: made }
}

export function madeUpDesign(definition: Definition): Design {
  const made = rows()
  const strake: Part = {
    id: 'skin-left-side', says: 'road-side skin between seams 2 and 3', trade: 'shell', kind: 'strake', material: '5052-H34', thickness: definition.shell.skin.thickness,
    side: 'left', place: { side: 'left', station: 4.83, girth: 2.0, waterline: 0.9 },
    patterns: [{
      face: 'skin', thickness: 0.00081,
      flat: { view: 'outside', x: 'aft', y: 'up', origin: { station: 2.975, girth: -2.62, says: 'forward lower corner' } },
      outline: [[0, 0, 0], [LENGTH, 0, 0], [LENGTH, HEIGHT, 0], [0, HEIGHT, 0]],
      cuts: [
        { opening: 'RW2', outline: rounded(0.67, 0.405, 1.82, 0.915, 0.075) },
        { opening: 'HC2', outline: rounded(3.36, 0.27, 3.44, 0.33, 0.01) },
        { opening: 'wheel', outline: [[2.32, 0, 0], [3.08, 0, 0], [3.08, 0.14, Math.tan(Math.PI / 8)], [3.02, 0.2, 0], [2.38, 0.2, Math.tan(Math.PI / 8)], [2.32, 0.14, 0]] },
      ],
      marks: [
        { says: 'roll R380 ends', kind: 'roll', from: [0, 1.1], to: [LENGTH, 1.1] },
        { says: 'edge of seam-2 lap', kind: 'lap', from: [0, HEIGHT - 0.025], to: [LENGTH, HEIGHT - 0.025] },
        { says: 'F3 web', kind: 'centre', from: [1.245, 0], to: [1.245, HEIGHT] },
      ],
      holes: made.holes,
    }],
    area: 3.6, mass: worked(7.83), centre: [4.8, -1.18, 0.9], stock: '48 in x 152 in', pieces: 1, notes: ['Grain runs fore and aft.'],
  }
  const opening: OpeningDerived = {
    id: 'RW2', says: 'window W2 (two-bay)', surface: 'left', side: 'left', place: { side: 'left', station: 4.22, girth: 1.96, waterline: 0.96 }, outline: rounded(3.645, -2.215, 4.795, -1.705, 0.075),
    open: true, cutIn: ['skin-left-side'], rim: { part: 'rim-RW2', row: 'rim-RW2', count: 52, pitch: 0.0314 }, lining: [], trimRing: null, framing: [], cutsFrames: ['F3'], crossesSeams: [], blanket: [],
  }
  const check = (id: string, verdict: Check['verdict'], margin: number | null): Check => ({
    id, says: `Made-up check ${id} on the road-side skin at R 4220.`, demand: margin === null ? null : 0.01, capacity: margin === null ? null : 0.01 * (1 + margin), unit: margin === null ? null : 'm', margin,
    verdict, source: 'common practice, no source', places: [opening.place], concerns: ['skin-left-side'], mend: verdict === 'fail' ? 'Move the window 12 mm aft.' : null, worked: [],
  })
  const points = section()
  return {
    definition, revision: '0123456789ab', section: { points, halfGirth: points[points.length - 1].girth, floorGirth: 2.9207, width: 2.392, residual: null },
    parts: [strake], rows: made.rows,
    joints: made.rows.map(row => ({ id: row.joint, says: `joint of ${row.id}`, layers: [], rows: [row.id], lap: row.kind === 'seam' ? 'upper over lower, sheds water' : null })),
    openings: [opening], checks: [check('a', 'pass', 0.4), check('b', 'fail', -0.1), check('c', 'caution', 0.02), check('d', 'not-checked', null)],
    totals: {
      mass: worked(7.83), masses: { skins: worked(7.83) }, fasteners: { solid: 612, blind: 0, byLength: { '-4-5': 612 } }, holes: made.holes.x.length,
      sheets: [{ stock: '48 in x 152 in', parts: ['skin-left-side'], used: 4.5, available: 4.7 }], overallLength: 6.954, bodyLength: 5.868, overallWidth: 2.392,
    },
    notCovered: ['structure: rail bending and shear flow'],
  }
}
