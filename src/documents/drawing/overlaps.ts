/** The verifier of every sheet: no lettering lies on other lettering, and none runs off the paper. Used by tests on real sheets. */
import { boxOf } from './lettering.js'
import type { Mark, Page, TextMark } from './page.js'

type Box = readonly (readonly [number, number])[]

/** Boxes that only touch are not counted: this much may be shared, mm. */
const SKIN = 0.02

function separated(a: Box, b: Box): boolean {
  for (const box of [a, b]) {
    for (let i = 0; i < 2; i++) {
      const nx = box[i + 1][0] - box[i][0]
      const ny = box[i + 1][1] - box[i][1]
      const length = Math.hypot(nx, ny)
      if (length === 0) continue
      const span = (points: Box): [number, number] => {
        const along = points.map(([x, y]) => (x * nx + y * ny) / length)
        return [Math.min(...along), Math.max(...along)]
      }
      const [a0, a1] = span(a)
      const [b0, b1] = span(b)
      if (a1 <= b0 + SKIN || b1 <= a0 + SKIN) return true
    }
  }
  return false
}

/** True when two four-cornered boxes share more than an edge. */
const boxesOverlap = (a: Box, b: Box): boolean => !separated(a, b)

/** Every text of a page with its box; text seen through a window is moved to where it prints, and left out where the window's edge cuts it. */
export function textsOf(page: Page): readonly { readonly mark: TextMark; readonly box: Box }[] {
  const out: { mark: TextMark; box: Box }[] = []
  const walk = (marks: readonly Mark[], dx: number, dy: number, inside: (box: Box) => boolean): void => {
    for (const mark of marks) {
      if (mark.kind === 'window') {
        const { x, y, width, height } = mark
        const within = (box: Box): boolean =>
          box.every(([u, v]) => u >= x + dx && u <= x + dx + width && v >= y + dy && v <= y + dy + height)
        walk(mark.marks, dx + mark.shift[0], dy + mark.shift[1], (box) => within(box) && inside(box))
      } else if (mark.kind === 'text' && mark.text.trim() !== '') {
        const box = boxOf(mark).map(([x, y]) => [x + dx, y + dy] as const)
        if (inside(box)) out.push({ mark, box })
      }
    }
  }
  walk(page.marks, 0, 0, () => true)
  return out
}

/** Pairs of texts that overlap, as the words printed; an empty list is a good sheet. */
export function overlappingTexts(page: Page): readonly (readonly [string, string])[] {
  const texts = textsOf(page)
  const out: [string, string][] = []
  const bounds = texts.map(({ box }) => [Math.min(...box.map((p) => p[0])), Math.max(...box.map((p) => p[0]))] as const)
  const order = texts.map((_, i) => i).sort((i, j) => bounds[i][0] - bounds[j][0])
  for (let a = 0; a < order.length; a++) {
    for (let b = a + 1; b < order.length && bounds[order[b]][0] < bounds[order[a]][1]; b++) {
      const [first, second] = [texts[order[a]], texts[order[b]]]
      if (boxesOverlap(first.box, second.box)) out.push([first.mark.text, second.mark.text])
    }
  }
  return out
}

/** Texts that run over the edge of the paper, or within `margin` mm of it. */
export function textsOffPaper(page: Page, margin = 0): readonly string[] {
  return textsOf(page)
    .filter(({ box }) => box.some(([x, y]) => x < margin || y < margin || x > page.widthMm - margin || y > page.heightMm - margin))
    .map(({ mark }) => mark.text)
}

/** Texts that hide a hole: the middle of a hole lies inside their box. Windows are looked through where they stand. */
export function textsOverHoles(page: Page): readonly string[] {
  const holes: (readonly [number, number])[] = []
  const walk = (marks: readonly Mark[], dx: number, dy: number): void => {
    for (const mark of marks) {
      if (mark.kind === 'window') walk(mark.marks, dx + mark.shift[0], dy + mark.shift[1])
      else if (mark.kind === 'circles' && mark.group === 'holes')
        for (let i = 0; i < mark.xyd.length; i += 3) holes.push([mark.xyd[i] + dx, mark.xyd[i + 1] + dy])
    }
  }
  walk(page.marks, 0, 0)
  const speck = ([x, y]: readonly [number, number]): Box => [
    [x - 0.1, y - 0.1],
    [x + 0.1, y - 0.1],
    [x + 0.1, y + 0.1],
    [x - 0.1, y + 0.1],
  ]
  return textsOf(page)
    .filter(({ box }) => holes.some((hole) => !separated(box, speck(hole))))
    .map(({ mark }) => mark.text)
}
