/** Can the half section be drawn, and does it enclose a coach? Gives its chain when it does. */
import { fitChain } from '../maths/fit-chain.js'
import { at, buildChain, type ChainElement, type ChainPiece, girthAtZ, type TangentChain } from '../maths/tangent-chain.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { deg, mm } from './say-size.js'

type Chain = NonNullable<NonNullable<Draft['section']>['chain']>
type Piece = NonNullable<Chain[number]>
type OpenPiece =
  | ChainPiece
  | { readonly kind: 'arc'; readonly name: string; readonly radius: number; readonly to: null }
  | { readonly kind: 'line'; readonly name: string; readonly length: null }

/** A heading may come out of a fit a rounding away from level or plumb; no shop can see this. rad */
const HAIR = 1e-9

/**
 * How deep the deepest metal lies inside the outer mould line, m: a trim ring on two laps of lining, tape, frame and skin, or
 * the inner side of a joint frame.
 */
function buildUp(draft: Draft): number | null {
  const { shell, lining, ends } = draft
  const deep = [shell?.frame?.height, shell?.tape, lining?.thickness?.value, lining?.thickness?.value, shell?.rim?.thickness?.value]
  const joint = [ends?.skin?.thickness?.value, shell?.jointFrame?.height]
  const skin = shell?.skin?.thickness?.value
  if (skin === undefined || [...deep, ...joint].some((p) => p === undefined)) return null
  const sum = (parts: readonly (number | undefined)[]): number => parts.reduce<number>((all, p) => all + (p as number), 0)
  return skin + Math.max(sum(deep), sum(joint))
}

/** Null when the section has a fault of its own; what depends on it is then left unsaid. */
export function sectionFaults(draft: Draft, reading: Reading): TangentChain | null {
  const { crown, chain } = draft.section ?? {}
  const before = reading.faults.length
  if (chain) {
    const depth = buildUp(draft)
    for (const [i, piece] of chain.entries()) if (piece) arcFaults(piece, i, depth, reading)
    headingFaults(chain, reading)
    fitFaults(draft, chain, reading)
  }
  if (!chain || crown === undefined || reading.faults.length > before) return null
  const pieces = chain.filter(isWhole)
  if (pieces.length < chain.length || draft.section?.fit === undefined) return null
  const drawn = draw(draft, crown, pieces, reading)
  if (!drawn) return null
  const trouble = enclosureTrouble(draft, drawn, crown)
  if (trouble) reading.impossible(['section', 'chain', trouble.piece], trouble)
  return trouble ? null : drawn
}

function isWhole(piece: Piece | undefined): piece is Piece & OpenPiece {
  return piece !== undefined && Object.values(piece).every((v) => v !== undefined)
}

function arcFaults(piece: Piece, i: number, depth: number | null, reading: Reading): void {
  if (piece.kind !== 'arc' || piece.radius === undefined) return
  const path = ['section', 'chain', i, 'radius']
  if (piece.radius === 0) {
    reading.impossible(path, { expected: 'a radius', because: 'an arc needs a radius', advice: 'Give it one, or make it a line.' })
  } else if (depth !== null && piece.radius > 0 && piece.radius <= depth) {
    const because = `the arc is tighter than what is built up inside it, ${mm(depth)} of skin, frame, tape, lining and trim, so they would fold`
    reading.impossible(path, { expected: `a radius above ${mm(depth)}`, because, advice: `Make the radius more than ${mm(depth)}.` })
  }
}

function headingFaults(chain: Chain, reading: Reading): void {
  let heading: number | null = 0
  chain.forEach((piece, i) => {
    if (!piece || (piece.kind === 'arc' && (piece.to === undefined || piece.radius === undefined))) heading = null
    if (piece?.kind !== 'arc' || piece.to === undefined || piece.radius === undefined) return
    if (piece.to !== null) arcTurnFaults({ radius: piece.radius, to: piece.to }, heading, i, reading)
    heading = piece.to
  })
}

