import { describe, expect, it } from 'vitest'
import { count } from '../../../tests/counts.js'
import { readExample } from '../../../tests/examples.js'
import type { Definition, FastenerType, ProcessDefinition } from '../../definition/types.js'
import { derive } from '../../derive/index.js'
import type { FastenerRow } from '../../derive/nouns.js'
import { generator } from '../../maths/chance/generator.js'
import { chanceWithin, expectedOf } from './causes.js'
import { drawing } from './draw.js'
import { carriesOf, depthOf, entriesOf, partErrors } from './errors.js'
import { fitStudy } from './fit-study.js'
import { type FitModel, type FitPart, fitModels } from './model.js'
import { squaresOf } from './squares.js'
import { trialsOf } from './trials.js'

const STILL: ProcessDefinition = {
  punchSigma: 0,
  drift: 0,
  sheetTempC: [20, 20],
  jigTempC: [20, 20],
  thickness: 0,
  endJigSigma: 0,
  sideJigSigma: 0,
}
const RIVET: FastenerType = {
  id: 'S4',
  kind: 'solid',
  diameter: { name: '1/8 in', value: 0.003175 },
  head: 'universal',
  alloy: '2117-T4',
  hole: 0.0033,
  pilot: 0.0025,
  shank: [0.00317, 0.00325],
}
const sheet = (id: string): FitPart => ({ id, held: 'sheet', cte: 23.76e-6, along: 'x', formed: false })
const frame = (id: string): FitPart => ({ id, held: 'side jig', cte: 23.76e-6, along: 'y', formed: false })

/** A row of K holes 25.4 mm apart along x through two sheets. */
function row(K: number, turn = 0): FitModel {
  const holes = Array.from({ length: K }, (_, i) => ({ x: 0.0254 * i, y: 0, turn: turn * i, row: 0, layers: [0, 1] }))
  const rows = [{ id: 'row', says: 'row', kind: 'seam', fastener: 'S4' } as unknown as FastenerRow]
  return { id: 'made-up', says: 'a row', rows, parts: [sheet('upper'), sheet('lower')], holes, bodies: [0] }
}
const clearance = (c: number): FastenerType => ({ ...RIVET, hole: 0.003 + c, shank: [0.003, 0.003], pilot: 0.001 })
const sedge = readExample('sedge-6')
const models = fitModels(derive(sedge))
const shop = sedge.process as ProcessDefinition
const modelOf = (id: string): FitModel => {
  const found = [...models.joints, ...models.sheets].find((m) => m.id === id)
  if (!found) throw new Error(`no joint ${id}`)
  return found
}

describe('the chance that one hole meets, closed form', () => {
  it('is Rayleigh’s where both axes are alike: c = 2 sigma sqrt(-ln(1 - p^(1/K))) gives p for K pairs', () => {
    for (const [K, c] of [
      [1, 3.4616],
      [10, 4.5936],
      [50, 5.247],
      [100, 5.5048],
      [200, 5.751],
    ])
      expect(chanceWithin(c, 2, 2) ** K).toBeCloseTo(0.95, 4)
  })
  it('is the same from the integral as from the formula, and tends to the normal curve where one axis has none', () => {
    expect(chanceWithin(1.3, 1, 1 + 1e-9)).toBeCloseTo(chanceWithin(1.3, 1, 1), 8)
    // 95 % of a normal curve lies within 1.959964 sigma (printed tables)
    expect(chanceWithin(1.959964, 1, 0)).toBeCloseTo(0.95, 6)
    expect(chanceWithin(2, 1, 3)).toBeCloseTo(chanceWithin(2, 3, 1), 14)
  })
  it('is nothing without clearance, and certain without error', () => {
    expect(chanceWithin(0, 1, 1)).toBe(0)
    expect(chanceWithin(-1e-5, 0, 0)).toBe(0)
    expect(chanceWithin(1e-5, 0, 0)).toBe(1)
  })
})

