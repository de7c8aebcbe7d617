/** What would help a joint most: it is tried again with one thing changed at a time, the same draws otherwise. */
import type { ProcessDefinition } from '../../definition/types.js'
import type { FitModel } from './model.js'
import type { Help } from './nouns.js'
import { type Tally, type Tried, trialsOf } from './trials.js'

/** What a slot adds to a hole's length, m; common practice, no source. */
const SLOT = 0.002

interface Change {
  readonly what: Help['what']
  readonly says: string
  readonly model: FitModel
  readonly tried: Tried
}

/** Best first: fewest holes to ream, then the greater chance. `pilots` is the chance already found that pilots drill out. */
export function helpsOf(model: FitModel, tried: Tried, seed: number, trials: number, tally: Tally): readonly Help[] {
  const pilot: Help = {
    what: 'pilot',
    says: 'Punch pilots and drill through all layers at assembly.',
    chance: tally.pilots / tally.trials,
    reaming: 0,
  }
  const others = changesOf(model, tried).map(({ what, says, ...changed }): Help => {
    const again = trialsOf(changed.model, changed.tried, seed)
    again.run(trials, false)
    return { what, says, chance: again.tally.leastSquares / trials, reaming: again.tally.reamed / trials }
  })
  return [...others, pilot].sort((a, b) => a.reaming - b.reaming || b.chance - a.chance || (a.what < b.what ? -1 : 1))
}

function changesOf(model: FitModel, tried: Tried): readonly Change[] {
  const { process } = tried
  const withProcess = (change: Partial<ProcessDefinition>): Tried => ({ ...tried, process: { ...process, ...change } })
  const middle = (process.jigTempC[0] + process.jigTempC[1]) / 2
  const one: readonly [number, number] = [middle, middle]
  const held = model.parts.filter((p) => p.held === 'side jig' || p.held === 'end jig').length
  const seen = model.rows.map(() => 0)
  const everySecond = model.holes.filter((h) => seen[h.row]++ % 2 === 0)
  return [
    {
      what: 'temperature',
      says: `Punch and assemble at one temperature (${middle} C).`,
      model,
      tried: withProcess({ sheetTempC: one, jigTempC: one }),
    },
    { what: 'punch', says: 'Punch twice as true.', model, tried: withProcess({ punchSigma: process.punchSigma / 2 }) },
    { what: 'slot', says: 'Slot one layer by 2 mm along the row, where a slot may stand.', model, tried: { ...tried, slot: SLOT } },
    ...(everySecond.length > 0 && everySecond.length < model.holes.length
      ? [
          {
            what: 'pitch' as const,
            says: 'Twice the pitch, where strength allows it: half as many holes.',
            model: thinned(model, everySecond),
            tried,
          },
        ]
      : []),
    ...(held > 1
      ? [
          {
            what: 'jig' as const,
            says: 'Set the jig twice as true.',
            model,
            tried: withProcess({ sideJigSigma: process.sideJigSigma / 2, endJigSigma: process.endJigSigma / 2 }),
          },
        ]
      : []),
  ]
}

/** With fewer holes a body or a part may have none left. */
function thinned(model: FitModel, holes: FitModel['holes']): FitModel {
  const used = new Set(holes.flatMap((h) => h.layers))
  return { ...model, holes, bodies: model.bodies.filter((b) => used.has(b)) }
}
