/** `gores FILE`: the gores of an end bent over their ribs: how they deviate, how many would stay within a distance, what they cost. */
import { derive } from '../../derive/index.js'
import { rounded } from '../../documents/json/rounded.js'
import { formatLength } from '../../quantity/format.js'
import { type GoreFinding, type GoreLayout, type GoreStudy, goreStudy } from '../../studies/gores/study.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { count, list } from '../say-numbers.js'

export interface GoresArguments {
  readonly gores?: number
  readonly within?: number
  readonly json?: boolean
  readonly inch?: boolean
}

export const goresCommand: Command<GoresArguments> = (file, { inch, json: asJson, ...asked }, terminal) => {
  const { definition } = openCoach(file)
  const study = goreStudy(derive(definition), asked)
  if (asJson) terminal.out(json(rounded({ coach: { name: definition.coach.name }, ...study })))
  else terminal.out(goresText(study, definition.coach.name, inch === true))
  return 0
}

const degrees = (rad: number): string => `${((rad * 180) / Math.PI).toFixed(1)} deg`

export function goresText(study: GoreStudy, coach: string, inch: boolean): string {
  const size = (m: number): string => formatLength(m, inch ? 'inch' : 'metric')
  const layouts = [study.now, study.even, ...(study.enough ? [study.enough] : [])]
  return [
    `${coach}: the gores of an end bent over their seam ribs without stretching. This coach has its gores ${study.make}.`,
    `Its sheet springs back from any radius above ${size(study.elastic)}; below that a bend stays.`,
    ...layouts.flatMap((layout) => ['', ...layoutText(layout, size)]),
    ...(study.enough ? [] : ['', `No count of gores that anybody rivets stays within ${size(study.within)}.`]),
    '',
    ...costText(layouts, size),
  ].join('\n')
}

type Size = (m: number) => string

function layoutText(layout: GoreLayout, size: Size): string[] {
  const { seams, gores, inside, kinks, joint } = layout
  const worst = kinks.length > 0 ? kinks.reduce((a, b) => (b.angle > a.angle ? b : a)) : null
  const half = gores.slice(0, Math.ceil(gores.length / 2))
  return [
    `${count(gores.length, 'gore')} ${layout.says}: seams at ${list(seams.map(degrees))} from the centre line, both sides.`,
    inside === null
      ? '  Not every gore can be bent from flat sheet.'
      : `  They lie up to ${size(inside)} inside the lofted surface${worst ? `, and meet at up to ${degrees(worst.angle)} (seam ${worst.seam}, WL ${size(worst.waterline)})` : ''}${joint ? `; against the barrel ${degrees(joint.angle)} at WL ${size(joint.waterline)}` : ''}.`,
    ...half.map((g) => goreText(g, size)),
  ]
}

function goreText(g: GoreFinding, size: Size): string {
  if (g.inside === null) return `  gore ${g.gore}, ${degrees(g.width)} wide: cannot be bent. ${g.refused ?? ''}`
  return `  gore ${g.gore}, ${degrees(g.width)} wide: ${size(g.inside.depth)} inside at WL ${size(g.inside.waterline)}; rulings fall up to ${size(g.drop ?? 0)}; bent to a radius of ${g.bend === null ? 'none' : size(g.bend)}.`
}

function costText(layouts: readonly GoreLayout[], size: Size): string[] {
  return [
    'What they cost, one end:',
    ...layouts.map(
      ({ cost }) =>
        `  ${count(cost.gores, 'gore')}: ${size(cost.seamLength)} of seam, ${count(cost.seamRivets, 'seam rivet')}, ${count(cost.ribs, 'rib')} with ${count(cost.ribRivets, 'rivet')} in the mid ribs, ${(cost.sealant * 1e6).toFixed(0)} ml of sealant in the laps (before waste).`,
    ),
  ]
}
