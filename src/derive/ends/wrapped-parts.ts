/** Wrapped gores as parts: the flat pattern with every hole full size, and what wrapping costs, said in its notes. */
import { outlineArea } from '../../maths/outline.js'
import type { Flat } from '../../maths/strip/on-strip.js'
import { add, scale, type Vec3 } from '../../maths/vec.js'
import { densityOf } from '../common/density.js'
import { sheetMass } from '../common/mass.formulas.js'
import { gorePart } from '../end-names.js'
import type { HoleSet, MarkLine, Part, Pattern, WrappedGoreFacts } from '../nouns.js'
import type { EndCut } from './cuts.js'
import type { BarrelRow, Ground } from './ground.js'
import { holesOn } from './holes.js'
import type { LocalRow } from './laid-row.js'
import type { EndRow } from './layers.js'
import type { LocalEnd } from './local.js'
import { loopOnSkin } from './openings.js'
import type { OnSkin } from './outer.js'
import { endPlace, type Standing } from './parts.js'
import { type FlatPlaces, flatPlaces, type OnEnd } from './wrapped-flat.js'
import { type Past, sheetMarks, sheetOutline } from './wrapped-outline.js'
import { type Cuts, mirror, ownPhi } from './wrapped-skin.js'
import type { GoreSheet, WrappedGore } from './wrapped-strip.js'

/** What nose and tail share of a sheet: its places, outline and marks on its own hand. */
export interface LaidSheet {
  readonly places: FlatPlaces
  readonly outline: readonly Flat[]
  readonly marks: readonly MarkLine[]
  readonly centre: Vec3
}

export function laidSheets(ground: Ground, gores: readonly WrappedGore[], cuts: Cuts): ReadonlyMap<GoreSheet, LaidSheet> {
  const laid = new Map<GoreSheet, LaidSheet>()
  for (const { sheet } of gores) {
    if (!sheet || laid.has(sheet)) continue
    const places = flatPlaces(ground, sheet, (phi) => cuts(sheet, phi))
    laid.set(sheet, {
      places,
      outline: sheetOutline(sheet.flat, places, past(ground, sheet)),
      marks: sheetMarks(ground, sheet, places),
      centre: centreOf(sheet),
    })
  }
  return laid
}

/** Half a lap under the cap, the flange past the toe, and what stands past the gore's own edges. */
const past = ({ input, handed, toe }: Ground, { p, q }: GoreSheet): Past => ({
  p: p.past,
  q: q.past,
  top: input.ends.lap / 2,
  foot: handed.sheetEdge - toe,
})

/** One end as it stands on the coach, with what goes through its sheets. */
export interface StandingEnd {
  readonly local: LocalEnd
  readonly at: Standing
  readonly rows: readonly EndRow[]
  readonly barrel: readonly BarrelRow[]
  readonly cuts: readonly EndCut[]
}

/** The parts of an end with its wrapped gores laid flat; a gore that cannot be wrapped says why it has no pattern. */
export function wrappedParts(end: StandingEnd, parts: readonly Part[]): Part[] {
  const { wrapped } = end.local
  if (!wrapped) return [...parts]
  const loops = end.cuts.map((cut): Loop => ({ id: cut.id, points: loopOnSkin(end.local.ground, cut, 0, LOOP) }))
  return parts.map((part) => {
    const gore = wrapped.gores.find((g) => gorePart(end.at.end, g.number) === part.id)
    if (!gore) return part
    const facts = wrapped.facts[gore.number - 1]
    const laid = gore.sheet && wrapped.laid.get(gore.sheet)
    if (!gore.sheet || !laid)
      return Object.freeze({ ...part, notes: notesOf(facts), notComputed: facts.refused ?? 'This gore has no sheet.' })
    return wrappedPart(end, { part, gore, sheet: gore.sheet, laid, facts }, loops)
  })
}

/** Places an opening's edge is drawn by. */
const LOOP = 120

interface Loop {
  readonly id: string
  readonly points: readonly OnSkin[]
}

/**
 * The edges of openings as far as they run over this sheet. They are drawn and not cut: where gores meet in an opening it is cut
 * when they are riveted, and the rim's holes are in every sheet.
 */
