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

interface Answer {
  /** body height for a road of height one, complex */
  readonly body: readonly [number, number]
  readonly wheel: readonly [number, number]
}

/** Heights of body and wheel on a road that swings by one at w rad/s. */
export function answerTo({ body, wheel, spring, damper, tyre, loss }: QuarterCar, w: number): Answer {
  const [kr, ki] = [spring, spring * loss + w * damper]
  const [br, bi] = [kr - body * w * w, ki]
  const [wr, wi] = [kr + tyre - wheel * w * w, ki]
  // body br = k wheel; wheel wr - k body = tyre
  const [nr, ni] = [wr * br - wi * bi - (kr * kr - ki * ki), wr * bi + wi * br - 2 * kr * ki]
  const n2 = nr * nr + ni * ni
  const over = (x: number, y: number): readonly [number, number] => [(tyre * (x * nr + y * ni)) / n2, (tyre * (y * nr - x * ni)) / n2]
  return { body: over(kr, ki), wheel: over(br, bi) }
}

const size = ([re, im]: readonly [number, number]): number => Math.hypot(re, im)

/** Body height over road height at a frequency in Hz. */
export const transmissibility = (car: QuarterCar, hz: number): number => size(answerTo(car, 2 * Math.PI * hz).body)
/** Wheel height over road height at a frequency in Hz. */
export const wheelTransmissibility = (car: QuarterCar, hz: number): number => size(answerTo(car, 2 * Math.PI * hz).wheel)

/** Difference of body and wheel speed for a road of height one swinging at w rad/s. */
export function relativeSpeed(car: QuarterCar, w: number): number {
  const { body, wheel } = answerTo(car, w)
  return w * Math.hypot(body[0] - wheel[0], body[1] - wheel[1])
}
