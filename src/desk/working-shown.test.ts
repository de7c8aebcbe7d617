/** Every figure of the demonstration opened, and every input of it in turn, down to the text: what is said there is so. */
import { describe, expect, it } from 'vitest'
import { exampleFiles } from '../../tests/examples.js'
import type { Subject } from '../checks/explain/entry.js'
import { UNNAMED } from '../checks/explain/given.js'
import { explainable } from '../checks/explain/working.js'
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import { derive } from '../derive/index.js'
import { createMemo } from '../derive/memo.js'
import { evaluate } from '../quantity/evaluate.js'
import { parse } from '../quantity/expression.js'
import type { FieldShown, InputShown, WorkingShown } from './nouns.js'
import { workingShown } from './working-shown.js'

type Files = Readonly<Record<string, string>>

function opened(name: string) {
  const { path, files } = exampleFiles(name)
  const { definition, merged } = readDefinition(path, files[path], (other) => files[other] ?? null)
  if (!definition) throw new Error(`${name} does not read`)
  const memo = createMemo()
  const subject: Subject = { design: design(definition, memo), derived: derive(definition, memo) }
  return { files, subject, show: (id: string, units: 'metric' | 'inch' = 'metric') => workingShown(subject, merged, id, units) }
}

/** Units as the examples write them, in SI. Read here by a road of its own. */
const UNITS: Readonly<Record<string, number>> = {
  ...{ mm: 1e-3, in: 0.0254, kg: 1, deg: Math.PI / 180, '%': 0.01, 'kg/m': 1, 'kg/m2': 1, 'kg/m3': 1, MPa: 1e6, kN: 1e3, '': 1 },
}

function numberAt(files: Files, { file, line, column }: FieldShown): number {
  const rest = files[file].split('\n')[line - 1].slice(column - 1)
  const found = /^(-?)(\d+(?:\.\d+)?)(?:\/(\d+))? ?([A-Za-z%]*(?:\/m[23]?)?)/.exec(rest)
  if (!found || !(found[4] in UNITS)) throw new Error(`${file}:${line}:${column} says no number: ${rest.slice(0, 30)}`)
  return (found[1] ? -1 : 1) * (Number(found[2]) / Number(found[3] ?? 1)) * UNITS[found[4]]
}

/** What is so many times what is written, and where alone it may be. */
const TIMES: readonly (readonly [RegExp, number])[] = [
  [/ lap$/, 0.5],
  [/ spreader$/, 0.5],
  [/ litres$/, 1e-3],
  [/ wheel y$/, 2],
  [/^ends skin thickness$/, -1],
]

function saysSo(files: Files, { field, value }: InputShown): boolean {
  if (!field) return true
  const written = numberAt(files, field)
  const times = [1, ...TIMES.filter(([where]) => where.test(field.says)).map(([, by]) => by)]
  return times.some((by) => Math.abs(written * by - value) <= 1e-9 * Math.max(1, Math.abs(value)))
}

function comesOut({ symbolic, inputs, value }: WorkingShown): boolean {
  if (symbolic === null || value === null) return true
  const given = Object.fromEntries(inputs.map((each) => [each.symbol, each.value]))
  const got = symbolic.startsWith('the sum of')
    ? inputs.reduce((sum, each) => sum + each.value, 0)
    : evaluate(parse(symbolic.replaceAll('×', '*')), given)
  return Math.abs(got - value) <= 1e-9 * Math.max(1, Math.abs(value))
}

