/** The written form of a definition, described once: reading, faults and JSON Schema all come from here. */
import { piece } from './curve-form.js'
import * as usual from './defaults.js'
import { endsForm, processForm } from './ends-form.js'
import { elsewhere, group, keyed, list, maybe, needs, orNone, range, usually, type Whole } from './form.js'
import {
  angle,
  anyLength,
  bought,
  count,
  date,
  id,
  length,
  linearMass,
  mass,
  multiple,
  NOT_NEGATIVE,
  stockSize,
  word,
  words,
  yesNo,
} from './form-values.js'
import { papersForm, suspensionForm, towingForm } from './road-form.js'
import { sheet } from './sheet-form.js'
import { chassisMore, floorMore, gearMore } from './under-form.js'
import { statedForm, weightForm } from './weight-form.js'

/** Trades that have their place in a definition but are not read by this version. */
const RESERVED = ['circuits', 'fit-out', 'insulation', 'line', 'inspection'] as const
export const SURFACES = ['C', 'R', 'curb', 'road', 'right', 'left', 'roof', 'nose', 'tail'] as const

const coach = group({
  name: needs('name', words('Sedge 6'), 'name of this coach'),
  family: needs('family', words('Sedge'), 'family it belongs to'),
  maker: needs('maker', words('Marrowbeck Coachworks'), 'who builds it'),
  market: needs('market', word(['us', 'uk', 'eu', 'au']), 'where it is sold: settles which side is the curb side'),
  date: needs('date', date(), 'printed on every sheet'),
})

const section = group({
  crown: needs('crown', length(undefined, '2030 mm'), 'waterline of the outer skin on the centre plane'),
  chain: needs('chain', list(piece, 1), 'half section from the crown down, each piece tangent to the one before'),
  fit: maybe(
    'fit',
    orNone(
      group({
        width: maybe('width', length(undefined, '2392 mm'), 'full width at the widest place'),
        height: maybe('height', length(undefined, '2234 mm'), 'crown to toe'),
        belt: maybe('belt', anyLength('640 mm'), 'waterline of the widest place'),
        floorWidth: maybe('floor width', length(undefined, '2331 mm'), 'full width at waterline 0'),
      }),
    ),
    'sizes to solve the fitted values for, as many as there are',
  ),
})

const frame = group({
  id: needs('id', id('F3'), 'permanent id; a frame put in later is F3a'),
  station: needs('station', length(undefined, '4220 mm'), 'station of the web'),
  joint: maybe('joint', word(['nose', 'tail']), 'which end section meets the barrel here'),
})

const seam = group({
  id: needs('id', id('seam-1'), 'permanent id'),
  girth: needs('girth', length(undefined, '560 mm'), 'outer girth from the crown, one on each side'),
})

const strake = group({
  id: needs('id', id('crown'), 'permanent id'),
  stock: needs('stock', stockSize(), 'sheet it is cut from'),
  across: usually('across', count('2'), 'strips of it out of one sheet, side by side', usual.ACROSS),
})

const shell = group({
  skin: needs('skin', group(sheet), 'barrel skin'),
  frame: needs(
    'frame',
    group({
      alloy: sheet.alloy,
      height: needs('height', length(undefined, '57 mm'), 'depth between skin and lining'),
      flange: needs('flange', length(undefined, '28 mm'), 'full flange width'),
      thickness: sheet.thickness,
      linearMass: needs('mass', linearMass(), 'mass a metre'),
      rowOffset: needs('row offset', length(undefined, '7 mm'), 'rivet row from the web'),
      skinRow: needs('skin row', word(['aft', 'forward']), 'side of the web the skin row stands on'),
    }),
    'hoop frame',
  ),
  jointFrame: needs(
    'joint frame',
    group({
      alloy: sheet.alloy,
      height: needs('height', length(undefined, '57 mm'), 'depth between skin and lining'),
      flange: needs('flange', length(undefined, '60 mm'), 'full width on the skin'),
      thickness: sheet.thickness,
      linearMass: needs('mass', linearMass(), 'mass a metre'),
    }),
    'hat frame where an end section meets the barrel',
  ),
  stringer: needs(
    'stringer',
    group({ alloy: sheet.alloy, leg: needs('leg', length(undefined, '25 mm'), 'leg width'), thickness: sheet.thickness }),
    'angle behind a seam',
  ),
  post: needs(
    'post',
    group({ alloy: sheet.alloy, leg: needs('leg', length(undefined, '25 mm'), 'leg width'), thickness: sheet.thickness }),
    'angle beside an opening',
  ),
  rim: needs(
    'rim',
    group({
      ...sheet,
      line: needs('line', length(undefined, '11 mm'), 'rivet line outside the cut'),
      minStub: needs('least stub', length(NOT_NEGATIVE, '100 mm'), 'shortest piece of a cut frame worth keeping'),
    }),
    'ring behind the skin round an opening',
  ),
  edgeChannel: needs(
    'edge channel',
    group({
      alloy: sheet.alloy,
      thickness: sheet.thickness,
      height: needs('height', length(undefined, '25 mm'), 'web height'),
      linearMass: needs('mass', linearMass(), 'mass a metre'),
    }),
    'channel on the edge of the floor',
  ),
  underbelly: needs('underbelly', group(sheet), 'sheet under the floor'),
  tape: needs('tape', length(NOT_NEGATIVE, '1.2 mm'), 'thermal tape between frame and lining'),
  seams: needs('seams', list(seam, 0, 'id'), 'lengthwise laps, from the crown down'),
  strakes: needs('strakes', list(strake, 1, 'id'), 'lengthwise sheets from the crown down, one more than the seams'),
  lap: needs('lap', length(undefined, '25 mm'), 'full width of a seam lap'),
  lapOrder: needs('lap order', word(['upper over lower', 'lower over upper']), 'which sheet lies outside'),
  joint: needs(
    'joint',
    group({
      overlap: needs('overlap', length(undefined, '50 mm'), 'full overlap of end and barrel'),
      rowSpacing: needs('row spacing', length(undefined, '25 mm'), 'between its two rows'),
      over: needs('over', word(['barrel', 'end']), 'which skin lies outside'),
    }),
    'transverse lap at an end section',
  ),
  toe: needs(
    'toe',
    group({
      flange: needs('flange', length(undefined, '19 mm'), 'flange beyond the toe'),
      turn: usually('turn', angle({}, '30 deg'), 'bend at the toe; 0 deg runs straight on', usual.TOE_TURN),
      bendRadius: usually('bend radius', length(NOT_NEGATIVE, '3 mm'), 'inside radius of the bend', usual.BEND_RADIUS),
      kFactor: usually('k factor', multiple('0.42'), 'neutral line as a fraction of the thickness', usual.K_FACTOR),
    }),
    'lower edge of the lowest strake',
  ),
  assembly: needs('assembly', word(['ends first', 'barrel first']), 'what stands in the jig first'),
  memberGap: needs('member gap', length(NOT_NEGATIVE, '1 mm'), 'gap where a member stops at another'),
})

