/** Will the holes meet: closed forms and figures worked out apart from the program, against its own trials and placements. */
import { generator } from '../src/maths/chance/generator.js'
import { fillNormals } from '../src/maths/chance/normal.js'
import { discs, shortfall } from '../src/maths/placement/common-disc.js'
import { leastSquares } from '../src/maths/placement/least-squares.js'
import { type Meeting, meeting, type Placement, STAY } from '../src/maths/placement/meeting.js'
import { minimax } from '../src/maths/placement/minimax.js'
import { chanceWithin } from '../src/studies/fit/causes.js'
import { depthOf, growth, jigGrowth, REFERENCE_C } from '../src/studies/fit/errors.js'
import type { ValidationCase, ValidationFile } from './case.js'
import { alloy, inch } from './case.js'

const SCHOLZ = 'Scholz, M&CT-TECH-99-025'
const SIGMA = 0.05
const TRIALS = 20_000

/** A row of K pairs of holes, 25.4 mm apart, every hole of both sheets struck for itself. */
function punched(K: number, centred: boolean): readonly number[] {
  const row = meeting(
    Array.from({ length: K }, (_, i) => [25.4 * i, 0] as const),
    new Array<number>(K).fill(0),
    Array.from({ length: K }, () => [0]),
  )
  const state = generator(1, `row of ${K}`)
  const drawn = new Float64Array(4 * K)
  return Array.from({ length: TRIALS }, () => {
    fillNormals(state, drawn, 4 * K)
    for (let i = 0; i < K; i++) {
      row.bodyX[i] = SIGMA * drawn[4 * i]
      row.bodyY[i] = SIGMA * drawn[4 * i + 1]
      row.otherX[i] = SIGMA * drawn[4 * i + 2]
      row.otherY[i] = SIGMA * drawn[4 * i + 3]
    }
    const placed = leastSquares(row)
    return worst(row, centred ? placed : STAY)
  })
}

function worst({ holes, x, y, missX, missY }: Meeting, { shiftX, shiftY, turn }: Placement): number {
  let most = 0
  for (let i = 0; i < holes; i++) most = Math.max(most, Math.hypot(missX[i] - shiftX + turn * y[i], missY[i] - shiftY - turn * x[i]))
  return most
}

/** Clearance with which all meet in this share of the trials, mm. */
function clearanceFor(share: number, K: number, centred: boolean): number {
  const sorted = [...punched(K, centred)].sort((a, b) => a - b)
  return sorted[Math.floor(share * sorted.length)]
}

const one = (
  id: string,
  says: string,
  source: string,
  at: string,
  expected: number,
  tolerance: number,
  unit: string,
  ours: () => number,
): ValidationCase => ({ id: `fit-${id}`, case: says, source, at, status: 'D', expected, tolerance, ours, unit })

const CLOSED = 'independent pairs, closed form by hand'
const trials: readonly ValidationCase[] = [
  ...([10, 100] as const).map((K) =>
    one(
      `chance-${K}`,
      `chance that ${K} pairs all meet with the clearance of 95 %`,
      SCHOLZ,
      CLOSED,
      0.95,
      1e-4,
      '',
      () => chanceWithin(K === 10 ? 4.5936 : 5.5048, 2, 2) ** K,
    ),
  ),
  one('none-10', 'clearance for 10 pairs at 95 %, sigma 0.05 mm, nothing moved, by trial', SCHOLZ, CLOSED, 0.2297, 0.0023, 'mm', () =>
    clearanceFor(0.95, 10, false),
  ),
  one('none-100', 'clearance for 100 pairs at 95 %, sigma 0.05 mm, nothing moved, by trial', SCHOLZ, CLOSED, 0.2752, 0.0028, 'mm', () =>
    clearanceFor(0.95, 100, false),
  ),
  one(
    'squares-10',
    'the same for a row of 10, the sheet centred by least squares',
    SCHOLZ,
    'the same model by trials of another program',
    0.2128,
    0.02 * 0.2128,
    'mm',
    () => clearanceFor(0.95, 10, true),
  ),
  one(
    'squares-100',
    'the same for a row of 100, the sheet centred by least squares',
    SCHOLZ,
    'the same model by trials of another program',
    0.2733,
    0.02 * 0.2733,
    'mm',
    () => clearanceFor(0.95, 100, true),
  ),
]

