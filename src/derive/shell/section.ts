/** The cross-section: its chain, the flange beyond the toe, and the table of points a shop marks out from. */

import { fitChain } from '../../maths/fit-chain.js'
import { at, buildChain, type ChainPiece, girthAtOffset, girthAtZ, type TangentChain, widest } from '../../maths/tangent-chain.js'
import type { Worked } from '../../quantity/formula.js'
import { liningDepth } from '../common/lining-depth.js'
import type { SectionPoint } from '../nouns.js'
import { fitResidual } from './formulas/surface.formulas.js'
import type { ShellInput } from './input.js'

export interface Section {
  /** half chain from the crown to the toe */
  readonly chain: TangentChain
  /** the same carried on round the toe flange to the sheet's edge */
  readonly withFlange: TangentChain
  /** the chain carried straight on past the toe, whatever the flange does: layers under the skin are not bent round it */
  readonly straight: TangentChain
  readonly toe: number
  readonly sheetEdge: number
  /** centre of the toe flange, where its rivets stand */
  readonly toeRow: number
  readonly floor: number
  readonly width: number
  /** largest miss of a fitted size, m; null where nothing was fitted */
  readonly residual: Worked<'m'> | null
  readonly pieces: readonly ChainPiece[]
}

/** Throws only on input that the definition's own faults have already refused. */
export function sectionOf(input: Pick<ShellInput, 'section' | 'shell'>): Section {
  const start = { y: 0, z: input.section.crown, heading: 0 }
  const fitted = input.section.fit ? fitChain(start, input.section.chain, input.section.fit) : null
  if (input.section.fit && !fitted) throw new Error('the section cannot be fitted to its sizes')
  const pieces = fitted ? fitted.pieces : (input.section.chain as readonly ChainPiece[])
  const chain = buildChain(start, pieces)
  const flange = toePieces(input.shell, chain)
  const withFlange = flange.length > 0 ? buildChain(start, [...pieces, ...flange]) : chain
  const { turn, flange: reach } = input.shell.toe
  const straight = turn === 0 ? withFlange : buildChain(start, [...pieces, { kind: 'line', name: 'toe flange', length: reach }])
  const floor = girthAtZ(chain, 0)
  if (floor === null) throw new Error('the section does not reach WL 0')
  const bend = input.shell.toe.turn === 0 ? 0 : withFlange.elements[withFlange.elements.length - 2].girth1
  const straightFrom = input.shell.toe.turn === 0 ? chain.length : bend
  return {
    chain,
    withFlange,
    straight,
    toe: chain.length,
    sheetEdge: withFlange.length,
    floor,
    pieces,
    toeRow: (straightFrom + withFlange.length) / 2,
    width: 2 * widest(chain).y,
    residual: input.section.fit ? residualOf(chain, input.section.fit) : null,
  }
}

/** How far the finished chain misses the sizes it was solved for; a size not asked for is not missed. */
function residualOf(chain: TangentChain, fit: NonNullable<ShellInput['section']['fit']>): Worked<'m'> {
  const wide = widest(chain)
  const floor = girthAtZ(chain, 0)
  const miss = (asked: number | null, drawn: number): number => (asked === null ? 0 : drawn - asked)
  return fitResidual({
    w: miss(fit.width, 2 * wide.y),
    h: miss(fit.height, at(chain, 0).z - at(chain, chain.length).z),
    b: miss(fit.belt, wide.z),
    f: miss(fit.floorWidth, floor === null ? Number.NaN : 2 * at(chain, floor).y),
  })
}

/** A bend without a radius is drawn with this one, so that it has a length on the mould line. m */
const SHARP = 1e-6

/**
 * A flange bent at the toe: an arc, then the straight rest after the bend's setback. The mould line is the sheet's outer
 * face: the outside of a bend that turns in, the inside of one that turns out.
 */
function toePieces(shell: ShellInput['shell'], chain: TangentChain): ChainPiece[] {
  const { flange, turn, bendRadius } = shell.toe
  if (flange === 0) return []
  if (turn === 0) return [{ kind: 'line', name: 'toe flange', length: flange }]
  const face = turn > 0 ? bendRadius + shell.skin.thickness.value : Math.max(bendRadius, SHARP)
  const heading = chain.elements[chain.elements.length - 1].heading1
  return [
    { kind: 'arc', name: 'toe bend', radius: Math.sign(turn) * face, to: heading + turn },
    { kind: 'line', name: 'toe flange', length: flange - face * Math.tan(Math.abs(turn) / 2) },
  ]
}

/** Crown to toe: every place a tape on the section is read. Sorted by girth. */
export function pointTable(input: Pick<ShellInput, 'shell' | 'openings' | 'floor'>, section: Section): SectionPoint[] {
  const { chain } = section
  const depth = liningDepth(input)
  const point = (id: string, says: string, girth: number): SectionPoint => {
    const p = at(chain, girth)
    return { id, says, girth, y: p.y, z: p.z + 0, heading: p.heading, liningGirth: girthAtOffset(chain, girth, depth) }
  }
  const points = [point('crown', 'crown', 0)]
  for (const seam of input.shell.seams) points.push(point(seam.id, seam.id.replace('-', ' '), seam.girth))
  chain.elements.slice(1).forEach((e, i) => {
    const id = `${chain.elements[i].name}/${e.name}`
    points.push(point(id, id, e.girth0))
  })
  for (const [id, says, z] of heights(input)) {
    const girth = girthAtZ(chain, z)
    if (girth !== null) points.push(point(id, says, girth))
  }
  // the section is level there to within a thousandth of a degree, so the belt is marked on a whole millimetre a tape can read
  const belt = girthAtZ(chain, Math.round(widest(chain).z * 1000) / 1000) ?? widest(chain).girth
  points.push(point('belt', 'belt, widest', belt))
  points.push(point('toe', 'toe', chain.length))
  return points.sort((a, b) => a.girth - b.girth)
}

/** Waterlines worth a line of the table: window heads, middles and sills, and the floor's two faces. */
function heights(input: Pick<ShellInput, 'openings' | 'floor'>): [string, string, number][] {
  const seen = new Map<string, [string, string, number]>()
  const add = (word: string, z: number): void => {
    const mm = Math.round(z * 1e4) / 10
    seen.set(`${word}-${mm}`, [`${word.replace(' ', '-')}-${mm}`, `${word} WL ${mm}`, z])
  }
  for (const o of input.openings) {
    if (o.kind !== 'window' || o.waterline === null || (o.surface !== 'right' && o.surface !== 'left')) continue
    add('window head', o.waterline + o.height / 2)
    add('window mid', o.waterline)
    add('window sill', o.waterline - o.height / 2)
  }
  const floor: [string, string, number][] = [['floor-top', 'floor top WL 0', 0]]
  if (input.floor)
    floor.push(['floor-underside', `floor underside WL ${-Math.round(input.floor.thickness * 1e4) / 10}`, -input.floor.thickness])
  return [...seen.values(), ...floor]
}
