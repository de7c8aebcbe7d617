/**
 * Whole invented coaches, written as a shop would write them: YAML text with units. The same seed gives the same text.
 *
 * Sensible ones could be ordered; odd ones have sizes nobody would choose but that can be built or said to be impossible;
 * silly ones hold one to three things that are plainly wrong.
 */
import { stringify } from 'yaml'
import { at, buildChain, type ChainPiece, girthAtZ, type TangentChain, widest } from '../src/maths/tangent-chain.js'
import { type Chance, chance } from './random.js'
import { spoil } from './spoil.js'

export type Mood = 'sensible' | 'odd' | 'silly'
export interface RandomCoach {
  readonly seed: number
  readonly mood: Mood
  readonly text: string
}

const DEG = Math.PI / 180

export function randomCoach(seed: number): RandomCoach {
  const c = chance(seed)
  const mood: Mood = c.maybe(0.55) ? 'sensible' : c.maybe(0.6) ? 'odd' : 'silly'
  const coach = write(c, mood !== 'sensible')
  if (mood === 'silly') for (let n = c.whole(1, 3); n > 0; n--) spoil(c, coach)
  return { seed, mood, text: stringify(coach) }
}

/** A length as it is on somebody's tape, m in. */
function length(c: Chance, metres: number): string {
  const unit = c.whole(0, 9)
  if (unit === 0) return `${(metres / 0.0254).toFixed(3)} in`
  if (unit === 1) return `${metres.toFixed(4)} m`
  return `${(metres * 1000).toFixed(1)} mm`
}

const degrees = (rad: number): string => `${(rad / DEG).toFixed(2)} deg`

function write(c: Chance, odd: boolean): Record<string, unknown> {
  const L = (metres: number): string => length(c, metres)
  const pieces = c.maybe(0.7) ? usualSection(c) : anySection(c)
  const drawn = buildChain({ y: 0, z: 0, heading: 0 }, pieces)
  const drop = -at(drawn, drawn.length).z
  const crown = Math.max(0.3, drop - c.between(0.05, odd ? 1 : 0.45))
  const chain = buildChain({ y: 0, z: crown, heading: 0 }, pieces)
  const floorHalf = at(chain, girthAtZ(chain, 0) ?? 0).y
  // now and then a coach as long as a train, whose rows have more layers to choose from than any other
  const long = odd && c.maybe(0.04)
  const bays = long ? c.whole(30, 60) : c.whole(1, c.maybe(0.15) ? 8 : 4)
  const stations = [c.between(2.2, 3.4)]
  for (let i = 0; i < bays; i++) stations.push(stations[i] + c.between(odd ? 0.08 : 0.4, odd ? 1.2 : 0.8))
  const frames = stations.map((s, i) => ({
    id: i > 0 && c.maybe(0.1) ? `F${i}a` : `F${i + 1}`,
    station: L(s),
    ...(i === 0 ? { joint: 'nose' } : i === bays ? { joint: 'tail' } : {}),
  }))
  const seams = girths(c, c.whole(2, 6), chain.length, odd)
  const lining = girths(c, c.whole(0, 4), (girthAtZ(chain, 0.06) ?? chain.length * 0.8) - 0.03, odd)
  const sheets = ['48 in x 152 in', '36 in x 152 in', '1250 mm x 2500 mm']
  const [first, last] = [stations[0], stations[bays]]
  return {
    schema: 1,
    coach: {
      name: `Trial ${c.whole(1, 99)}`,
      family: 'Trial',
      maker: 'An invented shop',
      market: c.pick(['us', 'uk', 'eu', 'au']),
      date: '2026-03-02',
    },
    section: sectionOf(c, crown, pieces, chain),
    frames,
    shell: {
      ...shellOf(c, odd, L),
      seams: seams.map((g, i) => ({ id: `seam-${i + 1}`, girth: L(g) })),
      strakes: ['crown', ...seams.map((_, i) => `strake-${i + 2}`)].map((id) => ({ id, stock: c.pick(sheets) })),
    },
    lining: {
      alloy: '3003-H14',
      thickness: L(c.between(0.0005, 0.004)),
      stock: c.pick(sheets),
      lap: L(c.between(0.01, 0.04)),
      'floor gap': L(c.between(0, 0.05)),
      seams: lining.map((g, i) => ({ id: `lining-${i + 1}`, girth: L(g) })),
      joints: frames.slice(1, -1).flatMap((f) => (c.maybe(0.4) ? [f.id] : [])),
    },
    stock: { sheets, board: '2440 mm x 7320 mm', trim: '1.5 mm', kerf: c.pick(['0 mm', '2 mm']) },
    fasteners: {
      S4: {
        kind: 'solid',
        diameter: c.pick(['1/8 in', '5/32 in', '3 mm']),
        head: 'universal',
        alloy: '2117-T4',
        hole: '4.1 mm',
        pilot: '2.5 mm',
      },
      B4: {
        kind: 'blind',
        diameter: c.pick(['1/8 in', '3.2 mm']),
        head: 'sealed dome',
        alloy: 'aluminium',
        hole: '3.3 mm',
        pilot: '2.5 mm',
      },
    },
    rows: rowsOf(c, odd, L),
    rules: { 'edge distance': c.pick([1.5, 2, 2.5]), 'rivet length': c.pick(['next up', 'nearest']) },
    openings: Array.from({ length: c.whole(0, c.maybe(0.2) ? 12 : 5) }, (_, i) => opening(c, i, chain, crown, first, last, odd, L)),
    gear: c.maybe(0.75) ? gearOf(c, first, last, L) : 'none',
    floor: c.maybe(0.85)
      ? {
          thickness: L(c.between(0.006, 0.04)),
          'half width': L(Math.max(0.1, floorHalf) * c.between(0.4, odd && c.maybe(0.1) ? 1.3 : 0.98)),
          'end reach': L(c.between(0.2, 0.8)),
        }
      : 'none',
    ends: {
      skin: { alloy: '5052-O', thickness: L(c.between(0.0005, 0.003)) },
      'coupler face': L(c.between(0.3, odd && c.maybe(0.1) ? 2.5 : 0.9)),
      profile: profileOf(c, drop),
      exponent: Number(c.between(2, odd ? 4 : 3).toFixed(2)),
      seams: Array.from({ length: c.whole(0, 4) }, (_, i) => degrees((10 + 20 * i + c.between(-9, 9)) * DEG)),
      make: c.maybe(0.5) ? 'formed' : 'wrapped',
      'least thickness': '0.3 mm',
      cap: L(c.between(0.08, 0.2) * drop),
      lap: L(c.between(0.015, 0.035)),
    },
  }
}

