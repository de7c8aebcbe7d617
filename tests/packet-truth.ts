/** Every document of a packet with its studies done, and which of them differ between two coaches: what a ripple's list of documents is held against. */
import type { Design } from '../src/derive/design.js'
import { derive } from '../src/derive/index.js'
import type { Page } from '../src/documents/drawing/page.js'
import { packetPlan } from '../src/documents/packet/plan.js'
import type { PlannedDocument } from '../src/documents/packet/planned.js'
import { pageToSvg } from '../src/documents/svg.js'
import { documentChanges } from '../src/ripple/documents.js'
import type { DocumentChange } from '../src/ripple/nouns.js'
import { type Blanks, blanksKey, computeBlanks } from '../src/studies/blanks/compute.js'
import { blanksInput } from '../src/studies/blanks/shape.js'
import { blankStudy } from '../src/studies/blanks/study.js'
import { withBlanks } from '../src/studies/blanks/with-blanks.js'
import { fitStudy } from '../src/studies/fit/fit-study.js'
import { goresAsPlaced } from '../src/studies/gores/study.js'
import { withLining } from '../src/studies/lining/with-lining.js'

const BLANKS = new Map<string, Blanks>()

/** The packet as the shop has it: blanks worked out, once for each shape, gores bent, and a rim's joint tried (all joints take seconds). */
export function wholePacket(of: Design): readonly PlannedDocument[] {
  const derived = derive(of.definition)
  const { make } = of.definition.ends
  const input = blanksInput(derived)
  const key = blanksKey(input)
  const made = BLANKS.get(key) ?? (make === 'formed' ? computeBlanks(input) : null)
  if (made) BLANKS.set(key, made)
  const blanks = made && make === 'formed' ? blankStudy(derived, made) : null
  const rim = derived.joints.find((j) => /^joint-rim-RW/.test(j.id))
  const fit = of.definition.process === null ? null : fitStudy(derived, { trials: 2, seed: 1, joint: rim?.id ?? derived.joints[0].id })
  const lined = withLining(of, derived)
  const design = { ...(blanks ? withBlanks(lined, blanks) : lined), revision: '000000000000' }
  return packetPlan(design, { gores: goresAsPlaced(derived), ...(blanks ? { blanks } : {}), ...(fit ? { fit } : {}) })
}

/** Content by path, drawings as SVG, which is written finer than PDF: a tenth of a micron on paper. */
export function contents(of: Design): ReadonlyMap<string, string> {
  const drawn = (pages: readonly Page[]): string => pages.map((page) => `${page.name}\n${pageToSvg(page)}`).join('')
  return new Map(wholePacket(of).map(({ path, content }) => [path, content.kind === 'text' ? content.make() : drawn(content.make())]))
}

export function truth(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): Record<string, readonly string[]> {
  const [old, now] = [[...before.keys()], [...after.keys()]]
  return {
    reissue: now.filter((path) => before.has(path) && before.get(path) !== after.get(path)).sort(),
    new: now.filter((path) => !before.has(path)).sort(),
    withdraw: old.filter((path) => !after.has(path)).sort(),
  }
}

/** Documents whose words or drawings a study settles. */
export const STUDIED =
  /^(checks|ends|holes|lining|programs|schedules)\/(hole-fit|blanks|gore-ways|(nose|tail)-(gore-\d+|cap|lining-\d+))\.\w+$/

export function claimed(before: Design, after: Design, is: Record<string, readonly string[]>): Record<string, readonly string[]> {
  // the cover sums up the lining's flats too, and may round to what it was; which sheet a blank is cut from its study says
  const mayBeVain = ({ path, because }: DocumentChange): boolean =>
    STUDIED.test(path) || path === 'cover.pdf' || because.every((each) => each === 'the sheets formed panels are cut from')
  const isVain = (change: DocumentChange): boolean => mayBeVain(change) && !is.reissue.includes(change.path)
  const changes = documentChanges(before, after, {}).filter((c) => c.status !== 'reissue' || !isVain(c))
  const of = (status: string): readonly string[] =>
    changes
      .filter((c) => c.status === status)
      .map((c) => c.path)
      .sort()
  return { reissue: of('reissue'), new: of('new'), withdraw: of('withdraw') }
}
