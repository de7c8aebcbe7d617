/** Given figures of the barrel and the ends: sheets, members, fasteners, section and profile. */
import { field, type Given, type GivenAt, lastOf, type Origins, told, words, writtenAt } from './given-nouns.js'
import { diameterOf, layerOf, layerWritten, partOf, partWritten, rowOf } from './given-parts.js'

const ALLOYS = words('from the table of alloys')
const RIVETS = words('from the table of rivets')
const MEASURED = 'measured on its flat pattern'

/** Sheet steel of the chassis is written with its density; alloys have theirs in the table. */
function densityOf(at: GivenAt): Given {
  const part = partOf(at)
  const steel = at.subject.design.definition.chassis?.steel
  return steel && part?.material === steel.name ? writtenAt(['chassis', 'steel', 'density']) : told('from the table of alloys')
}

/** A piece of a chain goes by its name, and by its number too where two share it. */
function pieceOf(chain: readonly { readonly name: string }[], term: string): number {
  const known = chain.findIndex(({ name }) => name === term)
  const numbered = / (\d+)$/.exec(term)
  return known >= 0 ? known : numbered ? Number(numbered[1]) - 1 : -1
}

function sectionPiece(at: GivenAt, term: string, key: string, otherwise: string): Given {
  const i = pieceOf(at.subject.design.definition.section.chain, term)
  return i < 0 ? told(otherwise) : writtenAt(['section', 'chain', i, key], otherwise)
}

function profilePiece(at: GivenAt, key: string, before: number, otherwise: string): Given {
  const i = pieceOf(at.subject.design.definition.ends.profile, lastOf(at)) - before
  return i < 0 ? told(otherwise) : writtenAt(['ends', 'profile', i, key], otherwise)
}

const skinOf = (at: GivenAt): Given =>
  rowOf(at)?.end ? writtenAt(['ends', 'skin', 'thickness']) : writtenAt(['shell', 'skin', 'thickness'])

/** Of `stock.side.width`: which strake. */
const strakeOf = ({ root, subject }: GivenAt): number =>
  subject.design.definition.shell.strakes.findIndex(({ id }) => root === `stock.${id}.width` || root === `stock.${id}.room`)

function strakeTerm(at: GivenAt): Given {
  const i = strakeOf(at)
  if (at.symbol.endsWith('lap')) return { says: 'half of the lap', written: [{ steps: ['shell', 'lap'], times: 0.5 }] }
  return i === 0 && at.symbol.endsWith('half')
    ? writtenAt(['shell', 'seams', 0, 'girth'], 'girth to the edge of the sheet')
    : told('from seam to seam, or to the edge of the sheet')
}

function strakeWritten(at: GivenAt, key: string): Given {
  const strake = at.subject.design.definition.shell.strakes[strakeOf(at)]
  return strake ? writtenAt(['shell', 'strakes', { id: strake.id }, key]) : told('as bought')
}

/** The channel of `section.rail.Ix`, and the toe of `bend.toe`. */
const CHANNELS: Readonly<Record<string, string>> = { rail: 'rail', 'cross-member': 'cross-member', 'a-frame': 'A-frame' }
function bentOf(at: GivenAt, key: string): Given {
  const channel = CHANNELS[/^section\.([^.]+)\./.exec(at.root)?.[1] ?? '']
  if (channel) return writtenAt(['chassis', channel, key])
  return key === 'thickness' ? writtenAt(['shell', 'skin', key]) : writtenAt(['shell', 'toe', key])
}
const channel =
  (key: string) =>
  (at: GivenAt): Given =>
    bentOf(at, key)
const bentFactor = (at: GivenAt): Given =>
  at.root.startsWith('section.') ? writtenAt(['chassis', 'k factor']) : writtenAt(['shell', 'toe', 'k factor'])
const bentAngle = (at: GivenAt): Given => (at.root.startsWith('section.') ? told('a right angle') : writtenAt(['shell', 'toe', 'turn']))

const CHANNEL = { h: channel('height'), b: channel('flange'), t: channel('thickness') }
const HOLE = field('chassis', 'rail', 'holes', 'diameter')

/** The row at the cap goes by the rule of the gores. */
const pitchOf = (at: GivenAt): Given => ({
  says: 'pitch of the rule for such rows',
  written: [rowOf(at)?.kind ?? '', 'gore'].map((kind) => ({ steps: ['rows', kind, 'pitch'] })),
})

