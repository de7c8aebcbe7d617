/** Square dots of one colour set into the pixels of a picture, each pixel as dark as the share of it that is covered. */

/** Where a place of the drawing lies in pixels of the picture: right and down. */
export interface Onto {
  readonly x0: number
  readonly y0: number
  readonly perX: number
  readonly perY: number
}

/**
 * `pixels` are red, green, blue and coverage, a byte each from the lowest up; `places` x and y in turn, m; `side` of a dot in pixels.
 * Five thousand, with the picture's way to the canvas, took 1.3 ms where as many rectangles asked of the canvas took 4.2.
 */
export function setDots(
  pixels: Uint32Array,
  { width, height }: { readonly width: number; readonly height: number },
  places: Float32Array,
  { x0, y0, perX, perY }: Onto,
  side: number,
  colour: number,
): void {
  for (let i = 0; i < places.length; i += 2) {
    const left = x0 + perX * places[i] - side / 2
    const top = y0 + perY * places[i + 1] - side / 2
    const [right, foot] = [left + side, top + side]
    const [c0, c1] = [Math.max(0, Math.floor(left)), Math.min(width, Math.ceil(right))]
    const [r0, r1] = [Math.max(0, Math.floor(top)), Math.min(height, Math.ceil(foot))]
    for (let r = r0; r < r1; r++) {
      const tall = Math.min(r + 1, foot) - Math.max(r, top)
      for (let c = c0; c < c1; c++) {
        const share = tall * (Math.min(c + 1, right) - Math.max(c, left))
        const before = pixels[r * width + c] >>> 24
        // a dot over another covers what the other left
        pixels[r * width + c] = (Math.round(before + (255 - before) * share) << 24) | colour
      }
    }
  }
}

/** `#rrggbb`, as a canvas gives back any colour without transparency, with its bytes in the order of pixels. */
export function colourOf(hex: string): number {
  const all = Number.parseInt(hex.slice(1), 16)
  return ((all & 0xff) << 16) | (all & 0xff00) | (all >>> 16)
}
