/**
 * One's own section as it is typed: a crown, a handful of arcs and straights, and sizes from the tape to close on. What is not
 * good is said beside its field; what is good is drawn, with how far it misses the sizes.
 */
import { fitChain, type OpenPiece } from '../../maths/fit-chain.js'
import { at, buildChain, type ChainPiece, type TangentChain, widest } from '../../maths/tangent-chain.js'
import { parseQuantity, type QuantityKind } from '../../quantity/doors.js'
import { type Branch, word } from './tree.js'

/** One row: an arc has a radius and a heading at its end, a straight has its length alone. `fit` leaves one to be solved. */
export interface TypedPiece {
  readonly name: string
  readonly kind: 'arc' | 'line'
  readonly radius: string
  readonly to: string
  readonly length: string
}

export interface TypedSection {
  readonly crown: string
  readonly pieces: readonly TypedPiece[]
  /** sizes to close on, as the tape says them; empty where there are none */
  readonly width: string
  readonly height: string
}

export interface OwnSection {
  readonly crown: number
  readonly pieces: readonly ChainPiece[]
  /** as it is written in a definition */
  readonly tree: Branch
}

export interface SectionShown {
  /** null while something is wrong */
  readonly section: OwnSection | null
  /** by the name of their field: `crown`, `width`, `height`, `pieces 0 radius` */
  readonly faults: Readonly<Record<string, string>>
  /** both sides from toe to toe, y and z, m; as far as it can be drawn */
  readonly points: readonly (readonly [number, number])[]
  /** where pieces meet, on the right side */
  readonly joints: readonly (readonly [number, number])[]
  readonly says: readonly string[]
}

const FIT = /^fit$/i
const DEG = Math.PI / 180

type Faults = Record<string, string>