export const SHELL_GIVEN: Origins = {
  'shell.sheet-mass': { rho: densityOf, t: (at) => partWritten(partOf(at), 'thickness', 'thickness as bought'), A: words(MEASURED) },
  'shell.member-mass': { w: (at) => partWritten(partOf(at), 'mass', 'as bought'), L: words('measured along the member') },
  'shell.angle-mass': {
    l: (at) => partWritten(partOf(at), 'leg', 'as bought'),
    t: (at) => partWritten(partOf(at), 'thickness', 'as bought'),
    rho: ALLOYS,
  },
  'shell.rivet-mass': { rho: words('soft alloys of rivets, from memory'), D: diameterOf, L: words('the length bought') },
  'shell.alike-mass': { n: words('counted in the row') },
  'shell.grip': { '*': (at) => layerWritten(at, at.symbol) },
  'shell.rivet-length-needed': { D: diameterOf },
  'shell.stock-length-next-up': { s: words('step between the lengths sold') },
  'shell.stock-length-nearest': { s: words('step between the lengths sold') },
  'shell.blind-grip': { s: words('step between the grips sold'), n: words('steps up to the grip that is needed') },
  'shell.fitted-pitch': {
    L: words('measured between the control points'),
    p_n: pitchOf,
  },
  'shell.edge-ratio': { e: words('least found in the flat patterns'), D: diameterOf },
  'shell.minimum-edge': { k: field('rules', 'edge distance'), D: diameterOf },
  'shell.least-pitch': { k: field('rules', 'min pitch'), D: diameterOf },
  'shell.pitch-ratio': { p: words('measured in the flat patterns'), D: diameterOf },
  'shell.transverse-minimum': { k: field('rules', 'transverse pitch'), D: diameterOf },
  'shell.transverse-guide': { p: field('rows', 'joint', 'pitch') },
  'shell.bearing': { F_bru: ALLOYS, D_h: RIVETS, t: (at) => layerOf(at) },
  'shell.rivet-shear': { F_su: RIVETS, D_h: RIVETS },
  'shell.sheet-ratio': { t: (at) => layerOf(at), D: diameterOf },
  'shell.rivets-per-length': { t: skinOf, D_h: RIVETS, r_b: RIVETS, r_s: RIVETS },
  'shell.inter-rivet-buckling': {
    c: words('how the head holds the sheet, by the source'),
    eta: words('the sheet stays elastic'),
    E_c: ALLOYS,
    F_cy: ALLOYS,
    t: skinOf,
    s: words('widest fitted pitch of the row'),
  },
  'explain.blind-shear': { D: diameterOf },
  'explain.arc-length': {
    R: (at) => sectionPiece(at, lastOf(at), 'radius', 'radius of the piece'),
    A: words('what the piece turns until there'),
  },
  'explain.girth': { '*': (at) => sectionPiece(at, at.symbol, 'length', 'length of the piece until there') },
  'explain.lining-depth': {
    skin: field('shell', 'skin', 'thickness'),
    frame: field('shell', 'frame', 'height'),
    tape: field('shell', 'tape'),
  },
  'explain.strake-width': { '*': strakeTerm },
  'explain.stock-share': {
    W: (at) => strakeWritten(at, 'stock'),
    n: (at) => strakeWritten(at, 'across'),
    trim: field('stock', 'trim'),
    kerf: field('stock', 'kerf'),
  },
  'shell.offset-girth': { theta: words('how far the section has turned there') },
  'shell.bend-allowance': { R: channel('bend radius'), K: bentFactor, t: channel('thickness'), A: bentAngle },
  'shell.setback': { R: channel('bend radius'), t: channel('thickness'), A: bentAngle },
  'shell.channel-flat': CHANNEL,
  'chassis.channel-area': CHANNEL,
  'chassis.channel-centre': CHANNEL,
  'chassis.channel-ix': CHANNEL,
  'chassis.channel-iy': CHANNEL,
  'chassis.channel-j': CHANNEL,
  'chassis.channel-shear-centre': CHANNEL,
  'chassis.net-area': { d: HOLE, t: channel('thickness') },
  'chassis.net-ix': { d: HOLE, t: channel('thickness') },
  'chassis.pressed-mass': {
    rho: field('chassis', 'steel', 'density'),
    t: channel('thickness'),
    d: (at) => (at.root.startsWith('section.rail.') ? HOLE(at) : told('its web has no holes')),
    p: (at) => (at.root.startsWith('section.rail.') ? writtenAt(['chassis', 'rail', 'holes', 'pitch']) : told('its web has no holes')),
  },
  'ends.arc-reach': {
    R: (at) => profilePiece(at, 'radius', 0, 'radius of the piece'),
    A_0: (at) => profilePiece(at, 'to', 1, 'where the profile begins'),
    A_1: (at) => profilePiece(at, 'to', 0, 'straight down'),
  },
  'ends.reach': { '*': words('length of the straight piece, as far as it heads outward') },
  'ends.joint-edge': {
    G: words('half girth of the section'),
    d: () => ({
      says: 'the skin that lies over the other',
      written: [{ steps: ['shell', 'skin', 'thickness'] }, { steps: ['ends', 'skin', 'thickness'], times: -1 }],
    }),
    A: words('what the section turns in all'),
  },
  'ends.area': { '*': words('measured on the lofted surface') },
}
