/** The parts of one end: skin, frame and lining, with their areas, masses, centres and the flat patterns that are known. */
import type { Bought } from '../../definition/types.js'
import type { Vec3 } from '../../maths/vec.js'
import type { Worked } from '../../quantity/formula.js'
import { densityOf } from '../common/density.js'
import { memberMass, sheetMass } from '../common/mass.formulas.js'
import { capPart, type End, gorePart } from '../end-names.js'
import type { Part, PartKind, Place } from '../nouns.js'
import { holesOn } from './holes.js'
import type { EndRow } from './layers.js'
import type { LocalEnd } from './local.js'
import { stripPattern } from './members.js'

/** Where an end stands: local x runs outward from the joint. */
export interface Standing {
  readonly end: End
  readonly joint: number
}

export function endPlace(at: Standing, p: Vec3, girth: number): Place {
  const y = p[1]
  return {
    side: Math.abs(y) < 1e-9 ? 'centre' : y > 0 ? 'right' : 'left',
    station: at.joint + (at.end === 'nose' ? -p[0] : p[0]),
    girth,
    waterline: p[2],
    end: { which: at.end, y },
  }
}

interface Made {
  readonly id: string
  readonly says: string
  readonly kind: PartKind
  readonly material: string
  readonly thickness: Bought
  readonly centre: Vec3
  readonly girth: number
  readonly area: number
  readonly mass: Worked<'kg'>
  readonly patterns: Part['patterns']
  readonly notes: readonly string[]
  readonly pieces?: number
  readonly notComputed?: string
}

export function endPart(at: Standing, made: Made): Part {
  const { girth, centre, pieces, ...rest } = made
  const place = endPlace(at, centre, girth)
  return Object.freeze({
    ...rest,
    trade: 'ends' as const,
    side: place.side,
    place,
    centre: [place.station, centre[1], centre[2]] as const,
    stock: null,
    pieces: pieces ?? 1,
  })
}

const WAITS = 'The blank of a formed panel is worked out apart from the rest; the packet waits for it.'

export function skinParts(local: LocalEnd, at: Standing): Part[] {
  const { ground } = local
  const { ends, shell } = ground.input
  const t = ends.skin.thickness
  const rho = densityOf(ends.skin.alloy, t.value)
  const lap = ends.lap / 2
  const tab = shell.joint.overlap / 2
  const flange = ground.handed.sheetEdge - ground.toe
  const made = (id: string, says: string, kind: PartKind, area: number, centre: Vec3, girth: number): Part =>
    endPart(at, {
      id,
      says,
      kind,
      material: ends.skin.alloy,
      thickness: t,
      centre,
      girth,
      area,
      mass: sheetMass({ rho, t: t.value, A: area }),
      patterns: [],
      notes: [`${ends.make === 'formed' ? 'Formed' : 'Wrapped'}: area of the finished panel with its laps.`],
      notComputed: WAITS,
    })
  const around = (row: string): readonly number[] => local.rows.find((r) => r.draft.id === row)?.located.map((l) => l.phi) ?? []
  const gores = local.gores.map((patch, i) => {
    const k = i + 1
    const edge = (e: number): number => {
      const curve = ground.seamCurves[e]
      return (curve.length - ends.cap) * (e === 0 || e === ground.gores ? tab : lap)
    }
    const [c0, c1] = [ground.seamCurves[i], ground.seamCurves[k]]
    const width = (girth0: number, girth1: number): number => chord(c0.atSigma(c0.sigmaAt(girth0)), c1.atSigma(c1.sigmaAt(girth1)))
    const area = patch.area + edge(i) + edge(k) + lap * width(ends.cap, ends.cap) + flange * width(c0.length, c1.length)
    const mid = ground.midCurves[i]
    return made(gorePart(at.end, k), `${at.end} gore ${k}`, 'gore', area, patch.centre, (ends.cap + mid.length) / 2)
  })
  const capEdge = around('cap').length * (ground.input.rows.gore.pitch ?? 0)
  const cap = made(
    capPart(at.end),
    `${at.end} crown cap`,
    'crown-cap',
    local.cap.area + lap * capEdge + 2 * ends.cap * tab,
    local.cap.centre,
    0,
  )
  return [...gores, cap]
}