function quantity(text: string, field: string, kind: QuantityKind, faults: Faults): number | null {
  const unit = kind === 'angle' ? 'deg' : 'mm'
  const read = parseQuantity(/[a-z"'°]\s*$/i.test(text) ? text : `${text.trim()} ${unit}`, kind)
  if (read.ok) return read.value
  faults[field] = text.trim() === '' ? `Write ${kind === 'angle' ? 'a heading, 90 for straight down' : 'a length in mm'}.` : read.says
  return null
}

function pieceOf(typed: TypedPiece, i: number, faults: Faults): OpenPiece | null {
  const name = typed.name.trim()
  if (name === '') faults[`pieces ${i} name`] = 'Give it a name, such as shoulder.'
  if (typed.kind === 'line') {
    if (FIT.test(typed.length)) return { kind: 'line', name, length: null }
    const length = quantity(typed.length, `pieces ${i} length`, 'length', faults)
    if (length !== null && length <= 0) faults[`pieces ${i} length`] = 'A straight needs some length.'
    return length === null ? null : { kind: 'line', name, length }
  }
  const radius = quantity(typed.radius, `pieces ${i} radius`, 'length', faults)
  if (radius === 0) faults[`pieces ${i} radius`] = 'An arc needs a radius; take a straight instead.'
  if (FIT.test(typed.to)) return radius === null ? null : { kind: 'arc', name, radius, to: null }
  const to = quantity(typed.to, `pieces ${i} to`, 'angle', faults)
  return radius === null || to === null ? null : { kind: 'arc', name, radius, to }
}

/** An arc turns the way its radius bends, and no heading leaves level to level. */
function headingFaults(pieces: readonly (OpenPiece | null)[], faults: Faults): void {
  let heading: number | null = 0
  pieces.forEach((piece, i) => {
    if (piece?.kind === 'line') return
    if (!piece || piece.to === null) {
      heading = null
      return
    }
    const { to, radius } = piece
    const said = (m: number): string => `${Number((m / DEG).toFixed(2))} deg`
    if (to < 0 || to > Math.PI) faults[`pieces ${i} to`] = 'Headings run from 0 deg, level outboard, to 180 deg, level inboard.'
    else if (heading !== null && radius > 0 && to <= heading)
      faults[`pieces ${i} to`] = `The arc begins at ${said(heading)} and bends down: make this more than that.`
    else if (heading !== null && radius < 0 && to >= heading)
      faults[`pieces ${i} to`] = `A negative radius bends outward again: make this less than ${said(heading)}, or the radius positive.`
    heading = to
  })
}

export function sectionShown(typed: TypedSection): SectionShown {
  const faults: Faults = {}
  const crown = quantity(typed.crown, 'crown', 'length', faults)
  const size = (key: 'width' | 'height'): number | null => (typed[key].trim() === '' ? null : quantity(typed[key], key, 'length', faults))
  const [width, height] = [size('width'), size('height')]
  const pieces = typed.pieces.map((each, i) => pieceOf(each, i, faults))
  if (pieces.length === 0) faults.pieces = 'A section needs at least one arc.'
  headingFaults(pieces, faults)
  const open = pieces.filter((each) => each && (each.kind === 'arc' ? each.to === null : each.length === null)).length
  const asked = [width, height].filter((each) => each !== null).length
  if (open > 0 && open !== asked)
    faults[typed.width.trim() === '' ? 'height' : 'width'] ??=
      `${open === 1 ? 'One value is' : `${open} values are`} left to fit: write ${open === 1 ? 'one size' : `${open} sizes`} to fit to, and no more.`
  const nothing = (says: readonly string[] = []): SectionShown => ({ section: null, faults, points: [], joints: [], says })
  if (Object.keys(faults).length > 0 || crown === null || pieces.some((each) => each === null)) return nothing()
  const start = { y: 0, z: crown, heading: 0 }
  const whole = pieces as readonly OpenPiece[]
  const solved =
    open === 0
      ? { pieces: whole as readonly ChainPiece[], chain: buildChain(start, whole as readonly ChainPiece[]) }
      : fitChain(start, whole, { width, height, belt: null, floorWidth: null })
  if (!solved)
    return {
      ...nothing(),
      faults: {
        ...faults,
        [typed.width.trim() === '' ? 'height' : 'width']:
          'No section of these radii has these sizes: change a size or a radius, or fit another value.',
      },
    }
  const drawn = sectionDrawn(solved.chain)
  const toe = at(solved.chain, solved.chain.length)
  if (toe.z >= 0) {
    const says = `It ends at waterline ${mm(toe.z)}, above the floor: carry the last arc on, or lower the crown.`
    return {
      section: null,
      faults: { [`pieces ${pieces.length - 1} ${whole.at(-1)?.kind === 'line' ? 'length' : 'to'}`]: says },
      ...drawn,
      says: [],
    }
  }
  const fitted =
    open > 0
      ? { fit: { ...(width === null ? {} : { width: written(width) }), ...(height === null ? {} : { height: written(height) }) } }
      : {}
  return {
    section: { crown, pieces: solved.pieces, tree: { crown: written(crown), chain: whole.map(treeOfPiece), ...fitted } },
    faults,
    ...drawn,
    says: closure(solved.chain, crown, { width, height }),
  }
}

const written = (m: number): string => `${Number((m * 1000).toFixed(3))} mm`
const mm = (m: number): string => `${(m * 1000).toFixed(1)} mm`

const treeOfPiece = (piece: OpenPiece): Branch =>
  piece.kind === 'line'
    ? { line: word(piece.name), length: piece.length === null ? 'fit' : written(piece.length) }
    : { arc: word(piece.name), radius: written(piece.radius), to: piece.to === null ? 'fit' : `${Number((piece.to / DEG).toFixed(4))} deg` }

/** How the drawn section compares with the tape. */
export function closure(
  chain: TangentChain,
  crown: number,
  asked: { readonly width: number | null; readonly height: number | null },
): string[] {
  const toe = at(chain, chain.length)
  const drawn = { width: 2 * widest(chain).y, height: crown - toe.z }
  const miss = (key: 'width' | 'height', what: string): string[] => {
    const to = asked[key]
    if (to === null) return [`It is ${mm(drawn[key])} ${what}.`]
    const off = drawn[key] - to
    return [
      Math.abs(off) < 5e-5
        ? `It is ${mm(drawn[key])} ${what}, as asked.`
        : `It is ${mm(drawn[key])} ${what}: ${mm(Math.abs(off))} ${off > 0 ? 'more' : 'less'} than asked. Write fit for a heading or a length to have it closed.`,
    ]
  }
  return [...miss('width', 'wide'), ...miss('height', 'from crown to toe'), `Half its girth is ${mm(chain.length)}.`]
}

/** Both sides of a section, and where its pieces meet. */
export const sectionDrawn = (chain: TangentChain): Pick<SectionShown, 'points' | 'joints'> => ({
  points: bothSides(chain),
  joints: chain.elements.slice(1).map((e) => [e.y0, e.z0] as const),
})

/** So many points draw a section smoothly on a screen. */
const STEPS = 160

function bothSides(chain: TangentChain): (readonly [number, number])[] {
  const right = Array.from({ length: STEPS + 1 }, (_, i) => at(chain, (i / STEPS) * chain.length)).map(({ y, z }) => [y, z] as const)
  return [...[...right].reverse().map(([y, z]) => [-y, z] as const), ...right.slice(1)]
}
