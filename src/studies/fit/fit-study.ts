/**
 * Will the holes meet? Every joint of a design, and every sheet on its frames, tried with the shop's own process: the
 * chance that all fasteners go in, the holes to ream, the role each row should have, and what would help most.
 *
 * Figures for planning: the errors are the shop's own statement, each once a sheet or once a hole and independent. A crew
 * that pulls, drifts or lets a thin sheet bulge does better; forming, riveting strain and bent members are not in them.
 */
import type { FastenerType } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import { expectedOf } from './causes.js'
import { groupsOf } from './groups.js'
import { helpsOf } from './helps.js'
import { type FitModel, fitModels } from './model.js'
import type { Fit, FitRow, FitStudy } from './nouns.js'
import { type RowStanding, roleOf, TARGET } from './roles.js'
import { largestShank } from './shank.js'
import { type Trials, type Tried, trialsOf } from './trials.js'

export interface FitOptions {
  readonly trials: number
  readonly seed: number
  /** one joint only, with the sheets its rows belong to */
  readonly joint?: string
  readonly onProgress?: (done: number, total: number) => void
  /** asked now and then; the study ends without figures as soon as it is so */
  readonly cancelled?: () => boolean
}

/** Trials between two looks at progress. */
const CHUNK = 250
/** Share of the trials that each possible help is tried with. */
const HELP_SHARE = 0.2

type Studied = Pick<Design, 'definition' | 'parts' | 'rows' | 'joints'>

interface Made {
  readonly model: FitModel
  readonly tried: Tried
  readonly trials: Trials
  readonly expected: ReturnType<typeof expectedOf>
}

export function fitStudy(design: Studied, options: FitOptions): FitStudy {
  const { trials, seed } = options
  if (!(Number.isInteger(trials) && trials > 0)) throw new RangeError(`a study was asked for ${trials} trials`)
  if (!(Number.isInteger(seed) && seed >= 0)) throw new RangeError(`a study was asked for seed ${seed}`)
  const { process, fasteners } = design.definition
  const none = (notComputed: string): FitStudy =>
    Object.freeze({ trials, seed, target: TARGET, joints: [], sheets: [], groups: [], assumptions: [], notComputed })
  if (process === null)
    return none('The definition does not say how well the shop punches: write its process (punch sigma, drift, temperatures, jigs) first.')
  const models = chosen(fitModels(design), options.joint)
  if (models.joints.length === 0)
    return none(options.joint ? `There is no joint ${options.joint} with two layers or more.` : 'The design has no joint of two layers.')
  const typeOf = (id: string): FastenerType => {
    const type = fasteners.find((f) => f.id === id)
    if (!type) throw new Error(`a row is of fastener ${id}, which the definition does not have`)
    return type
  }
  const all = [...models.joints, ...models.sheets]
  const made = new Map<string, Made>()
  const report = progress(all, trials, options)
  for (const model of all) {
    const tried: Tried = { process, fasteners: model.rows.map((r) => typeOf(r.fastener)) }
    const run = trialsOf(model, tried, seed)
    for (let left = trials; left > 0; left -= CHUNK) {
      if (options.cancelled?.()) return none('The trials were stopped before they were done.')
      run.run(Math.min(CHUNK, left), true)
      report(model, Math.min(CHUNK, left))
    }
    made.set(model.id, { model, tried, trials: run, expected: expectedOf(model, process, tried.fasteners) })
  }
  const standings = rowStandings(models.sheets, made)
  const fits = (of: readonly FitModel[], also: Standings): readonly Fit[] =>
    of.map((model) => fitOf(made.get(model.id) as Made, seed, also)).sort((a, b) => b.reaming - a.reaming || (a.id < b.id ? -1 : 1))
  const byId = new Map(all.map((m) => [m.id, m]))
  const [joints, sheets] = [fits(models.joints, standings), fits(models.sheets, new Map())]
  const study: FitStudy = {
    trials,
    seed,
    target: TARGET,
    joints,
    sheets,
    groups: [...groupsOf(joints, byId), ...groupsOf(sheets, byId)],
    assumptions: assumptionsOf(design, all),
    notComputed: null,
  }
  return Object.freeze(study)
}