describe('trials against closed forms', () => {
  it('nothing moved, punching alone: within 1 % of the product', () => {
    const K = 20
    const model = row(K)
    const process = { ...STILL, punchSigma: 5e-5 }
    const c = 2.2e-4
    const drawn = drawing(model, process)
    const state = generator(4, 'no fit')
    const n = count(20_000)
    let fits = 0
    for (let i = 0; i < n; i++) {
      drawn.next(state)
      let all = true
      for (let k = 0; k < K && all; k++) {
        const [dx, dy] = [0, 1].map((axis) => drawn.centres[4 * k + axis] - drawn.centres[4 * k + 2 + axis])
        all = dx * dx + dy * dy <= c * c
      }
      if (all) fits++
    }
    const { noFit } = expectedOf(model, process, [clearance(c)])
    expect(noFit).toBeCloseTo((1 - Math.exp(-((c / 1e-4) ** 2))) ** K, 12)
    expect(Math.abs(fits / n - noFit)).toBeLessThan(0.01)
  })
  it('every error at once: each pair’s mean square is what the causes say, hole by hole, five standard errors', () => {
    for (const id of ['joint-seam-1-left', 'hoop-F3', 'sheet-strake-side-left', 'joint-lining-F3', 'joint-nose-cap']) {
      const model = modelOf(id)
      const entries = entriesOf(model)
      const drawn = drawing(model, shop)
      const state = generator(9, id)
      const n = count(3000)
      const at = entries.findIndex((e) => e.hole === Math.floor(model.holes.length * 0.9))
      const seen: number[] = []
      for (let i = 0; i < n; i++) {
        drawn.next(state)
        const [dx, dy] = [0, 1].map((axis) => drawn.centres[2 * at + axis] - drawn.centres[2 * at + 2 + axis])
        seen.push(dx ** 2 + dy ** 2)
      }
      const ground = { errors: partErrors(model, shop), carries: carriesOf(model), process: shop }
      const square = Object.values(squaresOf(entries[at], entries[at + 1], ground)).reduce((sum, [x, y]) => sum + x + y, 0)
      const mean = seen.reduce((a, b) => a + b) / n
      const scatter = Math.sqrt(seen.reduce((sum, v) => sum + (v - mean) ** 2, 0) / n / n)
      expect(Math.abs(mean - square), id).toBeLessThan(5 * scatter)
    }
  })
  it('least squares takes out what a sheet shares, and keeps what it does not', () => {
    // assembled 10 K warmer, one sheet has grown and the other has not: the end holes are out by the growth of half the length
    const model: FitModel = { ...row(41), parts: [sheet('upper'), { ...sheet('lower'), cte: 0 }] }
    const half = 20 * 0.0254
    const out = (dT: number): number => 23.76e-6 * dT * half
    const fits = (dT: number, c: number): number => {
      const run = trialsOf(model, { process: { ...STILL, jigTempC: [20 + dT, 20 + dT] }, fasteners: [clearance(c)] }, 1)
      run.run(10, true)
      return run.tally.leastSquares / 10
    }
    expect(fits(10, out(10) * 1.001)).toBe(1)
    expect(fits(10, out(10) * 0.999)).toBe(0)
  })
  it('the same seed gives the same figures, another seed others, and one joint does not depend on the rest', () => {
    const run = (seed: number): unknown => {
      const trials = trialsOf(modelOf('joint-toe-left'), { process: shop, fasteners: [RIVET] }, seed)
      trials.run(40, true)
      return trials.tally
    }
    expect(run(1)).toEqual(run(1))
    expect(run(1)).not.toEqual(run(2))
  })
})

describe('the errors of a layer', () => {
  it('a sheet thicker by t lies t / 2 farther out, and t more for each sheet thicker under it: theta (t1 + t2) / 2 on a quarter turn', () => {
    const t = 0.001016
    const difference = depthOf([t, t], 0, [1]) - depthOf([t, t], 1, [])
    expect((Math.PI / 2) * difference).toBeCloseTo(0.0015959, 7)
  })
  it('a sheet goes where its frame went, so one frame out of place costs nothing, and of two only their difference', () => {
    const place = (frames: number): FitModel => ({
      ...row(1),
      parts: [sheet('skin'), ...Array.from({ length: frames }, (_, f) => frame(`frame-${f}`))],
      holes: Array.from({ length: frames * 10 }, (_, i) => ({
        x: i % frames,
        y: 0.1 * Math.floor(i / frames),
        turn: 0,
        row: 0,
        layers: [0, 1 + (i % frames)],
      })),
    })
    const process = { ...STILL, sideJigSigma: 0.0002 }
    const run = (frames: number): number => {
      const trials = trialsOf(place(frames), { process, fasteners: [clearance(0.0001)] }, 1)
      trials.run(200, false)
      return trials.tally.leastSquares / 200
    }
    expect(run(1)).toBe(1)
    expect(run(3)).toBeLessThan(0.2)
  })
})