function openingMarks({ gore, sheet, laid }: Own, loops: readonly Loop[]): MarkLine[] {
  const { p, q } = sheet
  return loops.flatMap(({ id, points }) => {
    const flat = points.map(({ phi, point }): Flat | null => {
      const own = ownPhi(gore, phi)
      const aside = Math.hypot(point[0], point[1])
      const beyond = (by: number, past: number): boolean => by > 0 && aside * Math.sin(by) > past
      if (beyond(own - p.phi, p.past) || beyond(q.phi - own, q.past)) return null
      return laid.places.of({ phi: own, girth: Number.NaN, height: point[2], by: 'height' })
    })
    const marks: MarkLine[] = []
    flat.forEach((from, i) => {
      const to = flat[(i + 1) % flat.length]
      if (from && to) marks.push({ says: marks.length === 0 ? `${id}, cut when riveted` : '', kind: 'lap', from, to })
    })
    return marks
  })
}

interface Own {
  readonly part: Part
  readonly gore: WrappedGore
  readonly sheet: GoreSheet
  readonly laid: LaidSheet
  readonly facts: WrappedGoreFacts
}

/** From the sheet laid flat on its own hand to the flat pattern of the gore it is on one end. */
export function drawnFor(
  gore: WrappedGore,
  sheet: GoreSheet,
  end: Standing['end'],
): { readonly flip: boolean; readonly seen: (at: Flat) => Flat } {
  // x runs down and y to the left on the sheet's own hand, which is how the nose is seen from outside
  const flip = gore.turned !== (end === 'tail')
  const start: Flat = flip ? [sheet.flat.qx[0], sheet.flat.qy[0]] : [0, 0]
  return { flip, seen: ([x, y]) => (flip ? [x - start[0], start[1] - y] : [x, y]) }
}

function wrappedPart(end: StandingEnd, own: Own, loops: readonly Loop[]): Part {
  const { at } = end
  const { ground } = end.local
  const { part, gore, sheet, laid, facts } = own
  const { flip, seen } = drawnFor(gore, sheet, at.end)
  const drawn = laid.outline.map(seen)
  if (flip) drawn.reverse()
  const outline = drawn.map(([x, y]) => [x, y, 0] as const)
  const holes = holesThrough(end, own, seen)
  const opened = openingMarks(own, loops)
  const area = outlineArea(outline)
  const { value: t } = ground.input.ends.skin.thickness
  const edge = flip ? sheet.q : sheet.p
  const centre = gore.turned ? mirror(laid.centre) : laid.centre
  const place = endPlace(at, centre, part.place.girth)
  const pattern: Pattern = Object.freeze({
    face: 'sheet',
    flat: {
      view: 'outside' as const,
      x: 'down' as const,
      y: at.end === 'nose' ? ('left' as const) : ('right' as const),
      origin: {
        station: at.joint,
        girth: ground.input.ends.cap * (at.end === 'nose' ? 1 : -1),
        says: `cap row at the ${edge.joint ? 'joint' : 'seam'} on the ${at.end === 'nose' ? 'right' : 'left'} of travel`,
      },
    },
    thickness: t,
    outline,
    cuts: [],
    marks: [...laid.marks, ...opened].map((mark) => ({ ...mark, from: seen(mark.from), to: seen(mark.to) })),
    holes,
  })
  const { notComputed: _, ...rest } = part
  return Object.freeze({
    ...rest,
    place,
    centre: [place.station, centre[1], centre[2]] as const,
    patterns: [pattern],
    area,
    mass: sheetMass({ rho: densityOf(part.material, t), t, A: area }),
    // what costs metal when it is missed comes first: a sheet's list of notes is only so long
    notes: [...(opened.length > 0 ? ['Openings are drawn, not cut: cut them when the gores are riveted.'] : []), ...notesOf(facts)],
  })
}

/** Rows round the end stand at a level, those down it at a girth, rims where their pane puts them. */
function standsBy(kind: LocalRow['draft']['kind']): OnEnd['by'] {
  if (kind === 'cap' || kind === 'base' || kind === 'toe') return kind
  return kind === 'rim' ? 'height' : 'girth'
}

