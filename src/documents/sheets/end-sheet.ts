/** An end whole: seen square on, from the side and from above, with its gores, ribs, rivets and openings, and what they come to. */
import type { Design } from '../../derive/design.js'
import type { Part } from '../../derive/nouns.js'
import type { EndStands } from '../drawing/end-geometry.js'
import { endsOf } from '../drawing/end-geometry.js'
import type { EndViewPlace } from '../drawing/end-view.js'
import { endViewMarks, endViewNames, handOf, onEndView, sideShown } from '../drawing/end-view.js'
import { wrap } from '../drawing/lettering.js'
import type { Mark, Page } from '../drawing/page.js'
import { FINE, letter, line } from '../drawing/page.js'
import type { PaperSize } from '../drawing/paper-sizes.js'
import { insideBorder, sheetsOf } from '../drawing/paper-sizes.js'
import type { Body, PrintOptions } from '../drawing/sheet.js'
import { coachTitle, seriesOf, sheetsFrom, unitsOf } from '../drawing/sheet.js'
import { scaleBar } from '../drawing/symbols.js'
import { tableBlocks } from '../drawing/table.js'
import { BLOCK_WIDTH, FULL_BLOCK } from '../drawing/title-block.js'
import type { PrintUnits } from '../drawing/units.js'
import { boughtWords, fixed, lengthNumber, lengthUnit, lengthWords, massWords } from '../drawing/units.js'
import type { Scale } from '../drawing/view.js'
import { SCALES, scaleWords } from '../drawing/view.js'
import { projectionOf, sideLetter } from '../drawing/words.js'

/** Round the views: names over and under them, levels beside them, mm. */
const OVER = 11
const UNDER = 9
const BESIDE = 22
const GAP = 8

interface Sizes {
  readonly width: number
  readonly reach: number
  readonly crown: number
  readonly toe: number
}

function sizesOf(design: Design): Sizes {
  const { points, width } = design.section
  return { width, reach: design.ends.reach, crown: points[0].z, toe: points[points.length - 1].z }
}

const scaleFor = ({ width, reach, crown, toe }: Sizes, wide: number, tall: number): Scale =>
  SCALES.find(
    (s) => ((width + reach) * 1000) / s + BESIDE + GAP <= wide && ((crown - toe + reach) * 1000) / s + 2 * (OVER + UNDER) <= tall,
  ) ?? 100

function views(design: Design, at: EndStands, x: number, y: number, scale: Scale, tall: number, options: PrintOptions): readonly Mark[] {
  const { market } = design.definition.coach
  const sizes = sizesOf(design)
  const units = unitsOf(options)
  const projection = projectionOf(market)
  const k = 1000 / scale
  const group = 'view-names'
  const [w, r, h] = [sizes.width * k, sizes.reach * k, (sizes.crown - sizes.toe) * k]
  const spare = Math.max(0, tall - (h + r + 2 * (OVER + UNDER)))
  const [frontTop, planTop] =
    projection === 'third'
      ? [y + OVER + r + UNDER + spare / 2 + OVER, y + OVER + spare / 4]
      : [y + OVER + spare / 4, y + OVER + h + UNDER + spare / 2 + OVER]
  const middle = x + BESIDE + w / 2
  const level = frontTop + sizes.crown * k
  const sideX = x + BESIDE + w + GAP + (projection === 'third' ? r : 0)
  const front: EndViewPlace = { view: 'front', projection, scale, x0: middle, y0: level }
  const side: EndViewPlace = { view: 'side', projection, scale, x0: sideX, y0: level }
  const plan: EndViewPlace = { view: 'plan', projection, scale, x0: middle, y0: planTop }
  const shown = sideShown(at, projection)
  const heading = (left: number, top: number, text: string): Mark => letter(left, top - 3, text, { height: 2.5, bold: true, group })
  const hands = (['right', 'left'] as const).map((hand) => {
    const sign = hand === 'right' ? handOf(at) : -handOf(at)
    return letter(middle + sign * (w / 2 - 6), planTop + r - 4, sideLetter(hand, market) ?? '', {
      height: 10,
      bold: true,
      anchor: 'middle',
      group,
    })
  })
  const levels = (
    [
      ['crown', sizes.crown],
      ['belt', design.section.points.find((p) => p.id === 'belt')?.z],
      ['floor', 0],
      ['toe', sizes.toe],
    ] as const
  ).flatMap(([word, z]) => {
    if (z === undefined) return []
    const at_ = onEndView(at, front, [0, 0, z])[1]
    return [
      line(x + BESIDE - 4, at_, x + BESIDE - 1, at_, { width: FINE, group }),
      letter(x + BESIDE - 5, at_, `${word} WL ${fixed(z * 1000, 0)}`, { height: 1.8, anchor: 'end', sits: 'middle', group }),
    ]
  })
  const tip = at.joint + at.out * sizes.reach
  const stations = [
    [0, `joint STA ${fixed(at.joint * 1000, 0)}`, projection === 'third' ? 'end' : 'start'],
    [sizes.reach, `tip STA ${fixed(tip * 1000, 1)}`, projection === 'third' ? 'start' : 'end'],
  ] as const
  return [
    ...endViewMarks(design, at, front),
    ...endViewNames(design, at, front),
    ...endViewMarks(design, at, side),
    ...endViewMarks(design, at, plan),
    ...endViewNames(design, at, plan),
    heading(x + BESIDE, frontTop, `Seen from ${at.end === 'nose' ? 'AHEAD' : 'BEHIND'}. Figures on the gores: gores and their mid ribs.`),
    heading(x + BESIDE + w + GAP, frontTop, `${shown.toUpperCase()} side (${sideLetter(shown, market)})`),
    heading(x + BESIDE, planTop, `Seen from ABOVE, ${at.end === 'nose' ? 'forward' : 'aft'} is down`),
    ...hands,
    ...levels,
    ...stations.map(([out, text, anchor]) => {
      const [px, py] = onEndView(at, side, [out, 0, sizes.toe])
      return letter(px, py + 2, text, { height: 1.8, anchor, sits: 'top', group })
    }),
    letter(x + BESIDE + w + GAP, level - sizes.toe * k + 6, `reach ${lengthWords(sizes.reach, units)}`, {
      height: 1.8,
      sits: 'top',
      group,
    }),
  ]
}

