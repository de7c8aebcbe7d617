/** Medians and what is said about them. */
import { Bench as Bencher } from 'tinybench'
import { referenceLoop } from './reference.js'

/** What is run over and over once the ground is laid. `before` is not timed. */
export interface Sample {
  readonly before?: () => void
  /** for a bench in MB: gives the figure itself */
  readonly run: () => unknown
}

export interface Bench {
  readonly id: string
  readonly says: string
  readonly unit: 'ms' | 'MB'
  readonly budget: number
  readonly samples: number
  /** runs that are thrown away first, so that the engine has compiled what it will compile */
  readonly warmups: number
  readonly setup: () => Sample
}

export interface Figure {
  readonly id: string
  readonly says: string
  readonly unit: 'ms' | 'MB'
  readonly budget: number
  readonly median: number
  /** median over the reference loop's, taken just before; null where it is no time */
  readonly ratio: number | null
}

/** Machines differ, and a busy one by a factor of two: only three times the budget is a failure. */
const SLACK = 3
/** ms: what takes so long is measured once where few samples do */
const LONG = 1000

export const fails = (figure: Pick<Figure, 'median' | 'budget'>): boolean => !(figure.median <= SLACK * figure.budget)

export function verdict(figure: Pick<Figure, 'median' | 'budget'>): string {
  if (fails(figure)) return `FAIL, over ${SLACK} times the budget`
  return figure.median <= figure.budget ? 'within the budget' : 'over the budget'
}

/** `few` for a run that only asks whether something is three times over: a fresh process is then started once. */
export function measure(bench: Bench, few = false): Figure {
  const { id, says, unit, budget } = bench
  const isLong = few && unit === 'ms' && budget >= LONG
  const [samples, warmups] = isLong ? [1, 0] : [bench.samples, bench.warmups]
  const sample = bench.setup()
  if (unit === 'MB') return { id, says, unit, budget, median: peak(id, sample, samples), ratio: null }
  const reference = median('reference', { run: referenceLoop }, 5, 1)
  const taken = median(id, sample, samples, warmups)
  return { id, says, unit, budget, median: taken, ratio: taken / reference }
}

/** Median time in ms. */
function median(id: string, sample: Sample, samples: number, warmups: number): number {
  const bencher = new Bencher({ iterations: samples, time: 0, warmup: warmups > 0, warmupIterations: warmups, warmupTime: 0, throws: true })
  bencher.add(id, sample.run, { async: false, ...(sample.before ? { beforeEach: sample.before } : {}) })
  const [task] = bencher.runSync()
  if (task?.result.state !== 'completed') throw new Error(`The bench ${id} did not complete: ${task?.result.state}`)
  return task.result.latency.p50
}

function peak(id: string, sample: Sample, samples: number): number {
  const figures = Array.from({ length: samples }, () => {
    sample.before?.()
    return Number(sample.run())
  })
  const most = Math.max(...figures)
  if (!(most > 0)) throw new Error(`The bench ${id} gave no figure: ${figures}`)
  return most
}

/** One line: what was measured, the figure, its budget, and how many reference loops it is. */
export function sentence(figure: Figure): string {
  const { says, unit, budget, median: taken, ratio } = figure
  const loops = ratio === null ? '' : `, ${ratio.toPrecision(3)} reference loops`
  return `${says}: ${taken.toPrecision(3)} ${unit} of ${budget} ${unit}${loops}; ${verdict(figure)}`
}
