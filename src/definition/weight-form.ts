/** The written form of weight and balance. */
import * as usual from './defaults.js'
import { elsewhere, group, list, maybe, needs, orNone, orWord, range, usually } from './form.js'
import { anyLength, id, length, mass, multiple, NOT_NEGATIVE, quantity, share, word, words, yesNo } from './form-values.js'
import { GROUP_WORDS, MASS_GROUPS, type MassGroup } from './weight-types.js'

const place = {
  from: usually('from', word(['datum', 'axles', 'last frame', 'tail']), 'what its station is counted from', usual.FROM_DATUM),
  station: needs('station', anyLength('2500 mm'), 'station of its centre'),
  y: usually('y', anyLength('0 mm'), 'buttock line of its centre, right positive', usual.ON_CENTRE),
  waterline: needs('wl', anyLength('500 mm'), 'waterline of its centre'),
}

const TANKS = ['fresh', 'grey', 'black'] as const

const tank = group({
  id: needs('id', id('fresh'), 'permanent id'),
  kind: needs('kind', word(TANKS), 'what it holds'),
  litres: needs('litres', multiple('114'), 'what it holds when full'),
  ...place,
  station: elsewhere('station', anyLength('3915 mm'), 'station of its centre; the middle of its bay where it is not written'),
  y: elsewhere('y', anyLength('0 mm'), 'buttock line of its centre, right positive; the middle of its bay where it is not written'),
  bay: maybe('bay', id('TB1'), 'bay of the chassis it hangs in'),
})

const loadCase = group({
  id: needs('id', id('D'), 'permanent id'),
  says: needs('says', words('waste full, fresh empty'), 'what it is, in words'),
  gas: usually('gas', yesNo(), 'cylinders full', usual.GAS_FULL),
  full: usually('full', list(word(TANKS)), 'kinds of tank that are full', usual.NO_TANKS),
  stowage: maybe('stowage', orNone(id('even')), 'how cargo is stowed; none without'),
  cargo: maybe('cargo', mass(NOT_NEGATIVE), 'cargo; as much as the gross rating leaves where absent'),
  carrying: usually('carrying', list(id('bicycles')), 'what is carried besides', usual.NOTHING_CARRIED),
  design: usually('design', yesNo(), 'a case the coach is designed for, inside the hitch band', usual.DESIGN_CASE),
})

const growthOf = (which: MassGroup) => usually(which, share('2.5 %'), `of the group ${which}`, usual.NO_GROWTH)

export const weightForm = group({
  ball: needs('ball', length(undefined, '880 mm'), 'station of the ball'),
  ground: needs('ground', anyLength('-508 mm'), 'waterline of the ground at curb weight'),
  track: elsewhere(
    'track',
    length(undefined, '2010 mm'),
    'between the middles of the two wheels of an axle; twice the y of the wheel of the gear where it is not written',
  ),
  gross: needs('gross', mass(), 'gross weight rating'),
  axleRatings: needs('axle ratings', list(mass(), 1), 'weight rating of each axle, from the front'),
  hitch: needs('hitch', range(share('10 %'), 'least', 'most'), 'load of the hitch as a share of the whole weight'),
  growth: maybe(
    'growth',
    group({
      CH: growthOf('CH'),
      RG: growthOf('RG'),
      FL: growthOf('FL'),
      SH: growthOf('SH'),
      OP: growthOf('OP'),
      FU: growthOf('FU'),
      AP: growthOf('AP'),
      WA: growthOf('WA'),
      EL: growthOf('EL'),
      LP: growthOf('LP'),
      EX: growthOf('EX'),
    }),
    'allowance for what is forgotten and what grows, by group of masses',
  ),
  gas: maybe('gas', orNone(group({ mass: needs('mass', mass(), 'what full cylinders hold'), ...place })), 'gas in full cylinders'),
  tanks: usually('tanks', list(tank, 0, 'id'), 'water tanks', usual.NO_TANKS),
  places: usually(
    'places',
    list(group({ id: needs('id', id('nose'), 'permanent id'), says: needs('says', words('nose locker'), 'in words'), ...place }), 0, 'id'),
    'places for cargo',
    usual.NO_PLACES,
  ),
  stowage: usually(
    'stowage',
    list(
      group({
        id: needs('id', id('even'), 'permanent id'),
        says: needs('says', words('even'), 'in words'),
        shares: needs('shares', list(share('25 %'), 1), 'share of the cargo in each place, in their order'),
      }),
      0,
      'id',
    ),
    'ways to stow cargo',
    usual.NO_PLACES,
  ),
  carried: usually(
    'carried',
    list(
      group({
        id: needs('id', id('bicycles'), 'permanent id'),
        says: needs('says', words('two bicycles on a tail rack'), 'in words'),
        mass: needs('mass', mass(), 'with its rack'),
        ...place,
      }),
      0,
      'id',
    ),
    'what may be carried besides cargo, such as on a rack',
    usual.NOTHING_CARRIED,
  ),
  cases: usually('cases', list(loadCase, 0, 'id'), 'load cases', usual.NO_CASES),
  lift: maybe(
    'lift',
    orNone(
      group({
        groups: needs('groups', list(word(MASS_GROUPS), 1), 'groups of masses that are in the body when it is lifted'),
        without: usually('without', list(words('floor covering')), 'items of them that are not in it yet', usual.NOTHING_LEFT_OUT),
        fore: needs('fore', id('F2'), 'frame of the forward sling'),
        aft: needs('aft', id('F6'), 'frame of the aft sling'),
        hook: needs('hook', length(undefined, '1500 mm'), 'hook above the crown'),
        spreader: needs('spreader', length(undefined, '2500 mm'), 'beam that holds the legs of a frame apart'),
        legRated: needs('leg rated', quantity('force', { over: 0 }), 'what one leg may hold'),
      }),
    ),
    'how the bare body is lifted',
  ),
  listOnly: usually('list only', yesNo(), 'weigh the stated list alone, without any derived part', usual.WITH_PARTS),
})

export const statedForm = group({
  group: needs('group', word(MASS_GROUPS), MASS_GROUPS.map((each) => `${each} ${GROUP_WORDS[each]}`).join(', ')),
  item: needs('item', words('compressor fridge'), 'what it is'),
  mass: needs('mass', mass(NOT_NEGATIVE), 'its mass'),
  station: needs('station', orWord('axles', length(undefined, '4310 mm')), 'station of its centre; axles for the mean axle station'),
  y: needs('y', anyLength('880 mm'), 'buttock line of its centre, right positive'),
  waterline: needs('wl', anyLength('550 mm'), 'waterline of its centre'),
  by: usually('by', word(['stated', 'bought', 'weighed']), 'who says so', usual.STATED),
  twins: usually(
    'twins',
    list(words('nose gore')),
    'what is derived in its stead: a kind of part (nose or tail before it for one end), opening and its id, rivets, growth',
    usual.NO_TWINS,
  ),
  rest: usually('rest', mass(NOT_NEGATIVE), 'what of it no twin holds, and stays stated beside them', usual.NO_REST),
})