function ribRows(design: Design, at: EndStands, options: PrintOptions): readonly (readonly string[])[] {
  const units = unitsOf(options)
  const degrees = (rad: number): string => fixed((rad * 180) / Math.PI, 1)
  return design.ends.ribs
    .filter((rib) => rib.azimuth > -1e-9)
    .sort((a, b) => a.azimuth - b.azimuth)
    .map((rib) => {
      const jig = design.ends.jig.ribs.find((j) => j.ribs.includes(rib.id))
      const twin = design.ends.ribs.find((r) => r.kind === rib.kind && r.azimuth < -1e-9 && Math.abs(r.azimuth + rib.azimuth) < 1e-9)
      const part = design.parts.find((p) => p.id === `${at.end}-${rib.id.replace('-', '-rib-')}`)
      return [
        `${rib.id.replace('-', ' ')}${twin ? `, ${twin.id.split('-')[1]}` : ''}`,
        degrees(rib.azimuth),
        lengthNumber(rib.length, units),
        lengthNumber(rib.capToBase, units),
        jig ? lengthNumber(jig.flangeLength, units) : 'waits',
        jig ? `${degrees(jig.leastBevel.angle)} to ${degrees(jig.greatestBevel.angle)}` : 'waits',
        part ? massWords(part.mass.value, units) : 'cut away',
      ]
    })
}

const SKINS: readonly Part['kind'][] = ['gore', 'crown-cap', 'header-ring', 'end-base', 'end-lining']

function partRows(design: Design, at: EndStands, options: PrintOptions): readonly (readonly string[])[] {
  const units = unitsOf(options)
  return design.parts
    .filter((p) => SKINS.includes(p.kind) && p.place.end?.which === at.end)
    .map((p) => [
      p.says.replace(`${at.end} `, ''),
      `${p.material}  ${boughtWords(p.thickness, units)}`,
      fixed(p.area, 3),
      massWords(p.mass.value, units),
      standsWords(p, units),
    ])
}

function standsWords({ id, kind, patterns, sag }: Part, units: PrintUnits): string {
  if (patterns.length > 0) return sag === undefined ? 'flat pattern' : `flat pattern, sags ${lengthNumber(sag, units)}`
  if (kind === 'end-lining') return id.endsWith('-lining-crown') ? 'cut on the ring' : 'cut on its ribs'
  return 'waits for its blank'
}