/** Roof, brow and face of an end that falls as far as the section does, or a little further. */
function profileOf(c: Chance, drop: number): readonly object[] {
  const [first, second, third] = [c.between(10, 20) * DEG, c.between(55, 80) * DEG, c.between(88, 120) * DEG]
  const fall = (radius: number, from: number, to: number): number => radius * (Math.cos(from) - Math.cos(to))
  const roof = drop * c.between(0.5, 0.9)
  const brow = drop * c.between(0.1, 0.3)
  const rest = drop * c.between(1.002, 1.04) - fall(roof, 0, first) - fall(brow, first, second)
  const face = rest / (Math.cos(second) - Math.cos(third))
  const mm = (metres: number): string => `${(metres * 1000).toFixed(2)} mm`
  return [
    { arc: 'roof', radius: mm(roof), to: `${(first / DEG).toFixed(4)} deg` },
    { arc: 'brow', radius: mm(brow), to: `${(second / DEG).toFixed(4)} deg` },
    { arc: 'face', radius: mm(face), to: `${(third / DEG).toFixed(4)} deg` },
  ]
}

/** Roof, shoulder, side, turn-under; the side an arc or a straight. */
function usualSection(c: Chance): ChainPiece[] {
  const roof = c.between(5, 25) * DEG
  const shoulder = c.between(75, 92) * DEG
  const side: ChainPiece =
    c.maybe(0.6) && shoulder < 88 * DEG
      ? { kind: 'arc', name: 'side', radius: c.between(4, 12), to: shoulder + c.between(4, 12) * DEG }
      : { kind: 'line', name: 'side', length: c.between(0.8, 1.6) }
  const pieces: ChainPiece[] = [
    { kind: 'arc', name: 'roof', radius: c.between(1.5, 5), to: roof },
    { kind: 'arc', name: 'shoulder', radius: c.between(0.2, 0.7), to: shoulder },
    side,
  ]
  if (c.maybe(0.9)) pieces.push({ kind: 'arc', name: 'turn-under', radius: c.between(0.15, 0.45), to: c.between(105, 165) * DEG })
  return pieces
}

