/** Given figures under the floor: floor, axle group, springs, and the slings and hands that lift. */
import { field, type Given, type GivenAt, type Origins, words, writtenAt } from './given-nouns.js'

const rubber = (key: string) => field('suspension', 'rubber', key)
const bySource = words('as the source has it, at its best')
const inTable = words('of rubber, from the source')

const GROUND: Given = { says: 'the ground of weight', written: [{ steps: ['gear', 'ground'] }, { steps: ['weight', 'ground'] }] }

const lastSpindle = ({ subject }: GivenAt): Given => ({
  says: 'the last axle',
  written: [{ steps: ['gear', 'spindles', (subject.design.definition.gear?.spindles.length ?? 0) - 1] }],
})

export const UNDER_GIVEN: Origins = {
  'floor.layer-mass': {
    w: ({ root }) => writtenAt(['floor', root === 'floor.covering.mass' ? 'covering' : 'panel', 'mass']),
    A: words('measured on its outline'),
  },
  'gear.ground-level': {
    z_t: field('gear', 'tube', 'wl'),
    R: field('gear', 'arm'),
    A: () => ({
      says: 'as the springs hold the arm at gross weight',
      written: [{ steps: ['gear', 'tube', 'loaded angle'] }],
    }),
    R_t: () => ({ says: 'of the tyre named in the suspension', written: [{ steps: ['gear', 'wheel', 'radius'] }] }),
    F: words('what one wheel carries at gross weight'),
    k_t: field('suspension', 'tyre rate'),
  },
  'gear.departure-angle': {
    x_t: words('toe of the tail'),
    z_t: words('toe of the tail'),
    x_s: lastSpindle,
    z_g: () => GROUND,
  },
  'ride.wheel-rate': {
    K: words('slope of the torque at that angle'),
    R: field('gear', 'arm'),
    a: words('where the arm comes to rest at gross weight'),
    F: words('what the springs of one wheel carry'),
  },
  'ride.body-frequency': { m: words('what one wheel carries, less what is unsprung') },
  'ride.bush-rate': { G: rubber('shear modulus'), L: rubber('length'), D_i: rubber('bar'), D_o: rubber('tube') },
  'ride.corner-height': { S_o: rubber('tube'), S_i: rubber('bar') },
  'ride.cord-squeeze': { d_c: rubber('cord') },
  'ride.cord-fill': { d_c: rubber('cord') },
  'ride.cold-shrink': { c_w: inTable, c_g: inTable, T_0: words('a warm room'), T_g: inTable, T_1: words('liquid nitrogen') },
  'lift.pick-load': {
    g: words('standard gravity'),
    a: words('from this sling to the centre of the body'),
    b: words('from the other sling to the centre of the body'),
  },
  'lift.leg-tension': {
    a: words('from this sling to the centre of the body'),
    e: () => ({ says: 'half of the beam', written: [{ steps: ['weight', 'lift', 'spreader'], times: 0.5 }] }),
    h: field('weight', 'lift', 'hook'),
  },
  'lift.hand-limit-pounds': { '*': bySource },
  'lift.hand-limit': { '*': bySource },
}
