/**
 * What an absent key means. The only place a default is stated: the reader reads these words as if somebody had written
 * them, and the JSON Schema shows them. Anything not here must be written.
 */
export interface Default {
  readonly written: string | number | readonly never[]
}

const is = (written: Default['written']): Default => ({ written })

// Pitch between rivets of a row, as multiples of the diameter: closer than 3 D the holes weaken the sheet, farther
// than 12 D thin sheet gaps and leaks between them. Common practice, no source.
export const MIN_PITCH = is(3)
export const MAX_PITCH = is(12)
// Between two rows, multiples of the diameter. Common practice, no source.
export const TRANSVERSE_PITCH = is(2.5)
// Half of the usual 25 mm lap, so that a row stands in the middle. Common practice, no source.
export const LAP_EDGE = is('12.5 mm')
// A bucking bar must pass between a rivet and the nearest web. Common practice, no source.
export const BUCK_CLEARANCE = is('5 mm')
// Room for the hanger welds between an axle tube and the next cross-member. Common practice, no source.
export const TUBE_TO_CROSS_MEMBER = is('200 mm')
// Exhaust of a heater to a window that opens; the heater maker's figure governs. Common practice, no source.
export const FLUE_TO_WINDOW = is('300 mm')
// Sheet edge the punch clamps hold. Common practice, no source.
export const CLAMP_MARGIN = is('75 mm')

// A strake takes a sheet to itself unless told. By construction.
export const ACROSS = is(1)

// The toe flange runs straight on from the last arc unless it is bent. By construction.
export const TOE_TURN = is('0 deg')
// Inside radius of a bend in thin 5052-H34, about three thicknesses. From memory.
export const BEND_RADIUS = is('3 mm')
// Neutral line of an air bend in soft aluminium, fraction of the thickness. Common practice, no source.
export const K_FACTOR = is(0.42)

// A roof opening stands on the centre line unless told. By construction.
export const OPENING_GIRTH = is('0 mm')
// What is not said to open is fixed: the safer reading for a flue nearby is a finding, not a default. By construction.
export const OPENS = is('no')
// Superellipse of the plan outline: fuller than an ellipse, softer than a box. Common practice, no source.
export const END_EXPONENT = is(2.5)
// How far inside the lofted surface a wrapped skin may lie before a frame leg or a blind shows it. Common practice, no source.
export const WRAPPED_WITHIN = is('6 mm')
// Half of the usual 25 mm a side of the seam rib. Common practice, no source.
export const GORE_LAP = is('25 mm')

// A lining without stated joints is one panel a strip; stock feasibility then speaks. By construction.
export const NO_JOINTS = is([])
// Stated masses come from another trade's file and may not be there yet. By construction.
export const NO_MASSES = is([])
// A coach without any opening is unusual but can be built. By construction.
export const NO_OPENINGS = is([])

// Cornering force of an axle a radian of slip, in multiples of its load. Light-truck and car tyres 8 to 16, trailer tyres less;
// a shop that knows its tyre writes it. Common practice, no source.
export const FRONT_TYRES = is(12)
export const REAR_TYRES = is(15)
export const TRAILER_TYRES = is(7)
// A ball without a friction device damps no turning worth counting. By construction.
export const NO_HITCH_DAMPING = is('0 Nms/rad')
// Loss factor of rubber in shear, 0.1 to 0.2. From memory.
export const RUBBER_LOSS = is(0.15)
// Vertical rate of a trailer tyre at its full pressure. Common practice, no source.
export const TYRE_RATE = is('320 kN/m')
// A coach of which nobody has said how long its items are is reckoned as points. By construction.
export const NO_EXTENTS = is([])
export const NO_CARS = is([])
// The locked words stand unless somebody signs for others. By construction.
export const NO_OTHER_WORDS = is([])
// Holes through the floor come with the fittings that need them. By construction.
export const NO_FLOOR_OPENINGS = is([])
export const NO_PLATES = is([])
export const NO_BOUGHT = is([])
export const NO_BAYS = is([])
// Heat of a weld ruins the rubber cords inside the tube; the axle maker's figure governs. Common practice, no source.
export const COLD_ZONE = is('150 mm')

// A station is counted from the datum, and a thing stands on the centre plane, unless told. By construction.
export const FROM_DATUM = is('datum')
export const ON_CENTRE = is('0 mm')
// A coach leaves the works with full cylinders; a case without says so. Common practice, no source.
export const GAS_FULL = is('yes')
export const NO_TANKS = is([])
export const NO_PLACES = is([])
export const NOTHING_CARRIED = is([])
export const NO_CASES = is([])
// The band holds for every case that is not said to be a way it may not be stowed: the safer reading. By construction.
export const DESIGN_CASE = is('yes')
// A shop that allows nothing for growth has to see it: the statement prints the nothing. By construction.
export const NO_GROWTH = is('0 %')
export const WITH_PARTS = is('no')
// A mass in the list is only as good as somebody's word unless told better. By construction.
export const STATED = is('stated')
export const NO_TWINS = is([])
export const NO_REST = is('0 kg')
export const NOTHING_LEFT_OUT = is([])