function holesThrough({ local, at, rows, barrel }: StandingEnd, { part, gore, laid }: Own, seen: (at: Flat) => Flat): HoleSet {
  const { ground } = local
  const { places } = laid
  const set = holesOn(
    rows,
    part.id,
    'sheet',
    (row, i) => {
      const { phi, girth, point } = row.local.located[i]
      return seen(places.of({ phi: ownPhi(gore, phi), girth, height: point[2], by: standsBy(row.local.draft.kind) }))
    },
    ground,
  )
  const all = { rows: [...set.rows], row: [...set.row], index: [...set.index], x: [...set.x], y: [...set.y], diameter: [...set.diameter] }
  for (const { row, through } of barrel) {
    const index = through.get(part.id)
    if (!index) continue
    const hole = ground.input.fasteners.find((f) => f.id === row.fastener)?.hole
    if (hole === undefined) throw new Error(`row ${row.id} has unknown fastener ${row.fastener}`)
    const k = all.rows.push(row.id) - 1
    for (const i of index) {
      const ahead = (row.station[i] - at.joint) * (at.end === 'nose' ? -1 : 1)
      const [x, y] = seen(places.atJoint(Math.abs(row.girth[i]), ahead))
      all.row.push(k)
      all.index.push(i)
      all.x.push(x)
      all.y.push(y)
      all.diameter.push(hole)
    }
  }
  return Object.freeze(all)
}

/** Centre of area of the sheet between its edges and end rulings, as quarters between neighbouring rulings. */
function centreOf({ strip }: GoreSheet): Vec3 {
  let [sum, area]: [Vec3, number] = [[0, 0, 0], 0]
  for (let k = 1; k < strip.rulings.length; k++) {
    const [a, b] = [strip.rulings[k - 1], strip.rulings[k]]
    const [own, other] = [((b.s - a.s) * (a.length + b.length)) / 4, ((b.t - a.t) * (a.length + b.length)) / 4]
    const middle = (u: Vec3, v: Vec3): Vec3 => scale(add(u, v), 0.5)
    const [p, q] = [middle(a.from, b.from), middle(a.to, b.to)]
    // each half is a triangle-like piece, its centre a third of the way from its own edge
    const third = (u: Vec3, v: Vec3): Vec3 => add(scale(u, 2 / 3), scale(v, 1 / 3))
    sum = add(sum, add(scale(third(p, q), own), scale(third(q, p), other)))
    area += own + other
  }
  return scale(sum, 1 / area)
}

const mm = (metres: number): string => (metres * 1000).toFixed(0)
const degrees = (angle: number): string => ((angle * 180) / Math.PI).toFixed(0)

function notesOf(facts: WrappedGoreFacts): string[] {
  const { drop, bend, inside, elastic, kinks, crease } = facts
  if (!drop || !inside || !crease)
    return [
      `Cannot be wrapped. ${facts.refused ?? ''}`.trim(),
      'Its mid rib and its rows are set out on the lofted surface, where a formed gore would lie.',
    ]
  const notes = ['Wrapped: a flat sheet with its laps, bent over its ribs along straight lines and not stretched.']
  notes.push(`Bending lines fall by up to ${mm(drop.most)} mm from edge to edge.`)
  if (bend) {
    const springs = bend.radius >= elastic.value
    notes.push(
      `Bent to a radius of ${mm(bend.radius)} mm at WL ${mm(bend.waterline)}, ${springs ? 'more' : 'less'} than the ${mm(elastic.value)} mm it springs back from: ${springs ? 'no rolling is needed' : 'roll it there first'}.`,
    )
  }
  notes.push(`Lies up to ${mm(inside.depth)} mm inside the lofted surface, at WL ${mm(inside.waterline)}.`)
  const sides = (['right', 'left'] as const).flatMap((side) => {
    const found = kinks[side]
    return found ? [`${degrees(found.angle)}° on the ${side} at WL ${mm(found.waterline)}`] : []
  })
  if (sides.length > 0) notes.push(`Meets what is beside it at an angle of up to ${sides.join(' and ')}.`)
  return notes
}
