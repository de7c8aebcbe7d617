/** Is each opening on the coach, and stated the way its surface is measured? */
import { at, type TangentChain, widest } from '../maths/tangent-chain.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { barrelSpan } from './meaning-barrel.js'
import { mm } from './say-size.js'
import { nodeAt, type Path } from './written.js'

type Opening = NonNullable<NonNullable<Draft['openings']>[number]>
const isEnd = (surface: string | undefined): boolean => surface === 'nose' || surface === 'tail'

export function openingFaults(draft: Draft, chain: TangentChain | null, profile: TangentChain | null, reading: Reading): void {
  const reach = profile ? widest(profile).y : null
  draft.openings?.forEach((opening, i) => {
    if (!opening) return
    const path = ['openings', i]
    measureFaults(opening, path, reading)
    cornerFault(opening, path, reading)
    stationFaults(opening, draft, reach, path, reading)
    if (chain) heightFaults(opening, chain, path, reading)
  })
}

/** The roof is measured by girth, everything else by waterline. */
function measureFaults({ surface, waterline }: Opening, path: Path, reading: Reading): void {
  if (surface === undefined) return
  if (surface !== 'roof' && waterline === null) {
    const advice = 'Add wl: 1160 mm, the waterline of its centre.'
    reading.wrong([...path, 'wl'], { expected: 'a length such as 1160 mm', found: 'nothing', advice })
  }
  const stray = surface === 'roof' ? 'wl' : 'girth'
  if (!nodeAt(reading.root, [...path, stray])) return
  const because = surface === 'roof' ? 'the roof has no waterline to speak of' : 'only the roof is measured by girth'
  const advice =
    surface === 'roof' ? 'Write girth: 0 mm for the centre line, or leave both out.' : 'Write wl: and the waterline of its centre.'
  reading.impossible([...path, stray], { expected: surface === 'roof' ? 'girth' : 'wl', because, advice })
}

function cornerFault({ corner, width, height }: Opening, path: Path, reading: Reading): void {
  if (corner === undefined || width === undefined || height === undefined || corner <= Math.min(width, height) / 2) return
  const most = Math.min(width, height) / 2
  const because = `corners of ${mm(corner)} do not fit an opening ${mm(width)} by ${mm(height)}`
  reading.impossible([...path, 'corner'], { expected: `at most ${mm(most)}`, because, advice: `Make the corner ${mm(most)} or less.` })
}

function stationFaults({ surface, station, width }: Opening, draft: Draft, reach: number | null, path: Path, reading: Reading): void {
  const span = barrelSpan(draft)
  if (!span || station === undefined || surface === undefined) return
  const off = (from: number, to: number, what: string): void => {
    const because = `the opening runs from station ${mm(from)} to ${mm(to)}, off ${what}`
    reading.impossible([...path, 'station'], {
      expected: `a place on ${what}`,
      because,
      advice: 'Move it, make it narrower, or give it another surface.',
    })
  }
  if (!isEnd(surface)) {
    if (width === undefined) return
    const [from, to] = [station - width / 2, station + width / 2]
    if (from < span.from || to > span.to) off(from, to, `the barrel, which is ${mm(span.from)} to ${mm(span.to)}`)
  } else if (reach !== null) {
    const [from, to] = surface === 'nose' ? [span.from - reach, span.from] : [span.to, span.to + reach]
    if (station >= from && station <= to) return
    const because = `station ${mm(station)} is off the ${surface}, which is ${mm(from)} to ${mm(to)}`
    reading.impossible([...path, 'station'], {
      expected: `a station on the ${surface}`,
      because,
      advice: 'Move it, or give it another surface.',
    })
  }
}

function heightFaults({ surface, waterline, girth, height }: Opening, chain: TangentChain, path: Path, reading: Reading): void {
  if (surface === undefined || height === undefined) return
  if (surface === 'roof') {
    if (girth === undefined || Math.abs(girth) + height / 2 < chain.length) return
    const because = `the opening reaches to girth ${mm(Math.abs(girth) + height / 2)}, past the toe at ${mm(chain.length)}`
    reading.impossible([...path, 'girth'], { expected: 'a place on the roof', because, advice: 'Move it up, or give it another surface.' })
    return
  }
  if (waterline === undefined || waterline === null) return
  const crown = at(chain, 0).z
  const toe = at(chain, chain.length).z
  // on an end the height lies in the curved skin, so only the centre's waterline is certain
  const half = isEnd(surface) ? 0 : height / 2
  const [bottom, top] = [waterline - half, waterline + half]
  if (top < crown && bottom > toe) return
  const because =
    top >= crown
      ? `its top at waterline ${mm(top)} is above the crown at ${mm(crown)}`
      : `its bottom at waterline ${mm(bottom)} is below the toe at ${mm(toe)}`
  reading.impossible([...path, 'wl'], {
    expected: `a place between ${mm(toe)} and ${mm(crown)}`,
    because,
    advice: 'Move it, or make it lower.',
  })
}