function arcTurnFaults(arc: { readonly radius: number; readonly to: number }, from: number | null, i: number, reading: Reading): void {
  const path = ['section', 'chain', i]
  if (arc.to < 0 || arc.to > Math.PI) {
    const because = 'the section would cross itself: headings lie between 0 deg, level outboard, and 180 deg, level inboard'
    reading.impossible([...path, 'to'], { expected: 'a heading from 0 to 180 deg', because, advice: 'Write a heading in between.' })
  } else if (from !== null && arc.radius > 0 && arc.to <= from) {
    const because = `the arc starts at ${deg(from)} and bends down, so it cannot end at ${deg(arc.to)}`
    reading.impossible([...path, 'to'], {
      expected: `a heading above ${deg(from)}`,
      because,
      advice: `Make the heading more than ${deg(from)}.`,
    })
  } else if (from !== null && arc.radius < 0 && arc.to >= from) {
    const because = `a negative radius bends outward again, so from ${deg(from)} it cannot end at ${deg(arc.to)}`
    reading.impossible([...path, 'radius'], {
      expected: 'a radius above zero',
      because,
      advice: 'Take the minus sign away, or let the heading fall.',
    })
  }
}

function fitFaults(draft: Draft, chain: Chain, reading: Reading): void {
  const fit = draft.section?.fit
  if (fit === undefined) return
  const open = chain.filter((p) => p && (p.kind === 'arc' ? p.to === null : p.length === null)).length
  const asked = fit === null ? 0 : Object.values(fit).filter((v) => v !== null).length
  if (open === asked) return
  const because = `${open} ${open === 1 ? 'value is' : 'values are'} to be fitted, but ${asked} ${asked === 1 ? 'size is' : 'sizes are'} given to fit to`
  const advice = 'Mark as many values of the chain with fit as there are sizes under section fit.'
  reading.impossible(fit === null ? ['section', 'chain'] : ['section', 'fit'], {
    expected: 'as many sizes as fitted values',
    found: `${asked} for ${open}`,
    because,
    advice,
  })
}

function draw(draft: Draft, crown: number, pieces: readonly OpenPiece[], reading: Reading): TangentChain | null {
  const start = { y: 0, z: crown, heading: 0 }
  const fit = draft.section?.fit
  if (!fit) return buildChain(start, pieces as readonly ChainPiece[])
  const targets = { width: fit.width ?? null, height: fit.height ?? null, belt: fit.belt ?? null, floorWidth: fit.floorWidth ?? null }
  const solved = fitChain(start, pieces, targets)
  if (solved) return solved.chain
  const because = 'no section of these radii has these sizes'
  reading.impossible(['section', 'fit'], {
    expected: 'sizes the chain can meet',
    because,
    advice: 'Change a size or a radius, or mark another value with fit.',
  })
  return null
}

interface Trouble {
  readonly piece: number
  readonly expected: string
  readonly because: string
  readonly advice: string
}

/** The first thing that keeps a drawn section from enclosing a coach. */
function enclosureTrouble(draft: Draft, chain: TangentChain, crown: number): Trouble | null {
  for (const [piece, e] of chain.elements.entries()) {
    if (e.heading1 < -HAIR || e.heading1 > Math.PI + HAIR) {
      const because = `the section turns to ${deg(e.heading1)} here and would cross itself`
      return { piece, expected: 'headings from 0 to 180 deg', because, advice: 'Change the sizes it is fitted to.' }
    }
    const y = innermost(chain, e)
    if (y <= 0) {
      const because = `the section crosses the centre plane: it comes to ${mm(-y)} on the other side`
      return { piece, expected: 'a section on its own side', because, advice: 'Let it turn under less, or make the radius smaller.' }
    }
  }
  const piece = chain.elements.length - 1
  const toe = at(chain, chain.length)
  const under = draft.floor?.thickness ?? 0
  if (toe.z >= -under) {
    const because = `the section ends at waterline ${mm(toe.z)}, but it must reach below the floor, which ends at ${mm(-under)}`
    return {
      piece,
      expected: `a section that reaches below ${mm(-under)}`,
      because,
      advice: 'Carry the chain further down, or lower the crown.',
    }
  }
  const depth = buildUp(draft)
  const floorLine = girthAtZ(chain, 0)
  if (depth === null || floorLine === null) return null
  if (at(chain, floorLine, depth).y > 0 && crown > depth && at(chain, chain.length, depth).y > 0) return null
  const because = `with ${mm(depth)} of frame and lining on each side nothing is left inside`
  return { piece, expected: 'a section with room inside', because, advice: 'Make the section larger.' }
}

/** The smallest y of a piece past its start, m: at its end, or where a concave arc turns outward again. */
function innermost(chain: TangentChain, e: ChainElement): number {
  const plumb = Math.PI / 2
  const end = at(chain, e.girth1).y
  if (e.curvature >= 0 || e.heading0 <= plumb || e.heading1 >= plumb) return end
  return Math.min(end, at(chain, e.girth0 + (plumb - e.heading0) / e.curvature).y)
}
