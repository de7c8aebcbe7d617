/** From fasteners and lines on the coach to places on a panel. */

import type { Design } from '../../derive/design.js'
import { meridianGirth, sigmaAtMeridian } from '../../derive/ends/meridian.js'
import { rowsById } from '../../derive/holes.js'
import type { FastenerRow, HoleSet, MarkLine, OpeningDerived } from '../../derive/nouns.js'
import { inBlank } from '../../maths/blank/in-blank.js'
import { loftAt, sigmaAtZ } from '../../maths/loft.js'
import type { PanelBlank } from './compute.js'
import { chainOf, type Frame, type Point, placedIn } from './flat.js'
import type { Panel } from './panel.js'
import type { Serves } from './panels.js'
import type { OnSheet, Shape } from './shape.js'

/** A panel laid flat for one of its parts. `joint` is the station of the part's joint frame. */
export interface Laid {
  readonly shape: Shape
  readonly panel: Panel
  readonly blank: PanelBlank
  readonly frame: Frame
  readonly serves: Serves
  readonly joint: number
}

const QUARTER = Math.PI / 2

/** Pilot holes of every row through the part, where its fasteners' normals meet its mid surface. */
export function pilotsOf(design: Pick<Design, 'rows' | 'definition'>, laid: Laid): HoleSet {
  const set = {
    rows: [] as string[],
    row: [] as number[],
    index: [] as number[],
    x: [] as number[],
    y: [] as number[],
    diameter: [] as number[],
  }
  for (const row of rowsById(design.rows).values()) {
    const through = row.stacks.map((s) => s.parts.includes(laid.serves.part))
    if (!through.includes(true)) continue
    const pilot = design.definition.fasteners.find((f) => f.id === row.fastener)?.pilot
    if (pilot === undefined) throw new Error(`row ${row.id} has unknown fastener ${row.fastener}`)
    const k = set.rows.push(row.id) - 1
    row.stack.forEach((stack, i) => {
      if (!through[stack]) return
      const [x, y] = flatAt(laid, fastenerOn(laid, row, i))
      set.row.push(k)
      set.index.push(i)
      set.x.push(x)
      set.y.push(y)
      set.diameter.push(pilot)
    })
  }
  return Object.freeze({ ...set, role: 'pilot' })
}

/** Where a place of the part (its own side's azimuth) comes to lie in the part's pattern, m. */
function flatAt({ panel, blank, frame, serves }: Laid, on: OnSheet): Point {
  const [u, v] = panel.locate(serves.mirrored ? { ...on, phi: -on.phi } : on)
  return placedIn(frame, serves.turned, inBlank(blank, u, v))
}

function outOf({ serves, joint }: Laid, station: number): number {
  return serves.end === 'nose' ? joint - station : station - joint
}

export function fastenerOn(laid: Laid, row: FastenerRow, i: number): OnSheet {
  const { shape, panel } = laid
  if (row.end) return onSurface(shape, row.end.azimuth[i], row.waterline[i])
  // rows of the barrel: straight along it, so the girth is the section's own
  const [girth, x] = [Math.abs(row.girth[i]), outOf(laid, row.station[i])]
  const [sigma, past] = [Math.min(girth, shape.toe), Math.max(0, girth - shape.toe)]
  const side = row.girth[i] < 0 ? -1 : 1
  if (x <= 0) return { phi: side * QUARTER, sigma, past, back: -x }
  const y = side * loftAt(shape.loft, QUARTER, sigma).r
  const phi = Math.atan2(y, x)
  // by the crown the meridians run every way, and only the distance from the crown tells how far down one a place is
  return { phi, sigma: panel.kind === 'cap' ? sigmaAtRadius(shape, phi, Math.hypot(x, y)) : sigma, past, back: 0 }
}

function sigmaAtRadius(shape: Shape, phi: number, r: number): number {
  let sigma = r
  for (let i = 0; i < 20; i++) {
    const p = loftAt(shape.loft, phi, sigma)
    const step = (p.r - r) / p.rSigma
    sigma -= step
    if (Math.abs(step) < 1e-13) break
  }
  return sigma
}

function onSurface(shape: Shape, phi: number, z: number): OnSheet {
  const { loft, toe } = shape
  const sigma = sigmaAtZ(loft.section, z)
  if (sigma !== null && sigma < toe) return { phi, sigma, past: 0, back: 0 }
  const p = loftAt(loft, phi, toe)
  const past = ((p.z - z) / -p.zSigma) * Math.sqrt(p.rSigma * p.rSigma + p.zSigma * p.zSigma)
  return { phi, sigma: toe, past: Math.max(0, past), back: 0 }
}

