/** The coach as a line drawing from one side, with everything on it that can be pointed at. Metres; nothing is worked out here. */
import type { Design } from '../derive/design.js'
import type { Check, OpeningDerived, Verdict } from '../derive/nouns.js'
import type { Member } from '../derive/under-nouns.js'
import type { MassLine } from '../derive/weight-nouns.js'
import type { CoachView, Points } from '../documents/drawing/coach-geometry.js'
import { barrelEnds, bodyOutline, openingOnCoach, project, seen } from '../documents/drawing/coach-geometry.js'
import { onSection } from '../documents/drawing/section-curve.js'
import { boxRound } from './box.js'
import { drawnOnce } from './drawn-once.js'
import { handsOn } from './hands-on.js'
import type { Drawn, Elevation, Look } from './nouns.js'
import { rivetsSeen } from './rivets-seen.js'

export function elevationOf(design: Design, look: Look): Elevation {
  const worst = worstOf(design.checks)
  const { ends, section, definition } = design
  const drawn = [
    // the body itself is another only where its section, its ends, its frames or its laps are
    ...drawnOnce(ends.drawn, 'body', look, [section.points, definition.frames, definition.shell, definition.rows], () =>
      look === 'nose' || look === 'tail'
        ? acrossOutline(design)
        : [...alongOutline(design, look), ...framesOf(design, look), ...seamsOf(design, look)],
    ),
    ...chassisOf(design, look),
    ...openingsOf(design, look, worst),
    ...axlesOf(design, look, worst),
    ...tanksOf(design, look, worst),
    ...massesOf(design, look),
  ]
  return { look, drawn, rivets: rivetsSeen(design, look), box: boxRound(drawn.map((each) => each.points)) }
}

type AlongLook = Exclude<Look, 'nose' | 'tail'>

const RANK: Readonly<Record<Verdict, number>> = { fail: 3, caution: 2, 'not-checked': 0, pass: 1 }

function worstOf(checks: readonly Check[]): ReadonlyMap<string, Verdict> {
  const worst = new Map<string, Verdict>()
  for (const { verdict, concerns } of checks)
    for (const id of concerns) {
      const known = worst.get(id)
      if (!known || RANK[verdict] > RANK[known]) worst.set(id, verdict)
    }
  return worst
}

const PLAIN = { moves: null, place: null, isSized: false, pitch: null, fields: [], verdict: null } as const

function shape(id: string | null, layer: Drawn['layer'], says: string, points: Points, closed: boolean): Drawn {
  return { id, layer, says, points: points.flat(), closed, ...PLAIN }
}

function alongOutline(design: Design, look: CoachView): Drawn[] {
  const { barrel, ends } = bodyOutline(design, look)
  return [shape(null, 'skin', 'barrel', barrel, true), ...ends.map((points) => shape(null, 'skin', 'end', points, false))]
}

/** Steps of girth in the section's outline: an arc of a metre strays less than a tenth of a millimetre between them. */
const STEPS = 128

function acrossOutline({ section }: Design): Drawn[] {
  const right = Array.from({ length: STEPS + 1 }, (_, i) => onSection(section.points, (section.halfGirth * i) / STEPS)).map(
    ({ y, z }) => [y, z] as const,
  )
  const left = right.slice(1).map(([y, z]) => [-y, z] as const)
  return [shape(null, 'skin', 'section', [...left.reverse(), ...right], true)]
}

function framesOf(design: Design, look: AlongLook): Drawn[] {
  const levels = bodyOutline(design, look).barrel.map((p) => p[1])
  const [low, high] = [Math.min(...levels), Math.max(...levels)]
  return design.definition.frames.map(({ id, station }) =>
    handsOn(design.definition, shape(id, 'frames', `frame ${id}`, [[station, low] as const, [station, high] as const], false), look),
  )
}

function seamsOf(design: Design, look: AlongLook): Drawn[] {
  const { nose, tail } = barrelEnds(design)
  const signs = look === 'plan' ? [1, -1] : look === 'right' ? [1] : [-1]
  return design.definition.shell.seams.flatMap((seam) =>
    signs
      .filter((sign) => seen(design, look, sign * seam.girth))
      .map((sign) =>
        handsOn(
          design.definition,
          shape(
            seam.id,
            'seams',
            `lap ${seam.id}`,
            [project(design, look, nose, sign * seam.girth), project(design, look, tail, sign * seam.girth)],
            false,
          ),
          look,
        ),
      ),
  )
}

function openingsOf(design: Design, look: Look, worst: ReadonlyMap<string, Verdict>): Drawn[] {
  const { openings, rows, coach } = design.definition
  return design.openings.flatMap((opening) => {
    const written = openings.find((each) => each.id === opening.id)
    return drawnOnce(opening, 'opening', look, [written, rows, coach, design.section.points, worst.get(opening.id)], () =>
      openingDrawn(design, opening, look, worst),
    )
  })
}