function chosen(models: ReturnType<typeof fitModels>, joint: string | undefined): ReturnType<typeof fitModels> {
  if (joint === undefined) return models
  const joints = models.joints.filter((m) => m.id === joint)
  const rows = new Set(joints.flatMap((m) => m.rows.map((r) => r.id)))
  return { joints, sheets: models.sheets.filter((m) => m.rows.some((r) => rows.has(r.id))) }
}

/** Counted in holes tried, so that a long joint is a long step. */
function progress(all: readonly FitModel[], trials: number, { onProgress }: FitOptions): (model: FitModel, done: number) => void {
  const total = all.reduce((sum, m) => sum + m.holes.length * trials, 0)
  let done = 0
  return (model, more) => {
    done += model.holes.length * more
    onProgress?.(done, total)
  }
}

type Standings = ReadonlyMap<string, readonly RowStanding[]>

/** How each row stands in the sheets it belongs to. */
function rowStandings(sheets: readonly FitModel[], made: ReadonlyMap<string, Made>): Standings {
  const out = new Map<string, RowStanding[]>()
  for (const sheet of sheets) {
    const one = made.get(sheet.id) as Made
    const { causes } = one.expected
    sheet.rows.forEach((row, r) => {
      const standing = { ...standingOf(one, r), causes, as: sheet.says }
      out.set(row.id, [...(out.get(row.id) ?? []), standing])
    })
  }
  return out
}

function standingOf({ model, trials: { tally } }: Made, r: number): Omit<RowStanding, 'causes' | 'as'> {
  return {
    count: model.holes.reduce((n, h) => n + (h.row === r ? 1 : 0), 0),
    chance: tally.rowFits[r] / tally.trials,
    reaming: tally.rowReamed[r] / tally.trials,
    pilots: tally.rowPilots[r] / tally.trials,
  }
}

function fitOf(one: Made, seed: number, standings: Standings): Fit {
  const { model, tried, trials } = one
  const { tally } = trials
  const { causes, noFit } = one.expected
  const clearance = (r: number): number => tried.fasteners[r].hole - largestShank(tried.fasteners[r])
  const rows = model.rows.flatMap((row, r): readonly FitRow[] => {
    const own: RowStanding = { ...standingOf(one, r), causes, as: null }
    if (own.count === 0) return []
    const formed = model.holes.some((h) => h.row === r && h.layers.some((p) => model.parts[p].formed))
    const role = roleOf([own, ...(standings.get(row.id) ?? [])], tried.fasteners[r], clearance(r), formed)
    return [{ row: row.id, fastener: row.fastener, count: own.count, ...role }]
  })
  return {
    id: model.id,
    says: model.says,
    bodies: model.bodies.map((b) => model.parts[b].id),
    fasteners: model.holes.length,
    layers: Math.max(...model.holes.map((h) => h.layers.length)),
    clearance: Math.min(...model.rows.map((_, r) => clearance(r))),
    noFit: round(noFit),
    leastSquares: tally.leastSquares / tally.trials,
    minimax: tally.minimax / tally.trials,
    reaming: tally.reamed / tally.trials,
    pilots: tally.pilots / tally.trials,
    causes: causes.map(({ cause, size }) => ({ cause, size: round(size) })),
    helps: helpsOf(model, tried, seed, Math.max(1, Math.round(tally.trials * HELP_SHARE)), tally),
    rows,
  }
}

/** So that another engine's last bit of an exp changes no byte. */
const round = (v: number): number => Math.round(v * 1e9) / 1e9

function assumptionsOf({ definition }: Studied, models: readonly FitModel[]): readonly string[] {
  const used = new Set(models.flatMap((m) => m.rows.map((r) => r.fastener)))
  const unsaid = definition.fasteners.filter((f) => used.has(f.id) && f.shank === null).map((f) => f.id)
  const formed = models.some((m) => m.parts.some((p) => p.formed))
  return [
    'A stated plus or minus is taken as three sigma; temperatures are spread evenly over their range.',
    'A sheet is laid where the holes of the members under it are, a loose member where the sheets’ holes are; the jig was set at 20 C.',
    ...(unsaid.length > 0 ? [`Nobody has said how thick the shanks of ${unsaid.join(', ')} are: their nominal size is taken.`] : []),
    ...(formed ? ['How far forming moves the holes of an end panel is not known and not in the figures.'] : []),
  ]
}