const lining = group({
  ...sheet,
  stock: needs('stock', stockSize(), 'sheet the lining is cut from'),
  seams: needs('seams', list(seam, 0, 'id'), 'lengthwise joints, girth on the outer skin'),
  joints: usually('joints', list(id('F4')), 'frames where panels meet end to end', usual.NO_JOINTS),
  lap: needs('lap', length(undefined, '20 mm'), 'lap of two panels'),
  floorGap: needs('floor gap', length(NOT_NEGATIVE, '12 mm'), 'lining stops this far above the floor'),
})

const stock = group({
  sheets: needs('sheets', list(stockSize(), 1), 'sheet sizes the shop can buy'),
  board: needs('board', stockSize(), 'floor panel size'),
  trim: needs('trim', length(NOT_NEGATIVE, '1.5 mm'), 'squared off each mill edge'),
  kerf: needs('kerf', length(NOT_NEGATIVE, '0 mm'), 'lost in a cut'),
})

const fastener = group({
  kind: needs('kind', word(['solid', 'blind']), 'bucked or pulled'),
  diameter: needs('diameter', bought('1/8 in'), 'as it is bought'),
  head: needs('head', words('universal'), 'head style'),
  alloy: needs('alloy', words('2117-T4'), 'alloy of the body'),
  hole: needs('hole', length(undefined, '3.3 mm'), 'finished hole'),
  pilot: needs('pilot', length(undefined, '2.5 mm'), 'pilot hole'),
  shank: maybe('shank', range(length(undefined, '3.17 mm'), 'least', 'greatest'), 'least and greatest diameter of the shank'),
})

const row = group({
  fastener: needs('fastener', id('S4'), 'which fastener'),
  pitch: needs('pitch', length(undefined, '25.4 mm'), 'nominal pitch, fitted to whole pitches'),
})
const ROWS = ['seam', 'joint', 'hoop', 'base', 'rim', 'toe', 'lining', 'gore'] as const
const rowOf = (key: (typeof ROWS)[number]) => needs(key, row, `rows of kind ${key}`)

const rules = group({
  edgeDistance: needs('edge distance', multiple('2'), 'least distance of a rivet from an edge, in diameters'),
  minPitch: usually('min pitch', multiple('3'), 'closest pitch, in diameters', usual.MIN_PITCH),
  maxPitch: usually('max pitch', multiple('12'), 'widest pitch, in diameters', usual.MAX_PITCH),
  transversePitch: usually('transverse pitch', multiple('2.5'), 'between two rows, in diameters', usual.TRANSVERSE_PITCH),
  lapEdge: usually('lap edge', length(undefined, '12.5 mm'), 'nominal edge distance in laps', usual.LAP_EDGE),
  rivetLength: needs('rivet length', word(['next up', 'nearest']), 'how the length is taken from stock'),
  buckClearance: usually('buck clearance', length(NOT_NEGATIVE, '5 mm'), 'free distance a bucking bar needs', usual.BUCK_CLEARANCE),
  tubeToCrossMember: usually(
    'tube to cross-member',
    length(NOT_NEGATIVE, '200 mm'),
    'axle tube to the next cross-member',
    usual.TUBE_TO_CROSS_MEMBER,
  ),
  flueToWindow: usually('flue to window', length(NOT_NEGATIVE, '300 mm'), 'flue to a window that opens', usual.FLUE_TO_WINDOW),
  clampMargin: usually('clamp margin', length(NOT_NEGATIVE, '75 mm'), 'edge the punch clamps hold', usual.CLAMP_MARGIN),
})

