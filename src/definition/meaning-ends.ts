/** Can the end sections be lofted from the section and their profile, and parted into gores? Gives the profile's chain when they can. */
import { buildChain, type ChainPiece, type TangentChain, widest } from '../maths/tangent-chain.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { barrelSpan } from './meaning-barrel.js'
import { deg, mm } from './say-size.js'

/** How far above the section's toe a profile may end and still be called level with it, m: less than a tape can tell. */
const LEVEL = 1e-3

export function endFaults(draft: Draft, chain: TangentChain | null, reading: Reading): TangentChain | null {
  const { ends } = draft
  if (!ends) return null
  const { exponent } = ends
  if (exponent !== undefined && (exponent < 2 || exponent > 6)) {
    const because = exponent < 2 ? 'below 2 the end would be creased where it meets the barrel' : 'above 6 the end is a box with an edge'
    reading.impossible(['ends', 'exponent'], {
      expected: 'a number from 2 to 6',
      because,
      advice: '2 is an ellipse, 2.6 a full round end.',
    })
  }
  seamFaults(ends.seams, reading)
  const thickness = ends.skin?.thickness?.value
  if (thickness !== undefined && ends.minThickness !== undefined && ends.minThickness > thickness) {
    const because = `the sheet is ${mm(thickness)} before it is formed`
    reading.impossible(['ends', 'least thickness'], { expected: `at most ${mm(thickness)}`, because, advice: 'Make it less.' })
  }
  const profile = profileOf(draft, chain, reading)
  if (profile) reachFaults(draft, profile, reading)
  return profile
}

function seamFaults(seams: NonNullable<Draft['ends']>['seams'], reading: Reading): void {
  seams?.forEach((azimuth, i) => {
    if (azimuth === undefined) return
    const before = i === 0 ? undefined : seams[i - 1]
    const path = ['ends', 'seams', i]
    if (azimuth >= Math.PI / 2) {
      const because = 'the joint to the barrel stands at 90 deg from the centre line'
      reading.impossible(path, { expected: 'an azimuth below 90 deg', because, advice: 'Leave it out, or make it less.' })
    } else if (before !== undefined && azimuth <= before) {
      const because = `the seam before it stands at ${deg(before)}`
      reading.impossible(path, { expected: `more than ${deg(before)}`, because, advice: 'Write the seams from the centre line outward.' })
    }
  })
}

function profileOf(draft: Draft, chain: TangentChain | null, reading: Reading): TangentChain | null {
  const pieces = draft.ends?.profile
  const crown = draft.section?.crown
  if (!pieces || crown === undefined || pieces.some((p) => p === undefined)) return null
  const whole = pieces as readonly ChainPiece[]
  let heading = 0
  for (const [i, p] of whole.entries()) {
    const path = ['ends', 'profile', i]
    if (i === 0 && p.kind === 'line') {
      const because = 'a flat crown cannot be parted into gores'
      reading.impossible(path, { expected: 'an arc first', because, advice: 'Start the profile with an arc, however large.' })
      return null
    }
    if (p.kind !== 'arc') continue
    if (p.radius <= 0 || p.to <= heading || p.to >= Math.PI) {
      const because = `the profile stands at ${deg(heading)} there and must turn on down and in, short of 180 deg`
      reading.impossible([...path, p.radius <= 0 ? 'radius' : 'to'], {
        expected: p.radius <= 0 ? 'a radius above zero' : `a heading between ${deg(heading)} and 180 deg`,
        because,
        advice: 'Headings grow from 0 deg, level outboard, by way of 90 deg, straight down.',
      })
      return null
    }
    heading = p.to
  }
  const profile = buildChain({ y: 0, z: crown, heading: 0 }, whole)
  const last = profile.elements[profile.elements.length - 1]
  const low = last.z0 - fall(last)
  if (!chain) return profile
  const toe = chain.elements[chain.elements.length - 1]
  const need = toe.z0 - fall(toe)
  if (low <= need + LEVEL) return profile
  const because = `it ends at waterline ${mm(low)}, above the section's toe at ${mm(need)}`
  const advice = 'Carry its last piece further down; it is cut at the toe.'
  reading.impossible(['ends', 'profile', whole.length - 1], { expected: 'a profile that reaches the toe', because, advice })
  return null
}

function fall(e: TangentChain['elements'][number]): number {
  const run = e.girth1 - e.girth0
  return e.curvature === 0 ? run * Math.sin(e.heading0) : (Math.cos(e.heading0) - Math.cos(e.heading1)) / e.curvature
}

/**
 * Row offsets from the crown to a cap's own row. The lining's row round the header ring stands two nearer the crown, and those of the
 * ribs two aside of their ribs: nearer than twice that, a rib's row beside the joint would pass the crown by. Our own reckoning.
 */
const ROOM_UNDER_CAP = 6

function reachFaults(draft: Draft, profile: TangentChain, reading: Reading): void {
  const reach = widest(profile).y
  const { couplerFace, cap } = draft.ends ?? {}
  const span = barrelSpan(draft)
  if (cap !== undefined && cap >= profile.length / 2) {
    const because = `a crown cap of ${mm(cap)} leaves no gore on a profile of ${mm(profile.length)}`
    reading.impossible(['ends', 'cap'], { expected: `less than ${mm(profile.length / 2)}`, because, advice: 'Make it smaller.' })
  }
  const rowOffset = draft.shell?.frame?.rowOffset
  if (cap !== undefined && rowOffset !== undefined && cap < ROOM_UNDER_CAP * rowOffset) {
    const because = `under a crown cap of ${mm(cap)} the header ring, and the rows beside the ribs that meet it, find no room`
    const least = mm(ROOM_UNDER_CAP * rowOffset)
    const advice = `Make it ${least} or more, ${ROOM_UNDER_CAP} times the frames' row offset.`
    reading.impossible(['ends', 'cap'], { expected: `at least ${least}`, because, advice })
  }
  const floor = draft.floor
  if (floor?.endReach !== undefined && floor.endReach >= reach) {
    const because = `the floor would stand outside the ends, which reach ${mm(reach)}`
    reading.impossible(['floor', 'end reach'], { expected: `less than ${mm(reach)}`, because, advice: 'Make it smaller.' })
  }
  if (!span) return
  if (reach >= span.from) {
    const because = `the nose would reach ${mm(reach)} ahead of the first frame, past station 0`
    reading.impossible(['ends', 'profile'], { expected: `a reach below ${mm(span.from)}`, because, advice: 'Make it shorter.' })
  } else if (couplerFace !== undefined && couplerFace >= span.from - reach) {
    const because = `the coupler face would stand inside the nose, whose tip is at station ${mm(span.from - reach)}`
    const advice = 'Put it ahead of the nose.'
    reading.impossible(['ends', 'coupler face'], { expected: `less than ${mm(span.from - reach)}`, because, advice })
  }
}
