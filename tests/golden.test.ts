/**
 * What the three Sedges came to when last looked at, pinned in golden/. It is our own output, not an outside figure: a
 * difference is not a fault, but it must be meant, and said in the changelog.
 */
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Derived, derive } from '../src/derive/index.js'
import type { Part } from '../src/derive/nouns.js'
import { readExample } from './examples.js'

const PIN = process.env.COACHWRIGHT_PIN === '1'
const REPIN =
  'If that is meant, pin it anew with COACHWRIGHT_PIN=1 npx vitest run tests/golden.test.ts, read the difference in golden/, and say it in the changelog.'

/** kg, m, m2 */
interface Pinned {
  readonly totals: Readonly<Record<string, number>>
  /** row id -> fasteners */
  readonly rows: Readonly<Record<string, number>>
  readonly parts: Readonly<Record<string, PinnedPart>>
}

interface PinnedPart {
  readonly area: number
  readonly mass: number
  readonly holes: number
  /** SHA-256 over outlines, cuts and holes to a nanometre's tenfold */
  readonly sha256: string
}

/** To 1e-6: a gram's thousandth, a square millimetre. */
const six = (value: number): number => Number(value.toFixed(6))

function pinned(design: Derived): Pinned {
  const { totals } = design
  return {
    totals: {
      mass: six(totals.mass.value),
      solid: totals.fasteners.solid,
      blind: totals.fasteners.blind,
      holes: totals.holes,
      sheets: totals.sheets.length,
      bodyLength: six(totals.bodyLength),
      overallLength: six(totals.overallLength),
      overallWidth: six(totals.overallWidth),
      halfGirth: six(design.section.halfGirth),
    },
    rows: Object.fromEntries(design.rows.map((r) => [r.id, r.station.length])),
    parts: Object.fromEntries(design.parts.map((p) => [p.id, pinnedPart(p)])),
  }
}

function pinnedPart(part: Part): PinnedPart {
  const hash = createHash('sha256')
  // a tenth of a micrometre: far finer than any punch, far coarser than the last bit of a number
  const point = (x: number, y: number): string => `${(x * 1e7).toFixed(0)},${(y * 1e7).toFixed(0)};`.replace(/-0\b/g, '0')
  let holes = 0
  for (const { holes: set, face } of part.patterns) {
    hash.update(`${face}:`)
    set.x.forEach((x, k) => {
      hash.update(point(x, set.y[k]))
      holes++
    })
  }
  return { area: six(part.area), mass: six(part.mass.value), holes, sha256: hash.digest('hex') }
}

/** One sentence for each thing that moved. */
function moved(old: Pinned, now: Pinned): string[] {
  return [
    ...changes(old.totals, now.totals, (id, a, b) => (a === b ? [] : [`total ${id}: ${a} is now ${b}`])),
    ...changes(old.rows, now.rows, (id, a, b) => (a === b ? [] : [`row ${id} had ${a} fasteners and now has ${b}`])),
    ...changes(old.parts, now.parts, partMoved),
  ]
}

function changes<T>(
  old: Readonly<Record<string, T>>,
  now: Readonly<Record<string, T>>,
  compare: (id: string, a: T, b: T) => string[],
): string[] {
  const gone = Object.keys(old)
    .filter((id) => !(id in now))
    .map((id) => `${id} is gone`)
  const fresh = Object.keys(now)
    .filter((id) => !(id in old))
    .map((id) => `${id} is new`)
  return [...gone, ...fresh, ...Object.keys(old).flatMap((id) => (id in now ? compare(id, old[id], now[id]) : []))]
}

function partMoved(id: string, a: PinnedPart, b: PinnedPart): string[] {
  return [
    ...(a.area === b.area ? [] : [`${id}: net area ${a.area} m2 is now ${b.area}`]),
    ...(a.mass === b.mass ? [] : [`${id}: mass ${a.mass} kg is now ${b.mass}`]),
    ...(a.holes === b.holes ? [] : [`${id}: ${a.holes} holes are now ${b.holes}`]),
    ...(a.holes !== b.holes || a.sha256 === b.sha256 ? [] : [`${id}: its ${b.holes} holes stand elsewhere`]),
  ]
}

/** JSON with a part a line, so that a difference can be read. */
function written(pin: Pinned): string {
  const list = (record: Readonly<Record<string, unknown>>): string =>
    Object.entries(record)
      .map(([id, value]) => `    ${JSON.stringify(id)}: ${JSON.stringify(value)}`)
      .join(',\n')
  return `{\n  "totals": {\n${list(pin.totals)}\n  },\n  "rows": {\n${list(pin.rows)}\n  },\n  "parts": {\n${list(pin.parts)}\n  }\n}\n`
}

describe('golden', () => {
  it.each(['sedge-4', 'sedge-6', 'sedge-8'])('%s is what it was when last looked at', (name) => {
    const path = `golden/${name}.json`
    const now = pinned(derive(readExample(name)))
    if (PIN) writeFileSync(path, written(now))
    expect(existsSync(path), `${path} is missing. ${REPIN}`).toBe(true)
    const old = JSON.parse(readFileSync(path, 'utf8')) as Pinned
    const differences = moved(old, now)
    expect(differences, `${differences.length} things moved in ${name}:\n${differences.slice(0, 40).join('\n')}\n${REPIN}\n`).toEqual([])
  })

  it('says what moved', () => {
    const part = { area: 1, mass: 2, holes: 3, sha256: 'a' }
    const old: Pinned = { totals: { mass: 2 }, rows: { 'hoop-F2': 10, 'hoop-F3': 10 }, parts: { 'frame-F2': part, 'frame-F3': part } }
    const now: Pinned = {
      totals: { mass: 2.5 },
      rows: { 'hoop-F2': 11, 'hoop-F3': 10 },
      parts: { 'frame-F2': { ...part, sha256: 'b' }, 'frame-F4': part },
    }
    expect(moved(old, now)).toEqual([
      'total mass: 2 is now 2.5',
      'row hoop-F2 had 10 fasteners and now has 11',
      'frame-F3 is gone',
      'frame-F4 is new',
      'frame-F2: its 3 holes stand elsewhere',
    ])
    expect(moved(old, old)).toEqual([])
  })
})
