/** The written form of what stands under the shell: the further keys of `floor`, `chassis` and `gear`. All of them may be absent. */
import * as usual from './defaults.js'
import { elsewhere, group, list, maybe, needs, orNone, usually } from './form.js'
import { angle, anyLength, arealMass, bought, density, id, length, mass, multiple, NOT_NEGATIVE, word, words } from './form-values.js'

const size = (key: string, example: string, says: string) => needs(key, length(undefined, example), says)

const floorOpening = group({
  id: needs('id', id('FO1'), 'permanent id'),
  says: needs('says', words('toilet flange'), 'what it is for'),
  shape: needs('shape', word(['round', 'rectangle']), 'round, or a rectangle along the coach'),
  size: size('size', '90 mm', 'diameter, or length along the station'),
  across: maybe('across', length(undefined, '310 mm'), 'width across the coach; only of a rectangle'),
  station: size('station', '6500 mm', 'station of the centre'),
  y: needs('y', anyLength('-500 mm'), 'buttock line of the centre, right positive'),
})

const fixing = {
  diameter: needs('diameter', bought('8 mm'), 'as it is bought'),
  hole: size('hole', '9 mm', 'drilled in the panel'),
  pitch: size('pitch', '200 mm', 'nominal distance along a line, fitted to whole spaces'),
}
const layer = {
  says: needs('says', words('exterior plywood'), 'what it is'),
  arealMass: needs('mass', arealMass(), 'mass of a square metre'),
}

export const floorMore = {
  panel: maybe('panel', group(layer), 'board of the floor'),
  covering: maybe(
    'covering',
    orNone(group({ ...layer, share: needs('share', multiple('0.72'), "part of the panel's outline that it covers") })),
    'what lies on the board',
  ),
  bolts: maybe('bolts', group(fixing), 'hold-down bolts through the floor into the chassis'),
  screws: maybe(
    'screws',
    group({ ...fixing, edge: size('edge', '20 mm', "from the panel's edge to the line along it") }),
    'self-drilling screws of the floor',
  ),
  openings: usually('openings', list(floorOpening, 0, 'id'), 'holes through the floor', usual.NO_FLOOR_OPENINGS),
  cutter: maybe('cutter', length(undefined, '10 mm'), 'diameter of the router cutter'),
}

const channel = {
  height: size('height', '152 mm', 'web over all'),
  flange: size('flange', '57 mm', 'flange over all'),
  thickness: needs('thickness', bought('3.0 mm'), 'thickness as it is bought'),
  bendRadius: size('bend radius', '4.5 mm', 'inside radius of its bends'),
}

const rail = group({
  ...channel,
  centres: size('centres', '1520 mm', 'between the outer faces of the two webs'),
  holes: needs(
    'holes',
    group({
      diameter: size('diameter', '76.2 mm', 'of a flanged lightening hole'),
      pitch: size('pitch', '203.3 mm', 'from hole to hole'),
      clear: needs('clear', length(NOT_NEGATIVE, '15 mm'), 'least metal to a cross-member or an axle bracket'),
    }),
    'lightening holes in the web',
  ),
})

const outrigger = group({
  root: size('root', '152 mm', 'depth at the rail'),
  tip: size('tip', '76 mm', 'depth at its tip'),
  flange: size('flange', '44 mm', 'flange over all'),
  thickness: needs('thickness', bought('1.9 mm'), 'thickness as it is bought'),
  bendRadius: size('bend radius', '2.9 mm', 'inside radius of its bends'),
  reach: size('reach', '1120 mm', 'buttock line of its tip'),
})

const place = {
  station: size('station', '1130 mm', 'station of its centre'),
  y: needs('y', anyLength('0 mm'), 'buttock line of its centre, right positive'),
  waterline: needs('wl', anyLength('-94 mm'), 'waterline of its centre'),
}

const plate = group({
  id: needs('id', id('jack-plate'), 'permanent id'),
  says: needs('says', words('tongue jack plate'), 'what it is'),
  length: size('length', '300 mm', 'along the coach'),
  width: size('width', '200 mm', 'across the coach'),
  thickness: needs('thickness', bought('6 mm'), 'thickness as it is bought'),
  ...place,
})