const opening = group({
  id: needs('id', id('RW3'), 'permanent id'),
  says: needs('says', words('entrance door'), 'what it is, in words'),
  kind: needs('kind', word(['door', 'window', 'vent', 'hatch', 'flue', 'service']), 'which sort'),
  surface: needs('surface', word(SURFACES), 'C curb side, R road side, roof, nose or tail'),
  station: needs('station', length(undefined, '5745 mm'), 'station of the centre'),
  waterline: maybe('wl', anyLength('1160 mm'), 'waterline of the centre; not on the roof'),
  girth: usually('girth', anyLength('0 mm'), 'roof only: girth of the centre, right positive', usual.OPENING_GIRTH),
  width: needs('width', length(undefined, '520 mm'), 'size along the station'),
  height: needs('height', length(undefined, '510 mm'), 'size by waterline, on the roof by girth'),
  corner: needs('corner', length(NOT_NEGATIVE, '75 mm'), 'corner radius'),
  mass: needs('mass', mass(NOT_NEGATIVE), 'fitted mass'),
  opens: usually('opens', yesNo(), 'a window or hatch that opens', usual.OPENS),
})

const gear = group({
  spindles: needs('spindles', list(length(undefined, '4690 mm'), 1), 'stations of the spindles'),
  arm: needs('arm', length(NOT_NEGATIVE, '150 mm'), 'tube ahead of the spindle'),
  wheelOpening: needs(
    'wheel opening',
    group({
      half: needs('half', length(undefined, '380 mm'), 'reach each side of the spindle'),
      top: needs('top', length(undefined, '200 mm'), 'waterline of its top'),
      corner: needs('corner', length(NOT_NEGATIVE, '60 mm'), 'corner radius'),
    }),
    'cut over each wheel',
  ),
  ...gearMore,
})

const chassis = group({
  crossMembers: needs('cross-members', list(length(undefined, '3000 mm')), 'stations of the middles of their flanges'),
  crossMemberFlange: elsewhere('cross-member flange', length(undefined, '38 mm'), 'full flange width'),
  ...chassisMore,
})

const floor = group({
  thickness: needs('thickness', length(undefined, '18 mm'), 'panel thickness'),
  halfWidth: needs('half width', length(undefined, '1160 mm'), 'centre plane to the panel edge'),
  endReach: needs('end reach', length(undefined, '1085 mm'), 'panel beyond each joint frame'),
  ...floorMore,
})

export const definitionForm = group(
  {
    coach: needs('coach', coach, 'the head of the definition'),
    section: needs('section', section, 'half cross-section'),
    frames: needs('frames', list(frame, 2, 'id'), 'frames of the barrel'),
    shell: needs('shell', shell, 'skin and frames of the barrel'),
    lining: needs('lining', lining, 'inside skin'),
    stock: needs('stock', stock, 'what the shop buys'),
    fasteners: needs('fasteners', keyed(fastener), 'fasteners by id'),
    rows: needs(
      'rows',
      group({
        seam: rowOf('seam'),
        joint: rowOf('joint'),
        hoop: rowOf('hoop'),
        base: rowOf('base'),
        rim: rowOf('rim'),
        toe: rowOf('toe'),
        lining: rowOf('lining'),
        gore: rowOf('gore'),
      }),
      'fastener and pitch for each kind of row',
    ),
    rules: needs('rules', rules, 'shop rules'),
    openings: usually('openings', list(opening, 0, 'id'), 'doors, windows, vents and hatches', usual.NO_OPENINGS),
    gear: maybe('gear', orNone(gear), 'axles and wheel openings'),
    chassis: maybe('chassis', orNone(chassis), 'cross-members'),
    floor: maybe('floor', orNone(floor), 'floor panel'),
    ends: needs('ends', endsForm, 'nose and tail sections'),
    process: maybe('process', orNone(processForm), 'how well the shop punches and sets up'),
    towing: maybe('towing', orNone(towingForm), 'ratings, coupling and tow cars'),
    suspension: maybe('suspension', orNone(suspensionForm), 'springs, dampers and tyres'),
    papers: maybe('papers', orNone(papersForm), 'vehicle number, labels, who answers for them'),
    weight: maybe('weight', orNone(weightForm), 'ratings, tanks, stowage and load cases'),
    masses: usually('masses', list(statedForm), 'stated masses', usual.NO_MASSES),
  },
  RESERVED,
)

/** A reading: any value may be missing where a fault was found. */
export type Draft = NonNullable<ReturnType<typeof definitionForm.read>>
export type WholeDraft = Whole<Draft>
