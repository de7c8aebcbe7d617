/** The written form of what has to do with the road: tow cars and coupling, springs and tyres, numbers and labels. */
import { LOCKED } from '../tables/labels.js'
import { findTyre } from '../tables/tyres.js'
import * as usual from './defaults.js'
import { type Form, group, list, maybe, needs, orNone, usually } from './form.js'
import { angle, bought, date, id, length, mass, multiple, NOT_NEGATIVE, quantity, word, words } from './form-values.js'

const car = group({
  id: needs('id', id('mid-size'), 'permanent id'),
  says: needs('says', words('mid-size car'), 'what it is, in words'),
  mass: needs('mass', mass(), 'laden as it tows'),
  front: needs('front', length(undefined, '1350 mm'), 'centre of mass to the front axle'),
  rear: needs('rear', length(undefined, '1500 mm'), 'centre of mass to the rear axle'),
  overhang: needs('overhang', length(undefined, '1200 mm'), 'rear axle to the ball'),
  yawInertia: maybe('yaw inertia', quantity('inertia', { over: 0 }), 'about its centre of mass; reckoned from mass and axles where absent'),
  frontTyres: usually('front tyres', multiple('12'), 'cornering force a radian of slip, in loads of the axle', usual.FRONT_TYRES),
  rearTyres: usually('rear tyres', multiple('15'), 'cornering force a radian of slip, in loads of the axle', usual.REAR_TYRES),
})

const extent = group({
  item: needs('item', words('main rails, pair'), 'the stated mass it is about, named as it is there'),
  along: needs('along', length(NOT_NEGATIVE, '5170 mm'), 'how far it reaches along the coach'),
  across: needs('across', length(NOT_NEGATIVE, '1577 mm'), 'how far it reaches across'),
})

export const towingForm = group({
  coupler: needs(
    'coupler',
    group({
      ball: needs('ball', bought('2-5/16 in'), 'diameter of its ball as it is bought'),
      rated: needs('rated', mass(), 'gross trailer weight it is rated for'),
    }),
    'coupling of the trailer',
  ),
  chain: needs('chain', quantity('force', { over: 0 }), 'breaking force of each of the two safety chains'),
  cars: usually('cars', list(car, 0, 'id'), 'cars it may be towed by', usual.NO_CARS),
  tyres: usually('tyres', multiple('7'), 'cornering force a radian of slip of its axles, in their loads', usual.TRAILER_TYRES),
  hitchDamping: usually(
    'hitch damping',
    quantity('turningDamping', NOT_NEGATIVE),
    'of a friction device at the ball',
    usual.NO_HITCH_DAMPING,
  ),
  extents: usually('extents', list(extent), 'how far long items reach', usual.NO_EXTENTS),
})

/** A tyre of the table, under the table's own name. */
function tyre(): Form<string> {
  const form = words('ST205/75R14 LR C')
  return {
    ...form,
    read(node, reading, path) {
      const written = form.read(node, reading, path)
      if (written === undefined) return undefined
      const named = findTyre(written)
      if (named.ok) return named.row.name
      reading.wrong(path, { expected: 'a tyre such as ST205/75R14 LR C', advice: `Known are ${named.known.join(', ')}.` })
      return undefined
    },
  }
}

const point = group({
  turn: needs('turn', angle({ over: 0 }, '10 deg'), 'turn of the arm from where it stands without load'),
  torque: needs('torque', quantity('torque', { over: 0 }), 'torque measured there'),
})