const chord = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** Middle of places that count alike. */
export function mean(points: readonly Vec3[]): Vec3 {
  const sum = points.reduce<[number, number, number]>((s, p) => [s[0] + p[0], s[1] + p[1], s[2] + p[2]], [0, 0, 0])
  return [sum[0] / points.length, sum[1] / points.length, sum[2] / points.length]
}

interface RingSpec {
  readonly id: string
  readonly says: string
  readonly kind: PartKind
  readonly member: { readonly alloy: string; readonly thickness: Bought; readonly linearMass: number }
  readonly width: number
  /** the skin's row first, then the lining's, each with its rivets' distance below the middle of its flange */
  readonly faces: readonly { readonly face: string; readonly row: string; readonly below: number }[]
}

/**
 * The header ring behind the cap's edge and the base channel: straight strips along the rows they carry. The ring is an I like the ribs,
 * its web toward the crown from the skin's rivets, so that it stays clear of the ribs' ends; the lining's stand above the web.
 */
export function ringParts(local: LocalEnd, at: Standing, rows: readonly EndRow[]): Part[] {
  const { frame, edgeChannel } = local.ground.input.shell
  const off = frame.rowOffset
  return [
    ...ringPart(local, at, rows, {
      id: `${at.end}-header-ring`,
      says: `${at.end} header ring`,
      kind: 'header-ring',
      member: frame,
      width: frame.flange,
      faces: [
        { face: 'outer flange', row: 'cap', below: off },
        { face: 'inner flange', row: 'lining-cap', below: -off },
      ],
    }),
    ...ringPart(local, at, rows, {
      id: `${at.end}-base`,
      says: `${at.end} base channel`,
      kind: 'end-base',
      member: edgeChannel,
      width: edgeChannel.height,
      faces: [{ face: 'outer flange', row: 'base', below: 0 }],
    }),
  ]
}

function ringPart(local: LocalEnd, at: Standing, rows: readonly EndRow[], spec: RingSpec): Part[] {
  const { id, says, kind, member, width } = spec
  const { joint, memberGap } = local.ground.input.shell
  const faces = spec.faces.flatMap(({ face, row: rowId, below }) => {
    const whole = local.rows.find((r) => r.draft.id === rowId)
    const run = local.runs[rowId]
    const row = rows.find((r) => r.row.id === `${at.end}-${rowId}`)
    // a small cap leaves the lining's row, one web further in, no room for a single fastener
    if (!whole || !run || !row || whole.located.length === 0) return []
    // the row stops its end distance short of the member, which stops short of the barrel's overlap
    const over = 2.5 * whole.draft.diameter - memberGap
    const length = run[run.length - 1] + 2 * over
    const byPhi = new Map(whole.located.map((l, i) => [l.phi, run[i]]))
    // seen from outside, right of travel is on the left of the nose and on the right of the tail
    const along = (r: EndRow, i: number): number => over + (byPhi.get(r.local.located[i].phi) ?? Number.NaN)
    const y = width / 2 - below
    const pattern = stripPattern({
      face,
      thickness: member.thickness.value,
      length,
      width,
      flat: {
        view: 'outside',
        x: at.end === 'nose' ? 'left' : 'right',
        y: 'up',
        origin: {
          station: endPlace(at, whole.located[0].point, 0).station,
          girth: whole.located[0].girth,
          says: `end beside the joint on the ${at.end === 'nose' ? 'right' : 'left'}`,
        },
      },
      marks: [{ says: 'rivet line', kind: 'centre', from: [0, y], to: [length, y] }],
      holes: holesOn(rows, id, face, (r, i) => [at.end === 'nose' ? along(r, i) : length - along(r, i), y], local.ground),
    })
    return [{ pattern, length, whole }]
  })
  if (faces.length === 0) return []
  const [{ whole, length }] = faces
  return [
    endPart(at, {
      id,
      says,
      kind,
      material: member.alloy,
      thickness: member.thickness,
      centre: mean(whole.located.map((l) => l.point)),
      girth: whole.located[0].girth,
      area: length * width,
      mass: memberMass({ w: member.linearMass, L: length }),
      patterns: faces.map((f) => f.pattern),
      notes: [
        `Bent to the ${kind === 'header-ring' ? 'cap row' : 'floor line'} from joint to joint, ${Math.round(joint.overlap * 500)} mm clear of each joint line.`,
      ],
    }),
  ]
}
