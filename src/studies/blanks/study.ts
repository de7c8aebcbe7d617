/**
 * Blanks of the formed panels of both ends: what is cut, the pilots in it, what the metal undergoes, and whether alloy, thickness
 * and stock sheets are up to it. What it does NOT cover: the press and its tools, friction, work hardening, wrinkling by the shrink
 * at the edges, the change of shape at springback. The strains are the least the shape asks for.
 */

import { capPart } from '../../derive/end-names.js'
import type { Derived } from '../../derive/index.js'
import type { FlatFrame, Outline, Place } from '../../derive/nouns.js'
import { type Alloy, findAlloy } from '../../tables/alloys.js'
import { blankChecks } from './blank-checks.js'
import type { Blanks, PanelBlank } from './compute.js'
import { edgeOf, type Frame, frameOf, outlineIn, placedIn } from './flat.js'
import type { BlankPart, BlankStudy, FormedBlank } from './nouns.js'
import { girthDown, type Laid, marksOf, pilotsOf } from './on-panel.js'
import { type DistinctPanel, distinctPanels, type Serves } from './panels.js'
import { blanksInput, type OnSheet, type Shape, shapeOf, sheetAt } from './shape.js'

type Ends = Pick<Derived, 'definition' | 'endSections' | 'rows' | 'openings'>

/** Of blanks worked out for this coach (`computeBlanks(blanksInput(derived))`); throws for another's. */
export function blankStudy(derived: Ends, blanks: Blanks): BlankStudy {
  const shape = shapeOf(blanksInput(derived))
  const distinct = distinctPanels(shape)
  const made = distinct.map((d) => {
    const blank = blanks.panels.find((b) => b.panel === d.panel.id)
    if (!blank) throw new Error(`the blanks handed over hold no ${d.panel.id}`)
    return formed(derived, shape, d, blank)
  })
  const has = new Set(distinct.flatMap((d) => d.serves.map((s) => s.part)))
  return Object.freeze({
    blanks: made,
    waiting: (['nose', 'tail'] as const)
      .map(capPart)
      .filter((part) => !has.has(part))
      .map((part) => ({ part, says: 'A cap over a flat roof has a ridge in it and is no single smooth panel: no blank is worked out.' })),
    says: [elasticSays(derived.definition.ends.skin), ...SAYS],
  })
}

const SAYS: readonly string[] = Object.freeze([
  'Strains are the least that the shape asks for when shrink is a hundred times dearer than stretch: a press adds its own.',
  'Where the sheet passes from one depth to another (under the cap, a neighbour or the barrel) it is taken to do so smoothly.',
  'Pilots only: drill at assembly, where the formed panel lies on the jig. Try a first-off before a batch is cut.',
])

function elasticSays({ alloy, thickness }: Ends['definition']['ends']['skin']): string {
  const { Fty, E } = alloyOf(alloy, thickness.value)
  const strain = ((100 * Fty.value) / E.value).toFixed(2)
  return `${alloy} yields at ${(Fty.value / 1e6).toFixed(0)} MPa (${Fty.source}), a strain of ${strain} % by its modulus: at least that much springs back when the press lets go, and more as the sheet hardens.`
}

function alloyOf(name: string, thickness: number): Alloy {
  const found = findAlloy(name, thickness)
  if (!found.ok) throw new Error(found.says)
  return found.row
}

function formed(derived: Ends, shape: Shape, { panel, serves }: DistinctPanel, blank: PanelBlank): FormedBlank {
  const { definition } = derived
  const { ends } = definition
  const edge = edgeOf(blank)
  const frame = frameOf(edge)
  const jointOf = (end: Serves['end']): number => {
    const found = definition.frames.find((f) => f.joint === end)
    if (!found) throw new Error(`no frame carries the ${end}`)
    return found.station
  }
  const parts = serves.map((s) => partOf(derived, { shape, panel, blank, frame, serves: s, joint: jointOf(s.end) }, edge))
  const fits = definition.stock.sheets
    .filter((s) => frame.length <= s.length - 2 * definition.stock.trim && frame.width <= s.width - 2 * definition.stock.trim)
    .sort((a, b) => a.width * a.length - b.width * b.length)
  const says = panel.kind === 'cap' ? 'crown cap' : `gore ${panel.number} of ${shape.gores}`
  const t = ends.skin.thickness.value
  const base = {
    panel: panel.id,
    says,
    parts,
    length: frame.length,
    width: frame.width,
    stock: fits[0]?.name ?? null,
    thickness: t,
    areaFlat: blank.areaFlat,
    areaFormed: blank.areaFormed,
    stretch: stretchOf(shape, panel, serves[0], jointOf(serves[0].end), blank, frame),
    shrink: blank.peakShrink,
    leastThickness: t * (1 - blank.thinning),
    springback: springbackOf(ends.skin.alloy, t, blank),
    field: fieldOf(blank, frame, serves[0].turned),
  }
  return Object.freeze({ ...base, checks: blankChecks(base, definition, blank) })
}

