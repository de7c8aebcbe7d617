/** Shaking of a quarter car on a road of waviness 2: rms acceleration of body and wheel, plain and as a person feels it. m/s2. */
import { type QuarterCar, swingsAt } from './quarter-car.js'
import { weighting } from './weighting.js'

export interface Shaking {
  readonly body: number
  /** weighted with Wk: what a person seated on the floor feels */
  readonly felt: number
  readonly wheel: number
}

/** The band ISO 2631-1 asks for comfort, Hz. */
const [LOW, HIGH, MANY] = [0.5, 80, 360]
const RATIO = Math.log(HIGH / LOW) / MANY
/** Frequencies evenly apart in the logarithm, with their weights: alike for every car. */
const LINES = Array.from({ length: MANY }, (_, i) => {
  const hz = LOW * Math.exp((i + 0.5) * RATIO)
  return { w: 2 * Math.PI * hz, width: hz * RATIO, wk2: weighting('Wk', hz) ** 2 }
})

/** `density`: one-sided, of the road's vertical speed under the wheel, m2/s2 a Hz. Between 0.5 and 80 Hz. */
export function shakingOn(car: QuarterCar, density: number): Shaking {
  let [body, felt, wheel] = [0, 0, 0]
  for (const { w, width, wk2 } of LINES) {
    const swings = swingsAt(car, w)
    // acceleration for a road speed of one: height w^2 for a height of 1/w
    const power = w * w * density * width
    const b = swings.body * power
    body += b
    felt += b * wk2
    wheel += swings.wheel * power
  }
  return { body: Math.sqrt(body), felt: Math.sqrt(felt), wheel: Math.sqrt(wheel) }
}
