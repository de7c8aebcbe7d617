/** How wide lettering runs and where it lies: text is measured in the core, so that no sheet has to guess. Millimetres. */

import type { FaceWidths } from './glyph-widths.js'
import { BOLD, CAP_HEIGHT, REGULAR, UNITS_PER_EM } from './glyph-widths.js'
import type { TextMark } from './page.js'

/** Size of the font's em for a capital height, mm. */
export const emOf = (height: number): number => (height * UNITS_PER_EM) / CAP_HEIGHT
/** How far letters with a tail go below the foot, and brackets and accents above the capitals, as parts of the capital height. */
const BELOW = 0.33
const ABOVE = 0.14
/** Round letters and figures overshoot the foot by this. */
const OVERSHOOT = 0.03
const TAILED = /[^A-IK-PR-Z0-9 .:×°+–—·'-]/

function unitsOf(face: FaceWidths, code: number): number {
  if (code >= 32 && code < 127) return face.basic[code - 32]
  if (code >= 160 && code < 384) return face.latin[code - 160]
  const more = face.more[String.fromCodePoint(code)]
  if (more === undefined)
    throw new Error(`No width for the character ${JSON.stringify(String.fromCodePoint(code))}: add it to glyph-widths.ts`)
  return more
}

/** True when every character can be printed. */
function canLetter(text: string): boolean {
  for (const character of text) {
    const code = character.codePointAt(0)!
    if (!((code >= 32 && code < 127) || (code >= 160 && code < 384) || character in REGULAR.more)) return false
  }
  return true
}

/** The text with characters the lettering lacks replaced by a question mark, so that a name in another script still prints. */
export const lettered = (text: string): string =>
  canLetter(text) ? text : Array.from(text, (character) => (canLetter(character) ? character : /\s/.test(character) ? ' ' : '?')).join('')

/** Of a line of lettering, in units of the face: whole numbers, so that a line's are the sum of its words'. */
function unitsIn(text: string, face: FaceWidths): number {
  let units = 0
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (code >= 32 && code < 127) {
      units += face.basic[code - 32]
      continue
    }
    const point = text.codePointAt(i)!
    if (point > 0xffff) i++
    units += unitsOf(face, point)
  }
  return units
}

/** Length of a line of lettering with capitals `height` high, mm. */
export const textWidth = (text: string, height: number, bold = false): number =>
  (unitsIn(text, bold ? BOLD : REGULAR) * height) / CAP_HEIGHT

/** The foot of the text's start: where a printer sets its first letter. */
export function footOf(mark: TextMark): readonly [number, number] {
  const along = mark.anchor === 'start' ? 0 : textWidth(mark.text, mark.height, mark.bold) * (mark.anchor === 'middle' ? -0.5 : -1)
  const down = mark.sits === 'foot' ? 0 : mark.sits === 'middle' ? mark.height / 2 : mark.height
  if (mark.turn === 0) return [mark.x + along, mark.y + down]
  const a = (-mark.turn * Math.PI) / 180
  return [mark.x + along * Math.cos(a) - down * Math.sin(a), mark.y + along * Math.sin(a) + down * Math.cos(a)]
}

/** Four corners of the box the text's ink fits in, in order round it. */
export function boxOf(mark: TextMark): readonly (readonly [number, number])[] {
  const [x, y] = footOf(mark)
  const a = (-mark.turn * Math.PI) / 180
  const across = textWidth(mark.text, mark.height, mark.bold)
  const up = mark.height * (1 + ABOVE)
  const down = mark.height * (TAILED.test(mark.text) ? BELOW : OVERSHOOT)
  const at = (u: number, v: number): readonly [number, number] => [
    x + u * Math.cos(a) - v * Math.sin(a),
    y + u * Math.sin(a) + v * Math.cos(a),
  ]
  return [at(0, -up), at(across, -up), at(across, down), at(0, down)]
}

/** Words broken into lines no longer than `width`; a word longer than a line is broken where it must be. */
export function wrap(text: string, width: number, height: number, bold = false): readonly string[] {
  const out: string[] = []
  const face = bold ? BOLD : REGULAR
  const fits = (units: number): boolean => (units * height) / CAP_HEIGHT <= width
  const space = unitsIn(' ', face)
  let current = ''
  let run = 0
  for (const word of text.split(' ')) {
    const longer = unitsIn(word, face) + (current === '' ? 0 : run + space)
    if (fits(longer)) {
      current = current === '' ? word : `${current} ${word}`
      run = longer
      continue
    }
    if (current !== '') out.push(current)
    current = word
    while (textWidth(current, height, bold) > width && current.length > 1) {
      let n = current.length - 1
      while (n > 1 && textWidth(current.slice(0, n), height, bold) > width) n--
      out.push(current.slice(0, n))
      current = current.slice(n)
    }
    run = unitsIn(current, face)
  }
  if (current !== '' || out.length === 0) out.push(current)
  return out
}

/** The text cut short with a dot-dot-dot where it would run over `width`. */
export function shorten(text: string, width: number, height: number, bold = false): string {
  if (textWidth(text, height, bold) <= width) return text
  let n = text.length
  while (n > 0 && textWidth(`${text.slice(0, n)}…`, height, bold) > width) n--
  return `${text.slice(0, n).trimEnd()}…`
}
