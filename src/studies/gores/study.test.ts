import { describe, expect, it } from 'vitest'
import { exampleText, readExample } from '../../../tests/examples.js'
import { readDefinition } from '../../definition/read-definition.js'
import { edgeAzimuths } from '../../derive/end-names.js'
import { derive } from '../../derive/index.js'
import { depthInside } from '../../maths/loft.js'
import { insideOf, panelBetween } from './panel.js'
import { insideBetween, placeGores } from './placement.js'
import { goreStudy } from './study.js'

const DEG = Math.PI / 180
const six = derive(readExample('sedge-6'))
const { ground } = six.endSections.local

describe('gores bent over their ribs', () => {
  it('on a ball are cylinders between meridians, R (1 - cos half the gap) inside at the equator (closed form)', () => {
    const R = 1.1
    const ball = derive(ballCoach(R)).endSections.local.ground
    for (const gap of [20, 40]) {
      const panel = panelBetween(ball, (30 + gap) * DEG, 30 * DEG)
      const inside = insideOf(ball, panel)!
      expect(inside.depth / (R * (1 - Math.cos((gap / 2) * DEG)))).toBeCloseTo(1, 3)
      expect(Math.abs(inside.waterline)).toBeLessThan(0.05)
    }
  })

  it('lie on the loft along their seams', () => {
    const { strip } = panelBetween(ground, 60 * DEG, 40 * DEG)
    if (strip.kind !== 'developable') throw new Error(strip.says)
    for (const s of [0.2, 1, 2]) {
      expect(Math.abs(depthInside(ground.loft, strip.p.at(s)))).toBeLessThan(1e-8)
      expect(Math.abs(depthInside(ground.loft, strip.q.at(s)))).toBeLessThan(1e-8)
    }
  })

  it('are placed so that all deviate alike, for odd and even counts', () => {
    const inside = insideBetween(ground)
    for (const gores of [4, 7]) {
      const placed = placeGores(inside, gores, 0.05)
      const edges = edgeAzimuths(placed.seams)
      expect(edges).toHaveLength(gores + 1)
      for (let k = 0; k < gores; k++) expect(inside(edges[k], edges[k + 1]) / placed.inside, `gore ${k + 1} of ${gores}`).toBeCloseTo(1, 2)
    }
  })

  it('of the demonstration: seven lie 31 mm inside and meet at 33 deg; seventeen stay within 6 mm', () => {
    const study = goreStudy(six)
    expect(study.now.gores).toHaveLength(7)
    // the shop has widened the middle gore for its windows: the others deviate alike, it does so more
    expect(study.now.inside! * 1000).toBeCloseTo(45, 0)
    expect(Math.max(...study.now.gores.filter((g) => g.gore !== 4).map((g) => g.inside!.depth)) * 1000).toBeLessThan(32)
    expect(study.even.inside! * 1000).toBeCloseTo(31.2, 0)
    expect(Math.max(...study.even.kinks.map((k) => k.angle)) / DEG).toBeCloseTo(33.3, 0)
    expect(study.enough?.gores).toHaveLength(17)
    expect(study.enough!.inside!).toBeLessThanOrEqual(0.006)
    // the rivets of the seams, counted another way: the derived rows but for the crossings they leave to cap and base
    const rows = six.rows.filter((r) => r.end?.which === 'tail' && r.kind === 'gore')
    const driven = rows.reduce((sum, r) => sum + r.station.length, 0)
    expect(Math.abs(study.now.cost.seamRivets - driven)).toBeLessThan(0.15 * driven)
  }, 60_000)
})

/** Sedge 6 with a half circle for its section and for the centre line of its ends: a ball of radius R about WL 0. */
function ballCoach(R: number) {
  const mm = (m: number): string => `${(m * 1000).toFixed(3)} mm`
  const text = exampleText('sedge.family')
    .text.replace(
      / {2}crown: .*\n {2}chain:\n(?: {4}- .*\n)+/,
      `  crown: ${mm(R)}\n  chain:\n    - {arc: all, radius: ${mm(R)}, to: 105 deg}\n`,
    )
    .replace(/ {2}profile: .*\n(?: {4}- .*\n)+/, `  profile:\n    - {arc: all, radius: ${mm(R)}, to: 105 deg}\n`)
    .replace(/exponent: .*/, 'exponent: 2')
    .replace(/cap: .*/, 'cap: 300 mm')
    .replace(/openings:\n[\s\S]*$/, 'openings: []\n')
    .replace(/^floor:\n(?: {2}.*\n)+/m, 'floor: none\n')
    .replace(/^gear:\n(?: {2}.*\n)+/m, 'gear: none\n')
    .replace(/^chassis:\n(?: {2}.*\n)+/m, 'chassis: none\n')
    .replace(/^(weight|towing|suspension):\n(?: {2}.*\n|\n)+/gm, '$1: none\n')
    .replace(
      /seams: {18}#.*\n(?: {4}- .*\n)+/,
      'seams:\n    - {id: seam-1, girth: 400 mm}\n    - {id: seam-2, girth: 900 mm}\n    - {id: seam-3, girth: 1500 mm}\n',
    )
    .replace(/ {2}seams:\n {4}- \{id: lining-1[\s\S]*?lap: 20 mm/, '  seams: []\n  lap: 20 mm')
  const coach =
    'extends: family.yaml\nschema: 1\ncoach: {name: Ball}\nframes:\n  - {id: F1, station: 3000 mm, joint: nose}\n  - {id: F2, station: 3610 mm, joint: tail}\n'
  const { definition, faults } = readDefinition('ball.yaml', coach, () => text)
  if (!definition) throw new Error(faults.map((f) => f.says).join('\n'))
  return definition
}
