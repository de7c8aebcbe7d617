/** Fasteners, rows and shop rules: does each row name a fastener, and can its holes be punched? */
import { findRivetAlloy } from '../tables/rivets.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { didYouMean, oneOf } from './near-miss.js'
import { mm } from './say-size.js'

export function fastenerFaults(draft: Draft, reading: Reading): void {
  const types = draft.fasteners
  for (const f of types ?? []) {
    if (!f) continue
    const path = ['fasteners', f.id]
    const named = f.kind === 'solid' && f.alloy !== undefined ? findRivetAlloy(f.alloy) : null
    if (named && !named.ok) {
      reading.wrong([...path, 'alloy'], {
        expected: `an alloy of solid rivets (${oneOf(named.known)})`,
        advice: didYouMean(f.alloy as string, named.known),
      })
    }
    const shank = f.diameter?.value
    if (shank !== undefined && f.hole !== undefined && f.hole < shank) {
      const because = `a hole of ${mm(f.hole)} does not take a fastener of ${f.diameter?.name}`
      reading.impossible([...path, 'hole'], { expected: `at least ${mm(shank)}`, because, advice: 'Look at the units of both.' })
    }
    if (f.pilot !== undefined && f.hole !== undefined && f.pilot > f.hole) {
      const because = `a pilot of ${mm(f.pilot)} is larger than the hole of ${mm(f.hole)}`
      reading.impossible([...path, 'pilot'], { expected: `at most ${mm(f.hole)}`, because, advice: 'Make the pilot smaller.' })
    }
  }
  for (const [kind, row] of Object.entries(draft.rows ?? {})) {
    if (!row || row.fastener === undefined || !types || types.some((f) => !f)) continue
    const ids = types.map((f) => f?.id as string)
    const type = types.find((f) => f?.id === row.fastener)
    if (!type)
      reading.wrong(['rows', kind, 'fastener'], {
        expected: `one of the fasteners (${oneOf(ids)})`,
        advice: didYouMean(row.fastener, ids) || 'Add it under fasteners.',
      })
    else if (type.hole !== undefined && row.pitch !== undefined && row.pitch <= type.hole) {
      const because = `at ${mm(row.pitch)} apart the holes of ${mm(type.hole)} run into each other`
      reading.impossible(['rows', kind, 'pitch'], { expected: `more than ${mm(type.hole)}`, because, advice: 'Make the pitch wider.' })
    }
  }
  const { minPitch, maxPitch } = draft.rules ?? {}
  if (minPitch !== undefined && maxPitch !== undefined && minPitch >= maxPitch) {
    const because = `a widest pitch of ${maxPitch} diameters leaves nothing above the closest, ${minPitch}`
    reading.impossible(['rules', 'max pitch'], {
      expected: `more than ${minPitch}`,
      because,
      advice: 'Make it larger, or min pitch smaller.',
    })
  }
}
