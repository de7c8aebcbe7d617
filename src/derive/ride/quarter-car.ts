/**
 * A quarter of a vehicle on one wheel: a body on a spring and damper, a wheel on its tyre, following a road.
 * kg, N/m, N s/m, m/s. States: body height and speed, wheel height and speed.
 *
 * Does not cover: pitch and roll, the other wheels, stops, friction that sticks, a tyre that leaves the road.
 */
import type { Matrix } from '../../maths/linear/matrix.js'

export interface QuarterCar {
  /** body carried by the wheel */
  readonly body: number
  /** wheel, hub and what of the arm moves with it */
  readonly wheel: number
  readonly spring: number
  readonly damper: number
  readonly tyre: number
  /** share of a swing's energy that the spring itself loses, as rubber does: its rate is spring (1 + i loss) */
  readonly loss: number
}

/** x' = A x + B u for states body height, body speed, wheel height, wheel speed, and the road's height u. The spring's own loss is left out. */
export function stateSpace({ body, wheel, spring: k, damper: c, tyre }: QuarterCar): { readonly A: Matrix; readonly B: readonly number[] } {
  return {
    A: [
      [0, 1, 0, 0],
      [-k / body, -c / body, k / body, c / body],
      [0, 0, 0, 1],
      [k / wheel, c / wheel, -(k + tyre) / wheel, -c / wheel],
    ],
    B: [0, 0, 0, tyre / wheel],
  }
}

/** Squares of what is swung by a road of height one. */
interface Swings {
  readonly body: number
  readonly wheel: number
  /** of body against wheel */
  readonly apart: number
}

/** What a road that swings by one at w rad/s makes of body and wheel: by the thousand, so it stays with squares. */
export function swingsAt({ body, wheel, spring, damper, tyre, loss }: QuarterCar, w: number): Swings {
  // k = kr + i ki of spring and damper; the body's b = k - m w^2, the wheel's likewise on its tyre
  const kr = spring
  const ki = spring * loss + w * damper
  const br = kr - body * w * w
  const wr = kr + tyre - wheel * w * w
  // body b = k wheel; wheel's - k body = tyre: both are over N = wheel's b - k^2
  const nr = wr * br - ki * ki - (kr * kr - ki * ki)
  const ni = wr * ki + ki * br - 2 * kr * ki
  const share = (tyre * tyre) / (nr * nr + ni * ni)
  return { body: share * (kr * kr + ki * ki), wheel: share * (br * br + ki * ki), apart: share * (kr - br) * (kr - br) }
}

/** Body height over road height at a frequency in Hz. */
export const transmissibility = (car: QuarterCar, hz: number): number => Math.sqrt(swingsAt(car, 2 * Math.PI * hz).body)
/** Wheel height over road height at a frequency in Hz. */
export const wheelTransmissibility = (car: QuarterCar, hz: number): number => Math.sqrt(swingsAt(car, 2 * Math.PI * hz).wheel)

/** Difference of body and wheel speed for a road of height one swinging at w rad/s. */
export const relativeSpeed = (car: QuarterCar, w: number): number => w * Math.sqrt(swingsAt(car, w).apart)