for (const name of ['sedge-4', 'sedge-6', 'sedge-8']) {
  it(`opens every figure of ${name}, and every input down to the text`, () => {
    const { files, subject, show } = opened(name)
    const waiting = explainable(subject).map(({ id }) => id)
    const values = new Map<string, number>()
    const wrong: string[] = []
    const seen = new Set(waiting)
    let fields = 0
    for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
      const shown = show(id)
      if (shown.source === null || (shown.value !== null && shown.figure === null)) wrong.push(`${id} is not opened: ${shown.says}`)
      if (!comesOut(shown)) wrong.push(`${id}: ${shown.symbolic} does not come to ${shown.value}`)
      const before = values.get(id)
      if (before !== undefined && before !== shown.value) wrong.push(`${id} works to ${shown.value}, ${before} is what it is opened for`)
      for (const input of shown.inputs) {
        if (input.field) fields++
        if (!saysSo(files, input)) wrong.push(`${id}: ${input.symbol} is ${input.value}, not what ${input.field?.says} says`)
        // a stated mass is somewhere in the text, or it could not have been stated
        if (shown.what === 'Mass as stated in the definition' && !input.field) wrong.push(`${id} is stated nowhere`)
        if (input.from === UNNAMED) wrong.push(`${id}: nobody says where ${input.symbol} comes from`)
        if (input.working === null) {
          if (input.from === null && !id.startsWith('check.')) wrong.push(`${id}: ${input.symbol} leads nowhere`)
          continue
        }
        if (!seen.has(input.working)) {
          seen.add(input.working)
          values.set(input.working, input.value)
          waiting.push(input.working)
        }
      }
    }
    expect(wrong.slice(0, 20)).toEqual([])
    expect(fields).toBeGreaterThan(1000)
  })
}

describe('the load on the ball', () => {
  const { files, show } = opened('sedge-6')
  /** Opens the input that says so. */
  const into = (from: WorkingShown, symbol: RegExp): WorkingShown => {
    const input = from.inputs.find((each) => symbol.test(each.symbol))
    if (!input?.working) throw new Error(`${from.id} has no ${symbol} to open, but ${from.inputs.map((each) => each.symbol).join(', ')}`)
    return show(input.working)
  }

  it('is followed to a mass, and to its line', () => {
    const hitch = show('weight.case.D.hitch')
    expect(hitch).toMatchObject({ what: 'Load on the ball', symbol: 'T', symbolic: 'W × (1 - (x_c - b) / (x_a - b))', unit: 'kg' })
    const group = into(into(hitch, /^W$/), /^AP$/)
    expect(group.id).toBe('weight.group.AP')
    const fridge = into(group, /compressor fridge/)
    expect(fridge).toMatchObject({ id: 'weight.line.item-57', value: 36 })
    const [{ field }] = fridge.inputs
    expect(field).toMatchObject({ file: 'examples/sedge-6.masses.yaml', says: 'masses compressor fridge mass' })
    expect(files[field?.file ?? ''].split('\n')[(field?.line ?? 0) - 1]).toContain('item: compressor fridge, mass: 36 kg')
  })

  it('is followed to where a mass stands, through its centre and its moment', () => {
    const one = into(into(into(into(show('weight.case.D.hitch'), /^x_c$/), /^M$/), /^AP$/), /compressor fridge/)
    expect(one.symbolic).toBe('m × x')
    expect(one.inputs.find((each) => each.symbol === 'x')?.field?.says).toBe('masses compressor fridge station')
    expect(one.inputs.find((each) => each.symbol === 'm')?.working).toBe('weight.line.item-57')
  })

  it('leads to the axles, which the elevation knows', () => {
    const spindles = into(into(show('weight.case.D.hitch'), /^x_a$/), /^S$/)
    expect(spindles.inputs.map((each) => each.field?.thing)).toEqual(['axle-2', 'axle-1'])
  })

  it('is said in inches and pounds', () => {
    const shown = show('weight.case.D.hitch', 'inch')
    expect(shown.figure).toMatch(/ lb$/)
    expect(shown.inputs.find((each) => each.symbol === 'b')).toMatchObject({ figure: '34.646 in', value: 0.88 })
  })
})

describe('a check opened', () => {
  const { show } = opened('sedge-6')
  it('compares what is there with what is asked, and opens both', () => {
    const shown = show('check.weight.capacity')
    expect(shown.inputs.some((each) => each.working === 'weight.capacity')).toBe(true)
    const edge = show('check.edge.strake')
    expect(edge.symbolic).toBe('capacity / demand - 1')
    expect(edge.inputs.length).toBeGreaterThan(1)
  })
  it('says why there is none, and what is near', () => {
    expect(show('weight.case.D.hitsch')).toMatchObject({ symbolic: null, near: expect.arrayContaining(['weight.case.D.hitch']) })
  })
})
