/** One developed face before and after: its blank, its cuts and its holes. */
import type { Design } from '../derive/design.js'
import type { FlatFrame, Outline, Pattern } from '../derive/nouns.js'
import { boundsOf, flatten } from '../documents/drawing/view.js'
import { distanceToOutline } from '../maths/outline.js'
import { same } from '../quantity/same.js'
import { both, countBy } from './differ.js'
import { holeChanges, type Shift } from './holes.js'
import type { CutChange, FaceChange } from './nouns.js'

/** Null where the face stays as it was. `designs` are the two whose rows the holes belong to. */
export function faceChange(before: Design, after: Design, was: Pattern, now: Pattern): FaceChange | null {
  if (same(was, now)) return null
  const laid = shiftsOf(was.flat, now.flat).map((shift) => laidAt(before, after, was, now, shift))
  const [best] = laid.sort((a, b) => a.touched - b.touched || a.edge - b.edge)
  const change: FaceChange = {
    face: now.face,
    outline: best.edge === 0 ? null : { by: best.edge, width: both(size(was)[0], size(now)[0]), height: both(size(was)[1], size(now)[1]) },
    cuts: cutChanges(was, now, best.shift),
    holes: best.holes,
    marks: !same(was.marks, now.marks),
    lies: !same(was.flat, now.flat),
  }
  const stays = change.outline === null && change.cuts.length === 0 && change.holes.length === 0 && !change.marks && !change.lies
  return stays ? null : change
}

/** A face only one of the two designs has: all that is in it came or went. */
export function lonelyFace({ face, holes, cuts }: Pattern, status: 'added' | 'removed'): FaceChange {
  const none = { added: 0, removed: 0, moved: 0, by: 0, resized: 0 }
  const counts = countBy(holes.row, (row) => holes.rows[row])
  return {
    face,
    outline: null,
    cuts: cuts.map(({ opening }) => ({ opening, status, by: null })),
    holes: Object.entries(counts).map(([row, n]) => ({ row, ...none, [status]: n })),
    marks: true,
    lies: true,
  }
}

/** The greatest distance anything of the face moved, m; what came or went has not moved. */
export const mostMoved = ({ outline, cuts, holes }: FaceChange): number =>
  Math.max(0, outline?.by ?? 0, ...cuts.map((c) => c.by ?? 0), ...holes.map((h) => h.by))

interface Laid {
  readonly shift: Shift
  readonly holes: FaceChange['holes']
  /** holes that do not stay */
  readonly touched: number
  readonly edge: number
}

function laidAt(before: Design, after: Design, was: Pattern, now: Pattern, shift: Shift): Laid {
  const holes = holeChanges(before, after, was, now, shift)
  const touched = holes.reduce((sum, h) => sum + h.added + h.removed + h.moved, 0)
  return { shift, holes, touched, edge: apart(was.outline, moved(now.outline, shift)) }
}

/**
 * A face is laid on its old self corner on corner, or, where its corner moved, place on place: a sheet made longer at its
 * first end keeps its holes where they are on the coach, a rim ring that moved keeps them where they are on the ring.
 */
function shiftsOf(was: FlatFrame, now: FlatFrame): readonly Shift[] {
  const at: Shift = [along(now, now.x) - along(was, was.x), along(now, now.y) - along(was, was.y)]
  return Math.hypot(...at) < 1e-9 || was.x !== now.x || was.y !== now.y ? [[0, 0]] : [[0, 0], at]
}

/** The origin's place on the coach along one of the pattern's axes, m. */
function along({ origin }: FlatFrame, axis: FlatFrame['x'] | FlatFrame['y']): number {
  if (axis === 'aft') return origin.station
  if (axis === 'forward') return -origin.station
  if (axis === 'right') return origin.girth
  if (axis === 'left') return -origin.girth
  return axis === 'up' ? -Math.abs(origin.girth) : Math.abs(origin.girth)
}

const moved = (outline: Outline, [dx, dy]: Shift): Outline =>
  dx === 0 && dy === 0 ? outline : outline.map(([x, y, bulge]) => [x + dx, y + dy, bulge] as const)

const size = (pattern: Pattern): readonly [number, number] => {
  const box = boundsOf([pattern.outline])
  return [box.x1 - box.x0, box.y1 - box.y0]
}

function cutChanges(was: Pattern, now: Pattern, shift: Shift): readonly CutChange[] {
  const names = [...new Set([...was.cuts, ...now.cuts].map((c) => c.opening))]
  return names.flatMap((opening): readonly CutChange[] => {
    // a cut of one opening may come in several pieces; each is held against its own twin
    const [old, cuts] = [was.cuts, now.cuts].map((list) => list.filter((c) => c.opening === opening).map((c) => c.outline))
    if (old.length === 0) return [{ opening, status: 'added', by: null }]
    if (cuts.length === 0) return [{ opening, status: 'removed', by: null }]
    if (old.length !== cuts.length) return [{ opening, status: 'changed', by: null }]
    const by = Math.max(...old.map((outline, i) => apart(outline, moved(cuts[i], shift))))
    return by === 0 ? [] : [{ opening, status: 'changed', by }]
  })
}

/**
 * The greatest distance between two edges, m; 0 where they are the same to a nanometre. Edges of one make are held corner against
 * corner, others by the greatest distance from either to the other, arcs tried at eight places.
 */
function apart(a: Outline, b: Outline): number {
  if (same(a, b)) return 0
  const far = (from: Outline, to: Outline): number => Math.max(...flatten(from).map(([x, y]) => distanceToOutline(to, x, y)))
  const by = areOfOneMake(a, b) ? Math.max(...a.map(([x, y], i) => Math.hypot(b[i][0] - x, b[i][1] - y))) : Math.max(far(a, b), far(b, a))
  return by < 1e-9 ? 0 : by
}

/** As many corners, and between them lines and arcs that run the same ways. */
function areOfOneMake(a: Outline, b: Outline): boolean {
  if (a.length !== b.length) return false
  return a.every(([x, y, bulge], i) => {
    const [p, [u, v], q] = [a[(i + 1) % a.length], b[i], b[(i + 1) % b.length]]
    return Math.sign(bulge) === Math.sign(b[i][2]) && (p[0] - x) * (q[0] - u) + (p[1] - y) * (q[1] - v) > 0
  })
}