const boughtItem = group({
  id: needs('id', id('coupler'), 'permanent id'),
  says: needs('says', words('coupler'), 'what it is'),
  mass: needs('mass', mass(NOT_NEGATIVE), 'its mass'),
  ...place,
})

const bay = group({
  id: needs('id', id('TB1'), 'permanent id'),
  says: needs('says', words('fresh water'), 'what hangs in it'),
  fore: size('from', '3629 mm', 'station of its forward end'),
  aft: size('to', '4201 mm', 'station of its after end'),
  half: size('half width', '650 mm', 'half of its width'),
  y: needs('y', anyLength('0 mm'), 'buttock line of its middle, right positive'),
  depth: size('depth', '140 mm', 'below the underside of the floor'),
  bearer: size('bearer', '30 mm', 'leg of the angles it hangs by'),
})

export const chassisMore = {
  steel: maybe(
    'steel',
    group({ name: needs('name', words('HSLA 345'), 'grade as it is bought'), density: needs('density', density(), 'its density') }),
    'what the members are pressed from',
  ),
  kFactor: usually('k factor', multiple('0.42'), 'neutral line as a fraction of the thickness', usual.K_FACTOR),
  rail: maybe('rail', rail, 'main rails'),
  crossMember: maybe('cross-member', group(channel), 'section of the cross-members'),
  outrigger: maybe('outrigger', outrigger, 'tapered arms from the rails to the sides, one a side at every frame where no wheel box stands'),
  aFrame: maybe(
    'A-frame',
    group({
      ...channel,
      apex: elsewhere('apex', length(undefined, '880 mm'), 'station where the two legs meet; at the ball where it is not written'),
      angle: needs('angle', angle({ over: 0 }, '50 deg'), 'between the two legs'),
    }),
    'the two legs to the coupler',
  ),
  plates: usually('plates', list(plate, 0, 'id'), 'flat plates: jacks, gussets', usual.NO_PLATES),
  bought: usually('bought', list(boughtItem, 0, 'id'), 'bought and fitted as it comes', usual.NO_BOUGHT),
  bays: usually('bays', list(bay, 0, 'id'), 'rooms for tanks between cross-members', usual.NO_BAYS),
  coldZone: usually('cold zone', length(NOT_NEGATIVE, '150 mm'), 'no weld or heat this near a finished axle tube', usual.COLD_ZONE),
}

export const gearMore = {
  ground: maybe('ground', anyLength('-508 mm'), 'waterline of the ground, coach level and at rest; that of towing where it is not written'),
  tube: maybe(
    'tube',
    group({
      size: size('size', '70 mm', 'outside of the square tube'),
      waterline: needs('wl', anyLength('-185 mm'), 'waterline of its centre'),
      startAngle: needs('start angle', angle(NOT_NEGATIVE, '22.5 deg'), 'arm below level, unloaded'),
      loadedAngle: maybe(
        'loaded angle',
        angle({}, '6.7 deg'),
        'arm below level at gross weight; worked out from the suspension where absent',
      ),
      bumpAngle: needs('bump angle', angle(NOT_NEGATIVE, '22 deg'), 'arm above level at full bump'),
    }),
    'tube of a rubber-torsion axle',
  ),
  wheel: maybe(
    'wheel',
    group({
      radius: elsewhere('radius', length(undefined, '332 mm'), 'tyre standing free; that of the suspension where it is not written'),
      width: elsewhere('width', length(undefined, '205 mm'), 'width of the tyre; that of the suspension where it is not written'),
      y: size('y', '1005 mm', 'buttock line of its middle, both sides alike'),
    }),
    'tyre, for the room it needs',
  ),
  wheelBox: maybe(
    'wheel box',
    group({
      reach: size('reach', '385 mm', 'ahead of the first spindle and behind the last'),
      inner: size('inner', '850 mm', 'buttock line of its inner face'),
      top: needs('top', anyLength('250 mm'), 'waterline of its top'),
      flange: size('flange', '25 mm', 'turned out on the floor'),
      thickness: needs('thickness', bought('1.0 mm'), 'thickness as it is bought'),
      corner: needs('corner', length(NOT_NEGATIVE, '10 mm'), "radius of the floor's cut at its inner corners"),
    }),
    'box over the wheels',
  ),
}