/** Written outright, or with one heading left to be solved for the width. */
function sectionOf(c: Chance, crown: number, pieces: readonly ChainPiece[], chain: TangentChain): Record<string, unknown> {
  const written = pieces.map(writtenPiece)
  const high = `${(crown * 1000).toFixed(4)} mm`
  if (pieces[0].kind !== 'arc' || !c.maybe(0.15)) return { crown: high, chain: written }
  const width = 2 * widest(chain).y * (c.maybe(0.2) ? c.between(0.5, 1.5) : 1)
  return { crown: high, chain: [{ ...written[0], to: 'fit' }, ...written.slice(1)], fit: { width: `${(width * 1000).toFixed(2)} mm` } }
}

/** Two to seven pieces of any sort, some concave. */
function anySection(c: Chance): ChainPiece[] {
  const pieces: ChainPiece[] = []
  let heading = 0
  for (let i = c.whole(2, 7); i > 0; i--) {
    const name = `piece-${pieces.length + 1}`
    const concave = heading > 0.5 && c.maybe(0.2)
    if (heading > 2.6 || c.maybe(0.25)) pieces.push({ kind: 'line', name, length: c.between(0.05, 1.2) })
    else {
      heading += concave ? -c.between(0.05, 0.4) : c.between(0.1, 1.2)
      const radius = c.between(0.15, c.maybe(0.5) ? 0.9 : 5)
      pieces.push({ kind: 'arc', name, radius: concave ? -radius : radius, to: heading })
    }
  }
  return pieces
}

const writtenPiece = (p: ChainPiece): Record<string, string> =>
  p.kind === 'arc'
    ? { arc: p.name, radius: `${(p.radius * 1000).toFixed(2)} mm`, to: degrees(p.to) }
    : { line: p.name, length: `${(p.length * 1000).toFixed(2)} mm` }

/** Ascending girths with room between them; odd ones anywhere. */
function girths(c: Chance, n: number, reach: number, odd: boolean): number[] {
  if (odd && c.maybe(0.3)) return Array.from({ length: n }, () => c.between(0.03, reach)).sort((a, b) => a - b)
  return Array.from({ length: n }, (_, i) => reach * ((i + c.between(0.4, 0.9)) / (n + 0.2)))
}

function shellOf(c: Chance, odd: boolean, L: (m: number) => string): Record<string, unknown> {
  const thin = (): string => L(c.between(0.0006, odd ? 0.006 : 0.0016))
  return {
    skin: { alloy: c.pick(['5052-H34', '5052-H32']), thickness: thin() },
    frame: {
      alloy: '6063-T6',
      height: L(c.between(0.02, 0.08)),
      flange: L(c.between(0.02, odd ? 0.12 : 0.04)),
      thickness: thin(),
      mass: '0.474 kg/m',
      'row offset': L(c.between(0.004, 0.0095)),
      'skin row': c.pick(['aft', 'forward']),
    },
    'joint frame': {
      alloy: '6063-T6',
      height: L(c.between(0.02, 0.08)),
      flange: L(c.between(0.04, odd ? 0.15 : 0.07)),
      thickness: thin(),
      mass: '0.474 kg/m',
    },
    stringer: { alloy: '5052-H34', leg: L(c.between(0.012, odd ? 0.06 : 0.03)), thickness: thin() },
    post: { alloy: '5052-H34', leg: L(c.between(0.012, odd ? 0.06 : 0.03)), thickness: thin() },
    rim: { alloy: '5052-H34', thickness: thin(), line: L(c.between(0.006, odd ? 0.04 : 0.015)), 'least stub': L(c.between(0, 0.15)) },
    'edge channel': { alloy: '6063-T6', thickness: thin(), height: L(c.between(0.012, odd ? 0.15 : 0.03)), mass: '0.9 kg/m' },
    underbelly: { alloy: '3003-H14', thickness: thin() },
    tape: L(c.between(0, 0.004)),
    lap: L(c.between(0.012, odd ? 0.08 : 0.035)),
    'lap order': c.pick(['upper over lower', 'lower over upper']),
    joint: { overlap: L(c.between(0.04, 0.07)), 'row spacing': L(c.between(0.012, 0.035)), over: c.pick(['barrel', 'end']) },
    toe: {
      flange: L(c.between(0.012, odd ? 0.1 : 0.03)),
      ...(c.maybe(0.4)
        ? {
            turn: degrees(c.between(-80, 80) * DEG),
            'bend radius': L(c.between(0, odd ? 0.02 : 0.006)),
            'k factor': c.pick([0.33, 0.42, 0.5]),
          }
        : {}),
    },
    assembly: c.pick(['ends first', 'barrel first']),
    'member gap': L(c.between(0, 0.003)),
  }
}