const WARMTH = 'Aluminum Association table; Callister'
const against = (
  [
    ['6061-T6', 0.057],
    ['clad 2024-T3', 0.0553],
    ['5052-H34', 0.0579],
  ] as const
).map(([name, expected]) =>
  one(
    `warmth-${name}`,
    `holes 240 in apart in ${name} against a steel jig, 36 F warmer`,
    WARMTH,
    'expansion 68 to 212 F; A36 steel 6.5e-6 per F; worked by hand',
    expected,
    1e-4,
    'in',
    () => ((growth(alloy(name).cte.value, REFERENCE_C + 20, REFERENCE_C) - jigGrowth(REFERENCE_C + 20)) * 240 * inch) / inch,
  ),
)

/** Discs of no size at these places, the first a body's. */
function circleRound(places: readonly (readonly [number, number])[]): number {
  const laid = discs(places.length)
  laid.n = places.length
  places.forEach(([x, y], i) => {
    laid.x[i] = x
    laid.y[i] = y
  })
  return shortfall(laid)
}

/** A row of holes from -1 to 1 whose body has stretched by 0.1 a unit. */
function stretched(): Meeting {
  const at = [-1, -0.9, -0.8, 1]
  const row = meeting(
    at.map((x) => [x, 0] as const),
    at.map(() => 0),
    at.map(() => [0]),
  )
  at.forEach((x, i) => {
    row.bodyX[i] = 0.1 * x
  })
  return row
}

const SOURCE = 'closed form'
const placed: readonly ValidationCase[] = [
  one('circle-even', 'radius round three holes in an even triangle of side 1', SOURCE, '1 / sqrt(3)', 1 / Math.sqrt(3), 1e-12, '', () =>
    circleRound([
      [0, 0],
      [1, 0],
      [0.5, Math.sqrt(3) / 2],
    ]),
  ),
  one('circle-right', 'radius round three holes in a right triangle 3, 4, 5', SOURCE, 'half the longest side', 2.5, 1e-12, '', () =>
    circleRound([
      [0, 0],
      [3, 0],
      [0, 4],
    ]),
  ),
  one(
    'stretch-best',
    'worst miss of a row stretched by 0.1 from -1 to 1, at the best placement',
    SOURCE,
    'half the stretch',
    0.1,
    1e-9,
    '',
    () => {
      const row = stretched()
      return 2 * minimax(row, leastSquares(row), 1e-10).largest
    },
  ),
  one(
    'stretch-squares',
    'the same centred by least squares, holes at -1, -0.9, -0.8 and 1',
    SOURCE,
    'the far hole from the mean of all: 0.1 (1 + 1.7 / 4)',
    0.1425,
    1e-9,
    '',
    () => {
      const row = stretched()
      return worst(row, leastSquares(row))
    },
  ),
  one(
    'lap',
    'girth the outer of two sheets lacks round 90 degrees, both 1.016 mm thicker than drawn',
    SOURCE,
    'theta (t1 + t2) / 2',
    1.5959,
    1e-4,
    'mm',
    () => (Math.PI / 2) * (depthOf([1.016, 1.016], 0, [1]) - depthOf([1.016, 1.016], 1, [])),
  ),
]

export const holeFit: ValidationFile = {
  bibliography:
    'F. W. Scholz, Hole Alignment Tolerance Stacking Issues, Boeing M&CT-TECH-99-025, 1999: the model, its figures worked again. Smallest circles and placements by hand.',
  cases: [...trials, ...against, ...placed],
}