describe('the study', () => {
  const options = { trials: 100, seed: 1, joint: 'joint-rim-AC1' }
  const withProcess = (change: Partial<ProcessDefinition>, fastener: Partial<FastenerType> = {}): Definition => ({
    ...sedge,
    process: { ...shop, ...change },
    fasteners: sedge.fasteners.map((f) => ({ ...f, ...fastener })),
  })
  const study = (definition: Definition, more: Partial<Parameters<typeof fitStudy>[1]> = {}) =>
    fitStudy(derive(definition), { ...options, ...more })

  it('orders the placements: nothing moved is no better than centred, centred no better than the best', () => {
    const { joints } = study(withProcess({ punchSigma: 1.15e-5, sheetTempC: [20, 21], jigTempC: [20, 21] }), { trials: 400 })
    const [{ noFit, leastSquares, minimax }] = joints
    expect(leastSquares).toBeGreaterThan(0.02)
    expect(leastSquares).toBeLessThan(0.98)
    expect(noFit).toBeLessThanOrEqual(leastSquares)
    expect(minimax).toBeGreaterThanOrEqual(leastSquares)
  })
  it('punches full size what meets, pilots what drills out, and drills in place what does neither', () => {
    const role = (definition: Definition): readonly string[] => [...new Set(study(definition).joints[0].rows.map((r) => r.role))]
    const exact = { punchSigma: 1e-6, sheetTempC: [20, 20], jigTempC: [20, 20], sideJigSigma: 1e-6, drift: 0, thickness: 0 } as const
    expect(role(withProcess(exact))).toEqual(['full'])
    expect(role(sedge)).toEqual(['pilot'])
    expect(role(withProcess({ punchSigma: 0.0003 }))).toEqual(['drill'])
  })
  it('judges a row by the whole sheets it belongs to as well: frames out of place do not show in one joint', () => {
    const process = { ...STILL, punchSigma: 1e-6, sideJigSigma: 0.002 }
    const { joints, sheets } = study(withProcess(process), { joint: 'joint-lining-F2', trials: 40 })
    expect(joints[0].leastSquares).toBe(1)
    expect(sheets.length).toBeGreaterThan(2)
    expect(joints[0].rows[0].role).toBe('drill')
    expect(joints[0].rows[0].reason).toMatch(/the setting of the jig puts the worst hole .* on its 3 frames/)
  })
  it('says why in a sentence that names the governing error and the clearance', () => {
    const [row] = study(sedge).joints[0].rows
    expect(row.reason).toMatch(/^Not full size: .* because .* puts the worst hole [\d.]+ mm out.*, against a clearance of 0\.05 mm\. /)
  })
  it('finds that one temperature helps most where warmth is all that is wrong', () => {
    const { joints } = study(withProcess({ punchSigma: 1e-6, drift: 0, thickness: 0 }), { joint: 'joint-seam-1-left' })
    expect(joints[0].causes[0].cause).toBe('warmth')
    const [best] = joints[0].helps.filter((h) => h.what !== 'pilot')
    expect(best).toMatchObject({ what: 'temperature', chance: 1, reaming: 0 })
  })
  it('gives a joint the same figures alone and among all the others', () => {
    const design = derive(sedge)
    const whole = fitStudy(design, { trials: 2, seed: 5 })
    const alone = fitStudy(design, { trials: 2, seed: 5, joint: 'joint-rim-D1' })
    expect(alone.joints).toEqual([whole.joints.find((j) => j.id === 'joint-rim-D1')])
    expect(whole.joints.length).toBe(design.joints.length)
    expect(whole.groups.reduce((n, g) => n + g.fits.length, 0)).toBe(whole.joints.length + whole.sheets.length)
    expect(whole.joints.every((j, i) => i === 0 || j.reaming <= whole.joints[i - 1].reaming)).toBe(true)
  })
  it('counts on from start to end, stops when told, and says what it lacks', () => {
    const seen: number[] = []
    study(sedge, { trials: 600, onProgress: (done, total) => void seen.push(done / total) })
    expect(seen.at(-1)).toBe(1)
    expect(seen.every((v, i) => i === 0 || v > seen[i - 1])).toBe(true)
    expect(study(sedge, { cancelled: () => true }).notComputed).toMatch(/stopped/)
    expect(study({ ...sedge, process: null }).notComputed).toMatch(/how well the shop punches/)
    expect(study(sedge, { joint: 'no-such' }).notComputed).toMatch(/no joint no-such/)
    expect(study(withProcess({}, { shank: null })).assumptions.join(' ')).toMatch(/Nobody has said how thick the shanks of S4 are/)
    expect(() => study(sedge, { trials: 0 })).toThrow('0 trials')
  })
})
