/** Where a function is nought between two places at which its signs differ: false position that closes in from both sides. */

export interface End {
  readonly x: number
  readonly f: number
}

/** How near is near enough: by the way there is left, and by what the function comes to. */
export interface Near {
  readonly x: number
  readonly f: number
}

/** Steps after which the place found serves: a smooth function needs some eight. */
const MOST = 200
/** Every so many steps the bracket is halved, whatever the function does: at a jump false position would creep. */
const HALVED = 4

/** The place, never outside the bracket; a function may be endless on one side. Where both ends have one sign, nothing is promised. */
export function rootBetween(f: (x: number) => number, from: End, to: End, near: Near): number {
  let [a, fa, b, fb] = [from.x, from.f, to.x, to.f]
  if (fa === 0) return a
  if (fb === 0) return b
  let side = 0
  let x = b
  for (let i = 0; i < MOST && Math.abs(b - a) > near.x; i++) {
    const isHalved = i % HALVED === HALVED - 1 || !Number.isFinite(fb - fa)
    x = isHalved ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa)
    const value = f(x)
    if (Math.abs(value) <= near.f) return x
    // the stale end's weight is halved, so that it comes in too
    if (value > 0 === fb > 0) {
      ;[b, fb] = [x, value]
      if (side === 1) fa /= 2
      side = 1
    } else {
      ;[a, fa] = [x, value]
      if (side === -1) fb /= 2
      side = -1
    }
  }
  return x
}
