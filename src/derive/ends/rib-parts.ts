/** Ribs as parts: what openings have left of each, its two flanges laid flat with their holes, its mass and its middle. */
import type { Vec3 } from '../../maths/vec.js'
import { memberMass } from '../common/mass.formulas.js'
import type { HoleSet, Part, Pattern } from '../nouns.js'
import type { Ground } from './ground.js'
import { holesOn, rowsThrough } from './holes.js'
import { type EndRow, faceKey } from './layers.js'
import type { LocalEnd } from './local.js'
import { type Pieces, type Rib, type RibPiece, ribPart, rivetsBeside, stripPattern } from './members.js'
import { endPart, endPlace, mean, type Standing } from './parts.js'

export function ribParts(local: LocalEnd, at: Standing, rows: readonly EndRow[], whole: Pieces): Part[] {
  return local.ribs.flatMap((rib) => {
    const pieces = whole.get(rib.row) ?? []
    return pieces.length === 0 ? [] : [ribPartOf(local.ground, at, rib, pieces, rows)]
  })
}

/** Places a rib's centre is the mean of. */
const SAMPLES = 25
const MIDDLES = new WeakMap<Rib, { readonly from: number; readonly to: number; readonly middle: Vec3 }>()

/** The middle of a rib between two girths, once for nose and tail where no opening cuts it. */
function middleOf(rib: Rib, from: number, to: number): Vec3 {
  const known = MIDDLES.get(rib)
  if (known && known.from === from && known.to === to) return known.middle
  const middle = mean(
    Array.from({ length: SAMPLES }, (_, i) => rib.flange.atSigma(rib.outer.sigmaAt(from + ((to - from) * (i + 0.5)) / SAMPLES))),
  )
  MIDDLES.set(rib, { from, to, middle })
  return middle
}

/** How far fasteners of a row stand along the flanges of a rib, once for nose and tail and for both hands, whose rows share their girths. */
const ALONG = new WeakMap<readonly number[], Map<string, (i: number) => number>>()

/** Each is worked out when it is asked for: of a row round the end only one or two go through any one rib. */
function alongOf(girths: readonly number[], key: string, along: (girth: number) => number): (i: number) => number {
  const known = ALONG.get(girths) ?? new Map<string, (i: number) => number>()
  ALONG.set(girths, known)
  const found = known.get(key)
  if (found) return found
  const runs = new Map<number, number>()
  const run = (i: number): number => {
    const made = runs.get(i) ?? along(girths[i])
    runs.set(i, made)
    return made
  }
  known.set(key, run)
  return run
}

function ribPartOf(ground: Ground, at: Standing, rib: Rib, pieces: readonly RibPiece[], rows: readonly EndRow[]): Part {
  const { frame } = ground.input.shell
  const part = ribPart(at.end, rib)
  const run = (girth: number): number => rib.flange.lengthAt(rib.outer.sigmaAt(girth))
  const inner = (girth: number): number => rib.lined.flangeAt(rib.outer.sigmaAt(girth))
  const own = pieces.reduce((sum, p) => sum + run(p.to) - run(p.from), 0)
  // across the flange toward the left of the nose or the right of the tail; the web stands in its middle
  const toward = at.end === 'nose' ? -1 : 1
  const face = (name: 'outer flange' | 'inner flange'): Pattern => {
    const y = frame.flange / 2 + toward * rivetsBeside(rib, name, frame.rowOffset)
    const along = name === 'outer flange' ? run : inner
    const key = `${rib.kind} ${Math.abs(rib.phi)} ${name}`
    const from = along(pieces[0].from)
    const long = along(pieces[pieces.length - 1].to) - from
    return stripPattern({
      face: name,
      thickness: frame.thickness.value,
      length: long,
      width: frame.flange,
      flat: {
        view: 'outside',
        x: 'down',
        y: at.end === 'nose' ? 'left' : 'right',
        origin: {
          station: endPlace(at, rib.outer.atSigma(rib.outer.sigmaAt(pieces[0].from)), 0).station,
          girth: pieces[0].from,
          says: 'end at the header ring',
        },
      },
      marks: [{ says: 'rivet line', kind: 'centre', from: [0, y], to: [long, y] }],
      gaps: pieces.slice(1).map((p, i) => ({ opening: p.fromMark, from: along(pieces[i].to) - from, to: along(p.from) - from })),
      holes: holesDown(rib, rows, { part, name, from, y }, (row, i) => alongOf(row.local.draft.girth, key, along)(i), ground),
    })
  }
  return endPart(at, {
    id: part,
    says: `${at.end} ${rib.kind === 'seam' ? `seam rib ${rib.number}` : `mid rib of gore ${rib.number}`}`,
    kind: 'end-rib',
    material: frame.alloy,
    thickness: frame.thickness,
    centre: middleOf(rib, pieces[0].from, pieces[pieces.length - 1].to),
    girth: (pieces[0].from + pieces[pieces.length - 1].to) / 2,
    area: own * frame.flange,
    mass: memberMass({ w: frame.linearMass, L: own }),
    pieces: pieces.length,
    patterns: [face('outer flange'), face('inner flange')],
    notes: pieces.length > 1 || pieces[0].toMark !== 'base' || pieces[0].fromMark !== 'ring' ? [cutNote(pieces)] : [],
  })
}

/** A flange's holes but for the hand they lie on, with what they were laid from. */
interface Drilled {
  readonly from: number
  readonly by: readonly unknown[]
  readonly holes: HoleSet
}

const DRILLED = new WeakMap<Rib, Map<string, Drilled>>()

/** Once for nose and tail, where the same fasteners of the same rows go through: they differ in the rows' names and in `y`. */
function holesDown(
  rib: Rib,
  rows: readonly EndRow[],
  { part, name, from, y }: { readonly part: string; readonly name: string; readonly from: number; readonly y: number },
  along: (row: EndRow, i: number) => number,
  ground: Ground,
): HoleSet {
  const key = faceKey(part, name)
  const met = rowsThrough(rows, key)
  const by = met.flatMap((row) => [row.local, row.through.get(key)])
  const known = DRILLED.get(rib) ?? new Map<string, Drilled>()
  DRILLED.set(rib, known)
  const last = known.get(name)
  if (last && last.from === from && last.by.length === by.length && last.by.every((each, i) => each === by[i])) {
    const { row, index, x, diameter } = last.holes
    return Object.freeze({ rows: met.map((one) => one.row.id), row, index, x, y: x.map(() => y), diameter })
  }
  const holes = holesOn(rows, part, name, (row, i) => [along(row, i) - from, y], ground)
  known.set(name, { from, by, holes })
  return holes
}

function cutNote(pieces: readonly RibPiece[]): string {
  const by = new Set(pieces.flatMap((p) => [p.fromMark, p.toMark]).filter((m) => m !== 'ring' && m !== 'base'))
  return `Cut by ${[...by].join(' and ')}: ${pieces.length === 1 ? 'one piece is left' : `${pieces.length} pieces are left`}.`
}
