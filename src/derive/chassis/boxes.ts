/** Sheet work of the chassis: wheel boxes, underbelly, plates, and the angles tanks hang by. */
import type { SheetMaterial } from '../../definition/types.js'
import { netMoments } from '../../maths/area-moments.js'
import { clipToRectangle } from '../../maths/outline.js'
import { superellipseHalf } from '../../maths/superellipse.js'
import { densityOf } from '../common/density.js'
import type { Outline, Part } from '../nouns.js'
import type { Bay, WheelBox } from '../under-nouns.js'
import type { ChassisInput } from './input.js'
import { handOf, SIDES } from './layout.js'
import { partFrom, pattern, rectangle } from './parts.js'
import { bendOf } from './pressed.js'
import { NOT_STRENGTH } from './rails.js'

/** Wheel boxes are bent from galvanised steel sheet of ordinary density, from memory. kg/m3 */
const SHEET_STEEL = { name: 'galvanised steel sheet', density: 7850 }

/** Top and inner side from one strip with a flange on the floor, and two ends. The skin closes the outer side. */
export function wheelBoxParts({ box, boxes }: ChassisInput, K: number): Part[] {
  if (!box) return []
  const t = box.thickness.value
  return boxes.map((wheels) => {
    const [L, wide, tall] = [wheels.x[1] - wheels.x[0], wheels.y[1] - wheels.y[0], wheels.z[1]]
    const BD = bendOf(t, 2 * t, K).deduction.value
    // it stands on the floor: its height runs from the floor's top
    const strip = wide + tall + box.flange - 2 * BD
    const hand = handOf(wheels.side)
    const bends = [box.flange - BD / 2, box.flange + tall - 1.5 * BD]
    const x = hand === 1 ? ('aft' as const) : ('forward' as const)
    const origin = {
      station: hand === 1 ? wheels.x[0] : wheels.x[1],
      says: `${hand === 1 ? 'forward' : 'aft'} end, edge of the flange on the floor`,
    }
    const end = (which: 'forward' | 'aft') =>
      pattern({
        face: `${which} end`,
        view: 'outside',
        x: 'right',
        y: 'up',
        origin: { station: wheels.x[which === 'forward' ? 0 : 1], says: 'inner lower corner, edge of the flange on the floor' },
        thickness: t,
        outline: rectangle(0, 0, wide, tall + box.flange - BD),
        marks: [{ says: 'bend 90 deg, flange outward', kind: 'bend', from: [0, box.flange - BD / 2], to: [wide, box.flange - BD / 2] }],
      })
    return partFrom({
      id: wheels.part,
      says: `wheel box, ${wheels.side}`,
      kind: 'wheel-box',
      side: wheels.side,
      material: SHEET_STEEL.name,
      thickness: box.thickness,
      density: SHEET_STEEL.density,
      patterns: [
        pattern({
          face: 'top and inner side',
          view: 'inside',
          x,
          y: 'up',
          origin,
          thickness: t,
          outline: rectangle(0, 0, L, strip),
          marks: bends.map((y) => ({ says: 'bend 90 deg', kind: 'bend' as const, from: [0, y] as const, to: [L, y] as const })),
        }),
        end('forward'),
        end('aft'),
      ],
      centre: boxCentre(wheels, hand, tall, wide, L),
      notes: ['Open below and toward the skin, which closes it. Seal every seam: road water is thrown at it.'],
    })
  })
}

/** Of the top, the inner side and two ends, flanges left out: they lie in the plane of the floor. */
function boxCentre(w: WheelBox, hand: number, tall: number, wide: number, L: number): [number, number, number] {
  const [top, side, ends] = [L * wide, L * tall, 2 * wide * tall]
  const all = top + side + ends
  const middle = (w.y[0] + w.y[1]) / 2
  return [
    (w.x[0] + w.x[1]) / 2,
    (hand * (top * middle + side * w.y[0] + ends * middle)) / all,
    (top * tall + (side + ends) * (tall / 2)) / all,
  ]
}

/** Sheets across the coach from edge to edge of the skin; they stop one lap short of every axle tube. Common practice, no source. */
export function underbellyParts(input: ChassisInput): Part[] {
  const { belly, toe, frames, boxes, tubes, halfTube, lap, bellyStock } = input
  const [first, last] = [frames[0].station, frames[frames.length - 1].station]
  const tail = superellipseHalf(toe.reach, toe.half, toe.exponent, 12)
  const whole: Outline = [
    ...tail.map(([x, y, b]) => [x + last, y, b] as const),
    // the nose is the tail turned half a turn
    ...tail.map(([x, y, b]) => [first - x, -y, b] as const),
  ]
  const stops = [
    first - toe.reach,
    ...[...tubes].sort((a, b) => a - b).flatMap((x) => [x - halfTube - lap, x + halfTube + lap]),
    last + toe.reach,
  ]
  const wide = Math.min(bellyStock.width, bellyStock.length)
  const parts: Part[] = []
  for (let k = 0; k + 1 < stops.length; k += 2) {
    const [a, b] = [stops[k], stops[k + 1]]
    if (b - a < 2 * lap) continue
    const count = Math.max(1, Math.ceil((b - a - lap) / (wide - lap)))
    const step = (b - a - lap) / count
    for (let i = 0; i < count; i++)
      parts.push(bellySheet(whole, belly, boxes, parts.length + 1, a + i * step, a + (i + 1) * step + lap, toe.z, bellyStock.name))
  }
  return parts
}