function facts(design: Design, options: PrintOptions): readonly string[] {
  const { ends } = design
  const units = unitsOf(options)
  return [
    `Ribs on the left mirror those on the right; a flange that the table gives uncut may be cut by an opening. Bevel: skin against square to the web, plus opens the flange.`,
    `Surface ${fixed(ends.area, 3)} m², its centroid ${lengthWords(ends.centroid.out, units)} beyond the joint at WL ${fixed(ends.centroid.waterline * 1000, 0)}.`,
    `Round WL 0 from joint to joint ${lengthWords(ends.floorPerimeter, units)}; the end's own edge at the joint ${lengthWords(ends.jointEdge, units)} outside.`,
    'Lining lies flat from rib to rib: it sags inside the shape the ribs have by what the table says, at its most.',
    `Gores are ${ends.make}. Dots are rivets; long-dash-dot lines are mid ribs; the dashed line is WL 0.`,
  ]
}

const roomFor = (size: PaperSize): { readonly wide: number; readonly tall: number } => {
  const inside = insideBorder(size)
  return { wide: inside.width - BLOCK_WIDTH - 4, tall: inside.height - 4 }
}

/** The smallest sheet that shows the views at 1:10, or else the largest. */
function sheetFor(design: Design, options: PrintOptions): { readonly size: PaperSize; readonly scale: Scale } {
  const sizes = sheetsOf(seriesOf(options)).slice(2)
  const tried = sizes.map((size) => ({ size, scale: scaleFor(sizesOf(design), roomFor(size).wide, roomFor(size).tall) }))
  return tried.find((t) => t.scale <= 10) ?? tried[tried.length - 1]
}

function bodyOf(design: Design, at: EndStands, options: PrintOptions): Body {
  const units = unitsOf(options)
  const { size, scale } = sheetFor(design, options)
  const inside = insideBorder(size)
  const wide = roomFor(size).wide
  const x = inside.x + wide + 6
  const width = BLOCK_WIDTH - 4
  const sizes = sizesOf(design)
  const used = ((sizes.width + sizes.reach) * 1000) / scale + BESIDE + GAP
  const marks: Mark[] = [...views(design, at, inside.x + 3 + Math.max(0, wide - used) / 2, inside.y + 2, scale, inside.height - 6, options)]
  let y = inside.y + 6
  const say = (text: string, bold: boolean): void => {
    for (const row of wrap(text, width, 2.5, bold)) {
      marks.push(letter(x, y + 2.5, row, { height: 2.5, bold, group: 'facts' }))
      y += 4.2
    }
  }
  const table = (columns: Parameters<typeof tableBlocks>[0], rows: readonly (readonly string[])[]): void => {
    const [block] = tableBlocks(columns, rows, () => ({ x, y, width, height: 400 }), { height: 2.5, loose: 0.8 })
    marks.push(...block)
    y += 6 + rows.length * (2.5 * 1.6 + 0.8) + 5
  }
  const unit = lengthUnit(units)
  say(`Ribs: azimuth from the centre line, lengths on the outer mould line, ${unit}`, true)
  table(
    [
      { head: 'Rib', width: 24, bold: true },
      { head: 'Azimuth °', width: 20, align: 'right' },
      { head: 'Crown to toe', width: 27, align: 'right' },
      { head: 'Cap to base', width: 27, align: 'right' },
      { head: 'Flange', width: 22, align: 'right' },
      { head: 'Bevel °', width: 32, align: 'right' },
      { head: 'Mass', width: 22, align: 'right' },
    ],
    ribRows(design, at, options),
  )
  say('Skin, ring, base and lining', true)
  table(
    [
      { head: 'Part', width: 36, bold: true },
      { head: 'Material and gauge', width: 48 },
      { head: 'Area m²', width: 20, align: 'right' },
      { head: 'Mass', width: 22, align: 'right' },
      { head: 'How it stands', width: 48 },
    ],
    partRows(design, at, options),
  )
  for (const sentence of facts(design, options)) {
    say(sentence, false)
    y += 1
  }
  marks.push(...scaleBar(scale, x, inside.y + inside.height - FULL_BLOCK - 10, units))
  const title = coachTitle(design, options, 'End', at.end, `${at.end === 'nose' ? 'Nose' : 'Tail'}: gores, ribs, rivets and openings`)
  return {
    name: `end-${at.end}`,
    says: `The ${at.end} in three views with its gores, ribs and openings`,
    size,
    block: 'full',
    title: { ...title, scale: scaleWords(scale), view: `${at.end.toUpperCase()} in three views, from OUTSIDE` },
    marks,
  }
}

/** One sheet an end. */
export function endSheets(design: Design, options: PrintOptions = {}): readonly Page[] {
  return sheetsFrom(endsOf(design).map((at) => bodyOf(design, at, options)))
}