function openingDrawn(design: Design, opening: OpeningDerived, look: Look, worst: ReadonlyMap<string, Verdict>): readonly Drawn[] {
  const points = openingSeen(design, opening, look)
  if (!points) return []
  const drawn = {
    ...shape(opening.id, 'openings', `${opening.id}, ${opening.says}`, points, true),
    verdict: worst.get(opening.id) ?? null,
  }
  return [handsOn(design.definition, drawn, look)]
}

function openingSeen(design: Design, { end, outline, surface, side }: OpeningDerived, look: Look): Points | null {
  if (look === 'nose' || look === 'tail') return end && surface === look ? end.loop.map(([, y, z]) => [y, z] as const) : null
  if (end) return end.loop.map(([x, y, z]) => [x, look === 'plan' ? y : z] as const)
  return outline.length > 0 && side === (look === 'plan' ? 'centre' : look) ? openingOnCoach(design, outline, look) : null
}

function axlesOf({ under, definition }: Design, look: Look, worst: ReadonlyMap<string, Verdict>): Drawn[] {
  const { gear } = under
  const wheel = definition.gear?.wheel
  if (!gear || !wheel || look === 'plan') return []
  return gear.tubes.flatMap((tube) => {
    const z = tube.spindleZ ?? (gear.ground ?? 0) + wheel.radius
    const says = `axle ${tube.axle}, spindle at STA ${Math.round(tube.spindle * 1000)}`
    const drawn = (points: Points): Drawn => ({
      ...shape(`axle-${tube.axle}`, 'axles', says, points, true),
      verdict: worst.get('axles') ?? null,
    })
    if (look === 'nose' || look === 'tail') return [-1, 1].map((side) => drawn(tyre(side * wheel.y, z, wheel)))
    const round = Array.from({ length: ROUND }, (_, i) => (i * 2 * Math.PI) / ROUND)
    return [
      handsOn(
        definition,
        drawn(round.map((a) => [tube.spindle + wheel.radius * Math.cos(a), z + wheel.radius * Math.sin(a)] as const)),
        look,
      ),
    ]
  })
}

/** Corners of a wheel drawn round. */
const ROUND = 48

const tyre = (y: number, z: number, { width, radius }: { readonly width: number; readonly radius: number }): Points => [
  [y - width / 2, z - radius],
  [y + width / 2, z - radius],
  [y + width / 2, z + radius],
  [y - width / 2, z + radius],
]

function tanksOf({ under, definition }: Design, look: Look, worst: ReadonlyMap<string, Verdict>): Drawn[] {
  if (look === 'nose' || look === 'tail') return []
  return (under.chassis?.bays ?? []).map((bay) => {
    const [a, b] = look === 'plan' ? bay.y : bay.z
    const points: Points = [
      [bay.x[0], a],
      [bay.x[1], a],
      [bay.x[1], b],
      [bay.x[0], b],
    ]
    return handsOn(
      definition,
      { ...shape(bay.id, 'tanks', `${bay.id}, ${bay.says}`, points, true), verdict: worst.get(bay.id) ?? null },
      look,
    )
  })
}

/** Rails, cross-members and drawbar: from the side as bands between their waterlines, in plan as they lie. */
function chassisOf({ under }: Design, look: Look): Drawn[] {
  if (look === 'nose' || look === 'tail') return []
  const members = under.chassis?.members ?? []
  return members
    .filter(({ side }) => look === 'plan' || side === 'centre' || side === look)
    .flatMap((member) => drawnOnce(member, 'member', look, [], () => [memberDrawn(member, look)]))
}

function memberDrawn({ part, says, plan, top, bottom }: Member, look: Look): Drawn {
  const x = plan.map((p) => p[0])
  const [from, to] = [Math.min(...x), Math.max(...x)]
  const band: Points = [
    [from, bottom],
    [to, bottom],
    [to, top],
    [from, top],
  ]
  return shape(part, 'chassis', says, look === 'plan' ? plan.map((p) => [p[0], p[1]] as const) : band, true)
}

/** Half a width for a kilogram, m: the squares grow with the root of the mass, so that ink stands for kilograms. */
const PER_ROOT = 0.012

function massesOf({ weight, definition }: Design, look: Look): Drawn[] {
  if ('notComputed' in weight) return []
  const inStead = new Set(weight.twinned.filter((each) => each.derived !== null).map((each) => each.item))
  return weight.lines
    .filter((line) => line.group !== 'GR')
    .flatMap((line) => {
      const isByItself = !inStead.has(line.says)
      // an item that parts stand for lies where they lie, whatever the list says of its place
      return drawnOnce(line, 'mass', look, [definition.masses, isByItself], () => {
        const drawn = massDrawn(line, look)
        return [isByItself ? handsOn(definition, drawn, look) : drawn]
      })
    })
}

function massDrawn({ id, says, mass, centre: [x, y, z] }: MassLine, look: Look): Drawn {
  const [h, v] = look === 'plan' ? [x, y] : look === 'nose' || look === 'tail' ? [y, z] : [x, z]
  const r = PER_ROOT * Math.sqrt(mass.value)
  const square: Points = [
    [h - r, v - r],
    [h + r, v - r],
    [h + r, v + r],
    [h - r, v + r],
  ]
  return shape(id, 'masses', `${says}, ${mass.value.toFixed(1)} kg`, square, true)
}
