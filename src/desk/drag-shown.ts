/** What is told beside a thing while it is dragged: what drew it there, the rules it breaks, and of axles what they carry and what is in the way. */
import { mm } from '../checks/check.js'
import type { Design } from '../derive/design.js'
import { onSection } from '../documents/drawing/section-curve.js'
import { axesOf } from './axes.js'
import type { CleanKey } from './clean-place.js'
import type { InHand } from './drag.js'
import type { DragShown, Look, SnapShown } from './nouns.js'
import { axleOf, writtenThing } from './written-things.js'

export function dragShown({ edit: { id }, design, snaps, known }: InHand, look: Look): DragShown {
  const { x, y } = axesOf(look)
  const axis = (key: CleanKey): SnapShown['axis'] | null =>
    key === 'fore' || key === 'aft' || key === x ? 'x' : key === 'low' || key === 'high' || key === y ? 'y' : null
  const isSeam = writtenThing(design.definition, id)?.layer === 'seams'
  const guide = (at: number): number => (isSeam ? onSection(design.section.points, at).z : at)
  return {
    id,
    snaps: snaps.flatMap((each) => {
      const on = isSeam ? 'y' : axis(each.key)
      return on ? [{ axis: on, at: guide(each.guide), says: each.says }] : []
    }),
    says: [...(axleOf(id) === null ? [] : ofAxles(design)), ...findings(design, id, known)],
  }
}

/** As many as are read while the hand moves; of axles the neighbours tell the rest. */
const FINDINGS = 2

/** What fails, and what was not found before the drag. */
function findings({ checks }: Design, id: string, known: ReadonlySet<string>): readonly string[] {
  const names = axleOf(id) === null ? [id, `frame-${id}`] : ['axles']
  const about = checks.filter(({ concerns }) => names.some((name) => concerns.includes(name)))
  return [
    ...about.filter(({ verdict }) => verdict === 'fail'),
    ...about.filter((check) => check.verdict === 'caution' && !known.has(check.id)),
  ]
    .slice(0, axleOf(id) === null ? FINDINGS : 1)
    .map(({ says }) => says)
}

/** The hitch in the case nearest to its band, and what each neighbour costs that stands in the way. */
function ofAxles({ weight, under: { gear } }: Design): readonly string[] {
  const cases = 'notComputed' in weight ? [] : weight.cases.filter((each) => each.design)
  const worst = [...cases].sort((a, b) => a.margins.hitch - b.margins.hitch)[0]
  const band = 'notComputed' in weight ? null : weight.hitchBand
  return [
    ...(worst && band
      ? [
          `Hitch ${percent(worst.share.value)} in case ${worst.id}, ${Math.round(worst.hitch.value)} kg; ${percent(band[0])} to ${percent(band[1])} are wanted.`,
        ]
      : []),
    ...(gear?.neighbours ?? [])
      .slice(0, NEIGHBOURS)
      .map(({ what, from, to, gains, by }) =>
        by === null
          ? `Without ${what}: ${mm(from)} to ${mm(to)}, ${mm(gains)} mm more.`
          : `${upper(what)} is in the way: move it ${mm(by)} mm, or the axles stay off it.`,
      ),
  ]
}

const NEIGHBOURS = 2
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`
const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
