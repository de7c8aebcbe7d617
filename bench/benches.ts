/** What is measured, and the budgets: figures for a two-core machine, Node 20, one thread. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { design } from '../src/checks/index.js'
import { readDefinition } from '../src/definition/read-definition.js'
import type { Definition } from '../src/definition/types.js'
import { derive } from '../src/derive/index.js'
import { createMemo, type Memo } from '../src/derive/memo.js'
import { compare } from '../src/ripple/compare.js'
import { fitModels } from '../src/studies/fit/model.js'
import { type Trials, trialsOf } from '../src/studies/fit/trials.js'
import { afresh, bodyAlone, definitionOf, textOf, withMassMoved, withOpeningMoved } from './coach.js'
import type { Bench } from './measure.js'
import { coachwright, inFolder, peakOf } from './process.js'

const LARGEST = 'examples/sedge-8.yaml'
const USUAL = 'examples/sedge-6.yaml'
const MM = 0.001

// a derivation is a thousand small functions: the engine goes on compiling them for some hundred and fifty runs
const inProcess = { unit: 'ms', samples: 30, warmups: 150 } as const
/** One run first, so that the files come from memory as they do the second time somebody types the command. */
const freshProcess = { unit: 'ms', samples: 5, warmups: 1 } as const

const packet = (folder: string): readonly string[] => ['packet', USUAL, '--out', join(folder, 'packet')]

/** The largest coach in new objects each time, so that nothing kept is recognised. */
const fromNothing =
  (run: (definition: Definition) => unknown, part: (whole: Definition) => Definition = (whole) => whole) =>
  () => {
    const parsed = part(definitionOf(LARGEST))
    let next: Definition = parsed
    return {
      before: () => {
        next = afresh(parsed)
      },
      run: () => run(next),
    }
  }

/** The same coach with one thing changed, and the memo of the time before. */
const afterAnEdit =
  (change: (definition: Definition, step: number) => Definition, run: (definition: Definition, memo: Memo) => unknown) => () => {
    const parsed = definitionOf(LARGEST)
    const memo = createMemo()
    run(parsed, memo)
    let step = 0
    let next: Definition = parsed
    return {
      before: () => {
        step += 1
        next = change(parsed, step)
      },
      run: () => run(next, memo),
    }
  }

// to and fro by 1 mm, each time a hundredth further along: a place already derived would cost nothing
const windowMoved = (parsed: Definition, step: number): Definition =>
  withOpeningMoved(parsed, 'RW3', (step % 2 === 0 ? 0 : MM) + step * 0.01 * MM)
const batteriesMoved = (parsed: Definition, step: number): Definition => withMassMoved(parsed, 'LiFePO4 batteries', step * MM)

export const BENCHES: readonly Bench[] = [
  {
    id: 'derive',
    says: 'Derive Sedge 8 from a parsed definition, nothing kept',
    ...inProcess,
    budget: 50,
    setup: fromNothing((d) => derive(d)),
  },
  {
    id: 'body',
    says: 'Derive the body of Sedge 8 with its ends, without what stands under and in it, nothing kept',
    ...inProcess,
    budget: 45,
    setup: fromNothing((d) => derive(d), bodyAlone),
  },
  {
    id: 'mass',
    says: 'Derive Sedge 8 again with its batteries moved 1 mm',
    ...inProcess,
    budget: 10,
    setup: afterAnEdit(batteriesMoved, derive),
  },
  {
    id: 'edit',
    says: 'Derive Sedge 8 again with window RW3 moved 1 mm',
    ...inProcess,
    budget: 10,
    setup: afterAnEdit(windowMoved, derive),
  },
  { id: 'checked', says: 'Derive and check Sedge 8, nothing kept', ...inProcess, budget: 75, setup: fromNothing((d) => design(d)) },
  {
    id: 'checked-edit',
    says: 'Derive and check Sedge 8 again with window RW3 moved 1 mm',
    ...inProcess,
    budget: 15,
    setup: afterAnEdit(windowMoved, design),
  },
  {
    id: 'compare',
    says: 'Compare Sedge 8 with itself with window RW3 moved, both derived and checked already',
    ...inProcess,
    // no more than a checked edit and a half: both together stay within a thirtieth of a second
    budget: 20,
    setup: () => {
      const parsed = definitionOf(LARGEST)
      const memo = createMemo()
      const before = design(parsed, memo)
      let step = 0
      let after = before
      return {
        before: () => {
          step += 1
          // Another place every time: what is kept of a design that was compared before would cost nothing.
          after = design(withOpeningMoved(parsed, 'RW3', MM + step * 0.01 * MM), memo)
        },
        run: () => compare(before, after),
      }
    },
  },
  {
    id: 'faults',
    says: 'Read the text of Sedge 8 and its family, to the list of faults',
    ...inProcess,
    budget: 150,
    setup: () => {
      const texts = new Map<string, string>()
      const load = (path: string): string => {
        const text = texts.get(path) ?? textOf(path)
        texts.set(path, text)
        return text
      }
      let edits = 0
      let text = textOf(LARGEST)
      return {
        before: () => {
          // A line somebody has just typed: a text that was read before might be recognised.
          edits += 1
          text = `${textOf(LARGEST)}\n# edit ${edits}\n`
        },
        run: () => readDefinition(LARGEST, text, load),
      }
    },
  },
  {
    id: 'fit',
    says: 'Try the largest joint of Sedge 8 ten thousand times over (a tenth of the five seconds for a hundred thousand)',
    unit: 'ms',
    samples: 5,
    warmups: 1,
    budget: 500,
    setup: () => {
      const definition = definitionOf(LARGEST)
      const trials = largestJoint(definition)
      return { run: () => trials.run(10_000, true) }
    },
  },
  {
    id: 'command',
    says: 'A fresh process, Sedge 6 from text to JSON',
    ...freshProcess,
    budget: 1500,
    setup: () => ({ run: () => coachwright(['derive', USUAL, '--json']) }),
  },
  {
    id: 'packet',
    says: 'A fresh process, the whole packet of Sedge 6',
    ...freshProcess,
    samples: 3,
    budget: 8000,
    setup: () => ({ run: () => inFolder((folder) => writePacket(folder)) }),
  },
  {
    id: 'memory',
    says: 'Most memory held while writing the packet of Sedge 6',
    unit: 'MB',
    samples: 1,
    warmups: 0,
    budget: 400,
    setup: () => ({ run: () => peakOf(packet) }),
  },
]

function largestJoint(definition: Definition): Trials {
  const { process, fasteners } = definition
  if (process === null) throw new Error(`${LARGEST} does not say how the shop punches.`)
  const [model] = [...fitModels(derive(definition)).joints].sort((a, b) => b.holes.length - a.holes.length)
  const types = model.rows.flatMap((row) => fasteners.filter((f) => f.id === row.fastener))
  return trialsOf(model, { process, fasteners: types }, 1)
}

function writePacket(folder: string): void {
  coachwright(packet(folder))
  if (!existsSync(join(folder, 'packet', 'packet.json'))) throw new Error('The packet was written without its manifest.')
}