const STEPS = 40
const steps = (from: number, to: number, n: number = STEPS): number[] =>
  Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)

/** Lines drawn on the blank: the rivet lines it is set up by, the joint, the toe, and openings cut after forming. */
export function marksOf(laid: Laid, openings: readonly OpeningDerived[]): MarkLine[] {
  const lines = laid.panel.kind === 'gore' ? goreLines(laid) : capLines(laid)
  return [
    ...lines.flatMap(({ says, kind, on }) =>
      chainOf(
        says,
        kind,
        on.map((o) => flatAt(laid, o)),
      ),
    ),
    ...openings.filter((o) => o.cutIn.includes(laid.serves.part)).flatMap((o) => openingMarks(laid, o)),
  ]
}

interface Line {
  readonly says: string
  readonly kind: MarkLine['kind']
  readonly on: readonly OnSheet[]
}

function goreLines({ shape, panel, serves }: Laid): Line[] {
  const { loft, edges, toe, input } = shape
  const sign = serves.mirrored ? -1 : 1
  const [right, left] = [edges[panel.number - 1], edges[panel.number]]
  const down = (phi: number): OnSheet[] => [
    ...steps(sigmaAtMeridian(loft, phi, input.cap - input.lap / 2), toe).map((sigma) => ({ phi: sign * phi, sigma, past: 0, back: 0 })),
    ...(input.flange > 0 ? [{ phi: sign * phi, sigma: toe, past: input.flange, back: 0 }] : []),
  ]
  const edge = (phi: number, number: number): Line =>
    Math.abs(phi) > QUARTER - 1e-9
      ? { says: 'joint', kind: 'lap', on: down(phi) }
      : { says: `seam ${serves.mirrored ? shape.gores - number : number}`, kind: 'centre', on: down(phi) }
  const across = (says: string, sigma: (phi: number) => number): Line => ({
    says,
    kind: 'centre',
    on: steps(left, right).map((phi) => ({ phi: sign * phi, sigma: sigma(phi), past: 0, back: 0 })),
  })
  return [
    { says: 'mid rib', kind: 'centre', on: down((right + left) / 2) },
    edge(right, panel.number - 1),
    edge(left, panel.number),
    across('cap row', (phi) => sigmaAtMeridian(loft, phi, input.cap)),
    ...(input.flange > 0 ? [{ ...across('toe', () => toe), kind: 'lap' as const }] : []),
  ]
}

function capLines({ shape }: Laid): Line[] {
  const { loft, input } = shape
  const at = (phi: number, girth: number): OnSheet => ({
    phi,
    sigma: girth === 0 ? 0 : sigmaAtMeridian(loft, phi, girth),
    past: 0,
    back: 0,
  })
  const reach = input.cap + input.lap / 2
  return [
    { says: 'cap row', kind: 'centre', on: steps(-QUARTER, QUARTER, 2 * STEPS).map((phi) => at(phi, input.cap)) },
    { says: 'joint', kind: 'lap', on: steps(-reach, reach).map((y) => at((y < 0 ? -1 : 1) * QUARTER, Math.abs(y))) },
    { says: 'centre line', kind: 'centre', on: steps(0, reach).map((girth) => at(0, girth)) },
  ]
}

/** An opening's edge where it crosses the panel; the rest of it is on its neighbours. */
function openingMarks(laid: Laid, opening: OpeningDerived): MarkLine[] {
  const loop = opening.end?.loop ?? []
  const seen = loop.map((p) => onPanel(laid, p))
  // begun where the loop is off the panel, so that each stretch on it is whole
  const begin = seen.indexOf(null)
  const round = [...seen.slice(Math.max(0, begin)), ...seen.slice(0, Math.max(0, begin)), ...(begin < 0 ? seen.slice(0, 1) : [])]
  const stretches: Point[][] = [[]]
  for (const point of round) {
    if (point) stretches[stretches.length - 1].push(point)
    else stretches.push([])
  }
  return stretches.filter((s) => s.length > 1).flatMap((s, i) => chainOf(i === 0 ? `${opening.id}, cut after forming` : '', 'lap', s))
}

function onPanel(laid: Laid, [station, y, z]: readonly [number, number, number]): Point | null {
  const on = onSurface(laid.shape, Math.atan2(y, outOf(laid, station)), z)
  const [u, v] = laid.panel.locate(laid.serves.mirrored ? { ...on, phi: -on.phi } : on)
  return u < 0 || u > 1 || v < 0 || v > 1 ? null : flatAt(laid, on)
}

/** From the crown down the vertical plane through the place, m. */
export const girthDown = (shape: Shape, { phi, sigma, past }: OnSheet): number => meridianGirth(shape.loft, phi, sigma) + past
