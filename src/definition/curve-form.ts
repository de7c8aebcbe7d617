/** Pieces of a plane curve: arcs by radius and end heading, straights by length; some values may be left to be solved. */
import { type Form, group, needs, orWord } from './form.js'
import { angle, anyLength, length, words } from './form-values.js'
import type { ProfileElement } from './types.js'
import { found, type Written } from './written.js'

const arc = group({
  arc: needs('arc', words('shoulder'), 'name of the arc'),
  radius: needs('radius', anyLength('380 mm'), 'outer radius; negative bends outward again'),
  to: needs('to', orWord('fit', angle({}, '82 deg')), 'heading at its end, 90 deg straight down; fit to have it solved'),
})
const line = group({
  line: needs('line', words('side'), 'name of the straight'),
  length: needs('length', orWord('fit', length()), 'its length; fit to have it solved'),
})

type ReadPiece =
  | { readonly kind: 'arc'; readonly name: string | undefined; readonly radius: number | undefined; readonly to: number | null | undefined }
  | { readonly kind: 'line'; readonly name: string | undefined; readonly length: number | null | undefined }

/** An arc or a line, told apart by which of the two words is a key. */
export const piece: Form<ReadPiece> = {
  expects: 'an arc or a line',
  example: null,
  read(node: Written, reading, path) {
    if (node.kind === 'map' && node.entries.has('line')) {
      const read = line.read(node, reading, path)
      return read && { kind: 'line', name: read.line, length: read.length }
    }
    if (node.kind === 'map' && (node.entries.has('arc') || node.entries.has('radius'))) {
      const read = arc.read(node, reading, path)
      return read && { kind: 'arc', name: read.arc, radius: read.radius, to: read.to }
    }
    const advice = 'For instance {arc: shoulder, radius: 380 mm, to: 82 deg} or {line: side, length: 900 mm}.'
    reading.wrong(path, { expected: 'an arc or a line', found: found(node), advice })
    return undefined
  },
  schema: (kind) => ({ oneOf: [arc.schema(kind), line.schema(kind)] }),
}

/** A piece of a curve that is not solved for. */
export const knownPiece: Form<ProfileElement> = {
  ...piece,
  read(node, reading, path) {
    const read = piece.read(node, reading, path)
    if (read?.name === undefined) return undefined
    if (read.kind === 'line' ? read.length === null : read.to === null) {
      reading.wrong(path, {
        expected: 'a piece whose size is known',
        found: 'fit',
        advice: 'Only the section is solved: write the value here.',
      })
      return undefined
    }
    if (read.kind === 'line')
      return read.length === undefined ? undefined : { kind: 'line', name: read.name, length: read.length as number }
    if (read.radius === undefined || read.to === undefined) return undefined
    return { kind: 'arc', name: read.name, radius: read.radius, to: read.to as number }
  },
}