export const suspensionForm = group({
  tyre: needs('tyre', tyre(), 'tyre, by its name'),
  startAngle: maybe(
    'start angle',
    angle({ atLeast: 0 }, '22.5 deg'),
    "of the arm below level without load; that of the gear's tube where it is not written",
  ),
  torque: maybe('torque', orNone(list(point, 2)), "torque of one wheel's side against its turn, as measured"),
  rubber: maybe(
    'rubber',
    orNone(
      group({
        tube: needs('tube', length(undefined, '70 mm'), 'inside of the square tube'),
        bar: needs('bar', length(undefined, '40 mm'), 'side of the square bar'),
        cord: needs('cord', length(undefined, '29 mm'), 'diameter of a cord'),
        length: needs('length', length(undefined, '500 mm'), 'length of the rubber of one side'),
        shear: needs('shear modulus', quantity('pressure', { over: 0 }), 'of the rubber'),
      }),
    ),
    'rubber of one side, where the shop assembles it',
  ),
  loss: usually('loss', multiple('0.15'), 'loss factor of the rubber', usual.RUBBER_LOSS),
  shockAbsorber: maybe('shock absorber', orNone(quantity('damping', { over: 0 })), 'damping at the wheel'),
  unsprung: needs('unsprung', mass(), 'wheel, tyre, hub, brake and what of the arm moves with them, one side'),
  tyreRate: usually('tyre rate', quantity('stiffness', { over: 0 }), 'vertical rate of one tyre', usual.TYRE_RATE),
  leaf: maybe(
    'leaf',
    orNone(
      group({
        rate: needs('rate', quantity('stiffness', { over: 0 }), 'at the wheel'),
        damping: needs('damping', multiple('0.12'), 'friction as a share of critical damping'),
      }),
    ),
    'leaf springs to compare with',
  ),
})

const FIRST_YEAR = 2010
const LAST_YEAR = 2039

function modelYear(): Form<number> {
  const expects = `a model year from ${FIRST_YEAR} to ${LAST_YEAR}`
  return {
    expects,
    example: '2026',
    read(node, reading, path) {
      const value = node.kind === 'scalar' ? node.value : null
      if (typeof value === 'number' && Number.isInteger(value) && value >= FIRST_YEAR && value <= LAST_YEAR) return value
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: 'integer', minimum: FIRST_YEAR, maximum: LAST_YEAR }),
  }
}

function wholeNumber(most: number, example: string): Form<number> {
  const expects = `a whole number up to ${most}, such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      const value = node.kind === 'scalar' ? node.value : null
      if (typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= most) return value
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: 'integer', minimum: 0, maximum: most }),
  }
}

/** Characters of a number, kept as they are written: a digit in front must not be lost. */
function characters(count: number, example: string): Form<string> {
  const expects = `${count} capitals or digits such as ${example}`
  return {
    expects,
    example,
    read(node, reading, path) {
      if (node.kind === 'scalar' && new RegExp(`^[0-9A-HJ-NPR-Z]{${count}}$`).test(node.text)) return node.text
      reading.wrong(path, { expected: expects })
      return undefined
    },
    schema: () => ({ type: ['string', 'integer'] }),
  }
}

const vin = group({
  maker: needs('maker', characters(3, '0M9'), 'positions 1 to 3; the third is 9 for a small maker'),
  attributes: needs('attributes', characters(5, 'TC4B2'), 'positions 4 to 8: make, type, body, length and axles as filed'),
  year: needs('year', modelYear(), 'model year'),
  plant: needs('plant', characters(1, 'M'), 'position 11'),
  smallMaker: maybe('small maker', characters(3, 'X42'), 'positions 12 to 14 of a small maker'),
  serial: maybe('serial', wholeNumber(999_999, '7'), 'serial of the unit, once it has one'),
})

export const papersForm = group({
  vin: maybe('vin', vin, 'pieces of the vehicle identification number'),
  made: maybe('made', words('MAY 2026'), 'month and year of manufacture as printed'),
  responsible: maybe('responsible', words('name of a person'), 'who answers for the label'),
  weighed: maybe(
    'weighed',
    group({
      empty: needs('empty', mass(), 'unloaded, gas full, tanks empty'),
      hitch: needs('hitch', mass(), 'load of the hitch as weighed'),
      on: needs('on', date(), 'date of the weighing'),
    }),
    'what the scales said of this unit',
  ),
  words: usually(
    'words',
    list(
      group({
        id: needs('id', word(LOCKED.map((each) => each.id)), 'which locked wording'),
        words: needs('words', words('TYPE: TRAILER'), 'the words instead'),
        by: needs('by', words('name of a person'), 'who answers for it'),
        reason: needs('reason', words('asked by the authority'), 'why'),
      }),
      0,
      'id',
    ),
    'wordings of labels other than the locked ones',
    usual.NO_OTHER_WORDS,
  ),
})