function rowsOf(c: Chance, odd: boolean, L: (m: number) => string): Record<string, unknown> {
  const kinds = ['seam', 'joint', 'hoop', 'base', 'rim', 'toe', 'lining', 'gore']
  return Object.fromEntries(
    kinds.map((kind) => {
      const pitch = odd && c.maybe(0.2) ? c.between(0.006, 1) : c.between(0.02, 0.1)
      return [kind, { fastener: kind === 'lining' || kind === 'toe' ? 'B4' : c.pick(['S4', 'S4', 'B4']), pitch: L(pitch) }]
    }),
  )
}

function opening(
  c: Chance,
  i: number,
  chain: TangentChain,
  crown: number,
  first: number,
  last: number,
  odd: boolean,
  L: (m: number) => string,
): Record<string, unknown> {
  const surface = c.pick(['C', 'R', 'curb', 'road', 'right', 'left', 'right', 'left', 'roof', 'roof', 'nose', 'tail'])
  const barrel = last - first
  const width = Math.min(c.between(0.05, c.maybe(0.3) ? 1.5 : 0.6), odd ? 9 : barrel * 0.95)
  const toe = at(chain, chain.length).z
  const height = Math.min(c.between(0.05, c.maybe(0.2) ? 1.8 : 0.6), odd ? 9 : (crown - toe) * 0.95)
  const station =
    surface === 'nose'
      ? first - 0.4
      : surface === 'tail'
        ? last + 0.4
        : c.between(first + width / 2, last - width / 2) + (odd && c.maybe(0.1) ? c.between(-1, 1) : 0)
  const middle = (span: number): number => c.between(toe + span / 2 + 1e-3, crown - span / 2 - 1e-3)
  const reach = chain.length - height / 2 - 1e-3
  return {
    id: `${c.pick(['W', 'D', 'H', 'V'])}${i + 1}`,
    kind: c.pick(['door', 'window', 'vent', 'hatch', 'flue', 'service']),
    says: c.pick(['window', 'a hatch', 'the door']),
    surface,
    station: `${(station * 1000).toFixed(2)} mm`,
    ...(surface === 'roof' ? (c.maybe(0.5) ? {} : { girth: L(c.between(-reach, reach) * (odd ? 1 : 0.3)) }) : { wl: L(middle(height)) }),
    width: L(width),
    height: L(height),
    corner: L(c.maybe(0.2) ? 0 : c.between(0, 0.49 * Math.min(width, height))),
    mass: '5 kg',
    ...(c.maybe(0.3) ? { opens: true } : {}),
  }
}

function gearOf(c: Chance, first: number, last: number, L: (m: number) => string): Record<string, unknown> {
  const half = c.between(0.1, Math.min(0.45, (last - first) * 0.3))
  const spindle = c.between(first + half, last - half)
  const second = spindle + c.between(0.5, 0.9)
  return {
    arm: L(0.15),
    'wheel opening': { half: L(half), top: L(c.between(0.02, 0.3)), corner: L(c.between(0, half * 0.5)) },
    spindles: second + half < last && c.maybe(0.5) ? [L(spindle), L(second)] : [L(spindle)],
  }
}
