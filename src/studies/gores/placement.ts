/**
 * Where the seam ribs stand so that every gore, bent over its ribs, lies equally far inside the lofted surface. Gores are laid
 * from the joint toward the centre line, each as wide as the distance allows; for a count of gores the distance is found that
 * brings the middle one out even.
 */
import type { Ground } from '../../derive/ends/ground.js'
import { insideOf, panelBetween } from './panel.js'

export interface Placement {
  readonly gores: number
  /** azimuths of the seam ribs of one side, ascending from the centre line; 0 is a seam on it. rad */
  readonly seams: readonly number[]
  /** largest distance inside the loft, m, alike in every gore */
  readonly inside: number
}

/** More gores than this nobody rivets. */
const MOST = 60
/** Azimuths are found to this, rad: a few hundredths of a millimetre on a coach. */
const FINE = 3e-5
/** Distances are found to this share of themselves. */
const EVEN = 2e-4

/** How far inside the loft the gore between two azimuths lies, m; without end where it cannot be bent at all. */
export type InsideBetween = (right: number, left: number) => number

export function insideBetween(ground: Ground): InsideBetween {
  const known = new Map<string, number>()
  return (right, left) => {
    const key = `${right} ${left}`
    const before = known.get(key)
    if (before !== undefined) return before
    const found = insideOf(ground, panelBetween(ground, right, left))?.depth ?? Number.POSITIVE_INFINITY
    known.set(key, found)
    return found
  }
}

/** The widest gore from an edge toward the centre line that stays within the distance: its width, rad. */
function widest(inside: InsideBetween, right: number, within: number, guess: number): number {
  let width = Math.min(guess, right + Math.PI / 2 - FINE)
  let [low, high] = [0, right + Math.PI / 2]
  for (let i = 0; i < 30; i++) {
    const depth = inside(right, right - width)
    if (depth > within) high = width
    else low = width
    // the distance goes by the square of the width, so each try scales the width by the root of what is wanted
    const scaled = Number.isFinite(depth) && depth > 0 ? width * Math.sqrt(within / depth) : width / 2
    if (Math.abs(scaled - width) < FINE || high - low < FINE) return Math.min(scaled, high)
    width = scaled > low && scaled < high ? scaled : (low + high) / 2
  }
  return low
}

/** Seams from the joint inward, all at the distance, until the next would stand on or past the centre line. `guess` remembers widths. */
function march(inside: InsideBetween, within: number, most: number, guess: number[]): number[] {
  const seams: number[] = []
  let edge = Math.PI / 2
  while (seams.length < most) {
    const k = seams.length
    const width = widest(inside, edge, within, guess[k] ?? guess[k - 1] ?? 0.3)
    guess[k] = width
    if (edge - width <= 0) break
    edge -= width
    seams.push(edge)
  }
  return seams
}

/** The placement of so many gores that makes all deviate equally. `guess` is a distance to start from, m. */
export function placeGores(inside: InsideBetween, gores: number, guess: number): Placement {
  if (gores === 1) return { gores, seams: [], inside: inside(Math.PI / 2, -Math.PI / 2) }
  const odd = gores % 2 === 1
  const laid = odd ? (gores - 1) / 2 : gores / 2 - 1
  const widths: number[] = []
  /** By how much the middle is too wide: its own distance over the others', as a logarithm of sorts; 1 - 1 = 0 when even. */
  const over = (within: number): number => {
    const edges = march(inside, within, laid, widths)
    if (edges.length < laid) return -1
    const edge = edges[edges.length - 1] ?? Math.PI / 2
    return 1 - within / inside(edge, odd ? -edge : 0)
  }
  let [low, high] = [guess, guess]
  let [atLow, atHigh] = [over(low), 0]
  for (let i = 0; i < 40 && atLow < 0; i++) {
    ;[high, atHigh] = [low, atLow]
    low /= 1.6
    atLow = over(low)
  }
  for (let i = 0; i < 40 && atHigh >= 0; i++) {
    high = Math.max(high, low) * 1.6
    atHigh = over(high)
    if (atHigh >= 0) [low, atLow] = [high, atHigh]
  }
  for (let i = 0; i < 40 && high - low > EVEN * high; i++) {
    // false position, kept off the ends so that both close in
    const share = Math.min(0.9, Math.max(0.1, atLow / (atLow - atHigh)))
    const middle = low + share * (high - low)
    const at = over(middle)
    if (Math.abs(at) < EVEN) {
      low = middle
      high = middle
    } else if (at > 0) [low, atLow] = [middle, at]
    else [high, atHigh] = [middle, at]
  }
  const edges = march(inside, high, laid, widths)
  return { gores, seams: [...(odd ? [] : [0]), ...edges.reverse()], inside: high }
}

/** The fewest gores that stay within a distance, and where their seams then stand; null where more than anybody rivets are wanted. */
export function fewestGores(inside: InsideBetween, within: number): Placement | null {
  const edges = march(inside, within, MOST, [])
  if (edges.length >= MOST) return null
  const last = edges[edges.length - 1] ?? Math.PI / 2
  // the middle: one gore across the centre line if that stays within, else two with a seam on it
  const gores = 2 * edges.length + (inside(last, -last) <= within ? 1 : 2)
  return placeGores(inside, gores, within)
}