function bellySheet(
  whole: Outline,
  belly: SheetMaterial,
  boxes: readonly WheelBox[],
  n: number,
  x0: number,
  x1: number,
  z: number,
  stock: string,
): Part {
  const shift = (outline: Outline): Outline => outline.map(([x, y, b]) => [x - x0, y, b] as const)
  const blank = clipToRectangle(whole, x0, -10, x1, 10)
  const half = Math.max(...blank.map((p) => p[1]))
  const cuts = boxes.flatMap((box) => {
    const [a, b] = [Math.max(box.x[0], x0), Math.min(box.x[1], x1)]
    const hand = handOf(box.side)
    if (b - a < 1e-6 || half <= box.y[0]) return []
    const [p, q] = [hand * box.y[0], hand * half]
    return [{ opening: box.id, outline: shift(rectangle(a, Math.min(p, q), b, Math.max(p, q))) }]
  })
  const face = pattern({
    face: 'sheet',
    view: 'outside',
    x: 'aft',
    y: 'left',
    origin: { station: x0, says: 'forward edge, centre plane, seen from below' },
    thickness: belly.thickness.value,
    // seen from below left and right change places
    outline: mirrored(shift(blank)),
    cuts: cuts.map((c) => ({ ...c, outline: mirrored(c.outline) })),
  })
  const middle = netMoments(
    face.outline,
    face.cuts.map((c) => c.outline),
  )
  return partFrom({
    id: `underbelly-${n}`,
    says: `underbelly sheet ${n}`,
    kind: 'underbelly',
    side: 'centre',
    material: belly.alloy,
    thickness: belly.thickness,
    density: densityOf(belly.alloy, belly.thickness.value),
    patterns: [face],
    centre: [x0 + middle.x, -middle.y, z],
    stock,
    notes: [
      "Each sheet laps over the next behind it, so that road wind does not lift an edge. The outer edge follows the toe flange; the toe row's holes are drilled through from the flange.",
      'Tape between it and steel: bare aluminium on steel corrodes.',
    ],
  })
}

const mirrored = (outline: Outline): Outline => {
  const n = outline.length
  // the arc to a point becomes the arc from it when the order is turned; turning and mirroring keep its sense
  return Array.from({ length: n }, (_, i) => {
    const here = outline[n - 1 - i]
    const before = outline[(2 * n - 2 - i) % n]
    return [here[0], -here[1], before[2]] as const
  })
}

export function plateParts({ chassis }: ChassisInput): Part[] {
  const { steel, plates } = chassis
  if (!steel) return []
  return plates.map((p) => {
    const side = Math.abs(p.y) < 1e-9 ? ('centre' as const) : p.y > 0 ? ('right' as const) : ('left' as const)
    return partFrom({
      id: p.id,
      says: p.says,
      kind: 'chassis-plate',
      side,
      material: steel.name,
      thickness: p.thickness,
      density: steel.density,
      patterns: [
        pattern({
          face: 'plate',
          view: 'inside',
          x: 'aft',
          y: 'right',
          origin: { station: p.station - p.length / 2, y: p.y - p.width / 2, says: 'forward left corner, seen from above' },
          thickness: p.thickness.value,
          outline: rectangle(0, 0, p.length, p.width),
        }),
      ],
      centre: [p.station, p.y, p.waterline],
      notes: ["Holes to suit what is bought: drill from the fitting's own template.", NOT_STRENGTH],
    })
  })
}

export function bearerParts({ chassis, top }: ChassisInput, bays: readonly Bay[]): Part[] {
  const { steel, kFactor, crossMember } = chassis
  if (!steel || !crossMember) return []
  // bent from the cross-members' own sheet
  const { thickness } = crossMember
  const BD = bendOf(thickness.value, crossMember.bendRadius, kFactor).deduction.value
  return chassis.bays.flatMap((bay, i) =>
    SIDES.map((side) => {
      const box = bays[i]
      const L = box.x[1] - box.x[0]
      const W = 2 * bay.bearer - BD
      const y = side === 'left' ? box.y[0] : box.y[1]
      return partFrom({
        id: `bearer-${bay.id}-${side}`,
        says: `bearer of the bay ${bay.id}, ${side}`,
        kind: 'bay-bearer',
        side,
        material: steel.name,
        thickness,
        density: steel.density,
        patterns: [
          pattern({
            face: 'blank',
            view: 'inside',
            x: 'aft',
            y: 'up',
            origin: { station: box.x[0], says: 'forward end, lower edge of the blank' },
            thickness: thickness.value,
            outline: rectangle(0, 0, L, W),
            marks: [{ says: 'bend 90 deg', kind: 'bend', from: [0, W / 2], to: [L, W / 2] }],
          }),
        ],
        centre: [(box.x[0] + box.x[1]) / 2, y, top - bay.depth],
        notes: ['Its level leg carries the tank; hung from the cross-members at both ends.', NOT_STRENGTH],
      })
    }),
  )
}
