/** What goes over to the screen after an edit: what it changed, and nothing else. */
import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../../tests/examples.js'
import { deskCoach } from '../desk-coach.js'
import type { DeskCoach } from '../desk-coach-nouns.js'

function opened(name: string): DeskCoach {
  const held = deskCoach(exampleFiles(name))
  if ('faults' in held) throw new Error(held.faults.map((each) => each.says).join('\n'))
  return held
}

describe('a coach in space on the desk', () => {
  const held = opened('sedge-6')
  const first = held.space({ have: [], gaps: false })
  const have = [...first.parts.map(({ version }) => version), first.rivetsVersion]

  it('sends all of it once', () => {
    expect(first.meshes).toHaveLength(first.parts.length)
    expect(first.rivets?.radius.length).toBeGreaterThan(5000)
    expect(first.gaps).toBeNull()
    const again = held.space({ have, gaps: false })
    expect([again.meshes, again.rivets]).toEqual([[], null])
  })

  it('sends after an edit only what that made anew', () => {
    expect(held.edit({ kind: 'move', id: 'RW3', station: 5.785, waterline: null })).toBeNull()
    const next = held.space({ have, gaps: true })
    const made = new Set(next.meshes.map(([version]) => version))
    const named = next.parts.filter(({ version }) => made.has(version)).map(({ id }) => id)
    expect(named).toContain('pane-RW3')
    expect(named).toContain('strake-side-left')
    expect(named).not.toContain('strake-crown')
    expect(named.filter((id) => id.startsWith('nose-') || id.endsWith('-right'))).toEqual([])
    expect(named.length).toBeLessThan(30)
    expect(next.rivets).not.toBeNull()
    expect(next.gaps?.map(([id]) => id).sort()).toEqual(
      ['nose', 'tail'].flatMap((end) => [1, 2, 3, 4, 5, 6, 7].map((k) => `${end}-gore-${k}`)),
    )
  })

  it('never gives another coach the version of a mesh', () => {
    const other = opened('sedge-4').space({ have: [], gaps: false })
    const known = new Set([...have, ...held.space({ have, gaps: false }).meshes.map(([version]) => version)])
    expect(other.meshes.filter(([version]) => known.has(version))).toEqual([])
  })
})