function partOf(derived: Ends, laid: Laid, edge: Outline): BlankPart {
  const { serves, frame, joint, panel } = laid
  const isCap = panel.kind === 'cap'
  const flat: FlatFrame = {
    view: 'outside',
    x: isCap ? (serves.end === 'nose' ? 'forward' : 'aft') : 'down',
    y: serves.end === 'nose' ? 'left' : 'right',
    origin: {
      station: joint,
      girth: panel.girthAt(0),
      says: `corner of the rectangle round the blank, at the ${isCap ? "barrel's" : "cap's"} end`,
    },
  }
  return Object.freeze({
    part: serves.part,
    turned: serves.turned,
    flat,
    outline: outlineIn(frame, serves.turned, edge),
    holes: pilotsOf(derived, laid),
    marks: marksOf(laid, derived.openings),
  })
}

function stretchOf(
  shape: Shape,
  panel: DistinctPanel['panel'],
  { end, part, turned }: Serves,
  joint: number,
  blank: PanelBlank,
  frame: Frame,
): FormedBlank['stretch'] {
  const node = blank.nodeMajor.indexOf(Math.max(...blank.nodeMajor))
  const [i, j] = [node % (blank.across + 1), Math.floor(node / (blank.across + 1))]
  const [u, v] = [blank.stops[i], j / blank.along]
  const on = panel.onSheet(u, v)
  const girth = panel.girthAt(v)
  const middle = j * (blank.across + 1) + blank.across / 2
  const aside = blank.y[node] - blank.y[middle]
  const place = placeAt(shape, on, end, joint)
  const mm = (m: number): string => (m * 1000).toFixed(0)
  const way = Math.abs(aside) < 0.0005 ? 'on the' : `${mm(Math.abs(aside))} ${aside > 0 ? 'right' : 'left'} of the`
  const name = panel.kind === 'cap' ? part.replace('-', ' ') : part.replace(/-/g, ' ')
  return {
    peak: blank.peakStretch,
    mean: blank.meanStretch,
    place,
    girth,
    aside,
    at: placedIn(frame, turned, [blank.x[node], blank.y[node]]),
    says: `${name}, G ${mm(girth)}, ${way} ${panel.kind === 'cap' ? 'centre line' : 'mid rib'} (WL ${mm(place.waterline)})`,
  }
}

function placeAt(shape: Shape, on: OnSheet, end: Serves['end'], joint: number): Place {
  const [x, y, z] = sheetAt(shape, on).point
  return {
    side: Math.abs(y) < 1e-9 ? 'centre' : y > 0 ? 'right' : 'left',
    station: joint + (end === 'nose' ? -x : x),
    girth: girthDown(shape, on),
    waterline: z,
    end: { which: end, y },
  }
}

function springbackOf(alloy: string, thickness: number, blank: PanelBlank): FormedBlank['springback'] {
  const { Fty, E } = alloyOf(alloy, thickness)
  const elastic = Fty.value / E.value
  const share = shareBelow(blank, elastic)
  const percent = (x: number, digits: number): string => `${(100 * x).toFixed(digits)} %`
  return {
    elastic,
    share,
    says: `${percent(share, 0)} of this blank is stretched by less than the ${percent(elastic, 2)} that springs back${share < 0.005 ? '.' : '; there the shape alone does not set the form: the press must pull the whole sheet past yield.'}`,
  }
}

/** Share of the blank's area where the greater strain is below `limit`: each cell by its middle. */
function shareBelow(blank: PanelBlank, limit: number): number {
  const { across, along, x, y, nodeMajor } = blank
  let [whole, below] = [0, 0]
  for (let j = 0; j < along; j++)
    for (let i = 0; i < across; i++) {
      const a = j * (across + 1) + i
      const [b, c, d] = [a + 1, a + across + 1, a + across + 2]
      const area = Math.abs((x[d] - x[a]) * (y[c] - y[b]) - (y[d] - y[a]) * (x[c] - x[b])) / 2
      whole += area
      if ((nodeMajor[a] + nodeMajor[b] + nodeMajor[c] + nodeMajor[d]) / 4 < limit) below += area
    }
  return below / whole
}

function fieldOf(blank: PanelBlank, frame: Frame, turned: boolean): FormedBlank['field'] {
  const at = blank.x.map((x, k) => placedIn(frame, turned, [x, blank.y[k]]))
  return {
    across: blank.across,
    along: blank.along,
    x: at.map((p) => p[0]),
    y: at.map((p) => p[1]),
    major: blank.nodeMajor,
    minor: blank.nodeMinor,
  }
}
