/** Every hole of every flat pattern: what is said of it, and where its mates are. */
import { describe, expect, it } from 'vitest'
import { readExample } from '../../../tests/examples.js'
import { design } from '../../checks/index.js'
import { type Derived, derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import { fromFlat } from '../../derive/shell/plates.js'
import { patternsOf } from '../../derive/shell/verify.js'
import { midSurfaces } from '../../derive/shell/verify-depth.js'
import { at } from '../../maths/tangent-chain.js'
import { flatList, flatShown, holeShown } from './flats.js'

const COACHES = ['sedge-4', 'sedge-6', 'sedge-8'].map((name) => ({ name, definition: readExample(name) }))

/** 0.01 mm */
const SAME = 1e-5

/**
 * Rolls the flat patterns of the barrel up again: station and place across the normal of the mould line at a girth, for the hole of
 * a face. Layers of one fastener lie on one normal, at different depths.
 */
function rolledUp({ shell }: Derived) {
  const surface = midSurfaces(shell)
  const faces = new Map(patternsOf(shell).map((each) => [`${each.part}|${each.pattern.face}`, each]))
  return (face: string, hole: number, girth: number): readonly [station: number, across: number] | null => {
    const found = faces.get(face)
    if (!found) return null
    const { depth, chain } = surface(found.plate)
    const [station, own] = fromFlat(found.plate, found.pattern.holes.x[hole], found.pattern.holes.y[hole])
    const foot = at(shell.section.withFlange, Math.abs(girth))
    const layer = at(chain, Math.abs(own), depth(own))
    // a row over the crown may be met from either side
    const side = Math.sign(own) === Math.sign(girth) || Math.abs(own) < 1e-9 ? 1 : -1
    return [station, (side * layer.y - foot.y) * Math.cos(foot.heading) - (layer.z - foot.z) * Math.sin(foot.heading)]
  }
}

describe.each(COACHES)('the holes of $name', ({ definition }) => {
  const memo = createMemo()
  const shown = design(definition, memo)
  const derived = derive(definition, memo)
  const flats = flatList(shown).flatMap((group) => group.flats)

  it('are those of the design, sheet by sheet', () => {
    const all = shown.parts
      .flatMap((part) => part.patterns.map((pattern) => ({ part, pattern })))
      .filter(({ pattern }) => pattern.holes.x.length)
    expect(flats).toHaveLength(all.length)
    for (const { part, pattern } of all) {
      const flat = flatShown(shown, part.id, pattern.face)
      expect(flat?.x).toBe(pattern.holes.x)
      expect(flat?.diameter).toBe(pattern.holes.diameter)
      expect(flat?.contours.length).toBeGreaterThan(0)
    }
  })

  it('meet their mates in space to a hundredth of a millimetre, and are the mates of their mates', () => {
    const rolled = rolledUp(derived)
    let [met, followed] = [0, 0]
    for (const { part, face, holes } of flats)
      for (let hole = 0; hole < holes; hole++) {
        const found = holeShown(shown, part, face, hole, 'metric')
        if (!found) throw new Error(`hole ${hole} of ${part} ${face} is gone`)
        const set = shown.parts.find(({ id }) => id === part)?.patterns.find((each) => each.face === face)?.holes
        const row = derived.rows.find(({ id }) => id === set?.rows[set.row[hole]])
        const girth = row?.girth[set?.index[hole] ?? -1] ?? Number.NaN
        const own = rolled(`${part}|${face}`, hole, girth)
        for (const mate of found.mates) {
          if (mate.face === null || mate.hole === null) {
            expect(mate.words.length, `${part} ${found.id}`).toBeGreaterThan(10)
            continue
          }
          followed++
          const other = rolled(`${mate.part}|${mate.face}`, mate.hole, girth)
          if (!own || !other) continue
          met++
          const apart = Math.hypot(own[0] - other[0], own[1] - other[1])
          if (!(apart < SAME)) throw new Error(`${found.id} is ${apart} m from itself between ${part} and ${mate.part}`)
          // following it leads to the same fastener, and back
          if (met % 50 === 0) {
            const back = holeShown(shown, mate.part, mate.face, mate.hole, 'metric')
            expect(back?.id).toBe(found.id)
            expect(back?.mates).toContainEqual(expect.objectContaining({ part, face, hole }))
          }
        }
      }
    expect(met).toBeGreaterThan(3000)
    expect(followed).toBeGreaterThan(met)
  })

  it('name every layer of their stack', () => {
    for (const { part, face } of flats) {
      const set = shown.parts.find(({ id }) => id === part)?.patterns.find((each) => each.face === face)?.holes
      const row = [...shown.rows, ...shown.bolts].find(({ id }) => id === set?.rows[set.row[0]])
      const stack = row?.stacks[row.stack[set?.index[0] ?? -1]]
      const named = [part, ...(holeShown(shown, part, face, 0, 'metric')?.mates.map((mate) => mate.part) ?? [])]
      for (const layer of stack?.parts ?? ['no stack']) expect(named, `${part} ${face}`).toContain(layer)
    }
  })

  it('are gone with their sheet', () => {
    expect(flatShown(shown, 'no-such-part', 'sheet')).toBeNull()
    expect(holeShown(shown, flats[0].part, flats[0].face, 1e6, 'metric')).toBeNull()
  })
})
