/** The derived design as one plain tree, as `derive --json` prints it. Its form is described in design-schema.ts. */
import type { Design } from '../../derive/design.js'
import { fastenerId, holesOf, placeOf, rowsById } from '../../derive/holes.js'
import type { Check, FastenerRow, OpeningDerived, Part, Pattern } from '../../derive/nouns.js'
import type { DesignJson } from './design-schema.js'
import { roadJson } from './road-json.js'
import { rounded } from './rounded.js'
import { underJson } from './under-json.js'
import { weightJson } from './weight-json.js'

export function designJson(design: Design): DesignJson {
  const { definition: d, section, totals } = design
  const derived = new Set(design.openings.map((o) => o.id))
  const made = new Set(design.parts.map((p) => p.id))
  return rounded<DesignJson>({
    coach: {
      name: d.coach.name,
      family: d.coach.family,
      maker: d.coach.maker,
      market: d.coach.market,
      date: d.coach.date,
      revision: design.revision,
      schema: d.schema,
    },
    shell: {
      section: {
        points: [...section.points],
        halfGirth: section.halfGirth,
        floorGirth: section.floorGirth,
        width: section.width,
        residual: section.residual?.value ?? null,
      },
      frames: d.frames.map(({ id, station, joint }) => ({ id, station, joint })),
    },
    ends: { ...design.ends, edges: [...design.ends.edges], ribs: [...design.ends.ribs] },
    parts: design.parts.map((part) => partJson(design, part)),
    bolts: design.bolts.map(rowJson),
    under: underJson(design.under),
    joints: design.joints.map((joint) => ({
      id: joint.id,
      says: joint.says,
      stack: joint.layers.map((layer) => ({ ...layer, parts: [...layer.parts], derived: layer.parts.every((id) => made.has(id)) })),
      lap: joint.lap,
      rows: joint.rows.map((id) => rowJson(rowNamed(design, id))),
    })),
    openings: design.openings.map((o) => openingJson(design, o)),
    openingsNotDerived: d.openings.filter((o) => !derived.has(o.id)).map(({ id, says, surface }) => ({ id, says, surface })),
    checks: design.checks.map(checkTree),
    totals: {
      mass: totals.mass.value,
      masses: Object.fromEntries(Object.entries(totals.masses).map(([kind, mass]) => [kind, mass.value])),
      explain: { mass: 'total.mass', masses: Object.fromEntries(Object.keys(totals.masses).map((kind) => [kind, `total.mass.${kind}`])) },
      fasteners: { solid: totals.fasteners.solid, blind: totals.fasteners.blind, byLength: { ...totals.fasteners.byLength } },
      holes: totals.holes,
      sheets: totals.sheets.map((s) => ({ ...s, parts: [...s.parts] })),
      overallLength: totals.overallLength,
      bodyLength: totals.bodyLength,
      overallWidth: totals.overallWidth,
    },
    ...weightJson(design),
    ...roadJson(design),
    notCovered: [...design.notCovered],
  })
}

function rowNamed(design: Design, id: string): FastenerRow {
  const row = rowsById(design.rows).get(id)
  if (!row) throw new Error(`a joint names the unknown row ${id}`)
  return row
}

type PartJson = DesignJson['parts'][number]
type FaceJson = PartJson['faces'][number]
type Corner = [number, number, number]

function partJson(design: Design, part: Part): PartJson {
  const [first, ...further] = part.patterns
  if (!first && !part.notComputed) throw new Error(`part ${part.id} has no flat pattern and does not say why`)
  const { thickness: _, ...main } = first ? faceJson(design, part, first) : NO_FACE
  return {
    id: part.id,
    says: part.says,
    trade: part.trade,
    kind: part.kind,
    side: part.side,
    place: part.place,
    material: part.material,
    thickness: part.thickness.value,
    thicknessName: part.thickness.name,
    ...main,
    faces: further.map((pattern) => faceJson(design, part, pattern)),
    mass: part.mass.value,
    area: part.area,
    centre: [...part.centre],
    stock: part.stock,
    pieces: part.pieces,
    notes: [...part.notes],
    notComputed: part.notComputed ?? null,
  }
}

/** Stands where a flat pattern has still to be worked out: nothing, never a zero. */
const NO_FACE = { face: null, flat: null, thickness: 0, outline: [], cuts: [], cutsFor: [], marks: [], holes: [] }

function faceJson(design: Design, part: Part, pattern: Pattern): FaceJson {
  return {
    face: pattern.face,
    flat: pattern.flat,
    thickness: pattern.thickness,
    outline: pattern.outline as unknown as Corner[],
    cuts: pattern.cuts.map((cut) => cut.outline as unknown as Corner[]),
    cutsFor: pattern.cuts.map((cut) => cut.opening),
    marks: pattern.marks as unknown as FaceJson['marks'],
    holes: holesOf(design, part, pattern),
  }
}

function rowJson(row: FastenerRow): DesignJson['joints'][number]['rows'][number] {
  const usual = row.stacks.reduce((a, b) => (b.count > a.count ? b : a))
  return {
    id: row.id,
    says: row.says,
    kind: row.kind,
    fastener: row.fastener,
    diameter: row.diameter,
    pitch: row.pitch,
    fitted: row.spans.map(({ from, to, count, spaces, pitch }) => ({ from, to, count, spaces, pitch })),
    length: usual.length,
    lengths: row.stacks.map(({ name, length, grip, count, parts }) => ({ name, length, grip, count, parts: [...parts] })),
    count: row.station.length,
    source: row.source,
    places: row.station.map((_, i) => ({
      id: fastenerId(row, i),
      ...placeOf(row, i),
      stack: row.stack[i],
      ...(row.shared[i] ? { shared: [...row.shared[i]] } : {}),
    })),
  }
}

function openingJson(design: Design, o: OpeningDerived): DesignJson['openings'][number] {
  const written = design.definition.openings.find((each) => each.id === o.id)
  return {
    id: o.id,
    says: o.says,
    kind: written?.kind ?? 'wheel',
    surface: o.surface,
    side: o.side,
    place: o.place,
    width: written?.width ?? null,
    height: written?.height ?? null,
    corner: written?.corner ?? design.definition.gear?.wheelOpening.corner ?? null,
    mass: written?.mass ?? null,
    outline: o.outline as unknown as Corner[],
    open: o.open,
    cutIn: [...o.cutIn],
    rim: { ...o.rim },
    lining: [...o.lining],
    trimRing: o.trimRing,
    framing: [...o.framing],
    cutsFrames: [...o.cutsFrames],
    crossesSeams: [...o.crossesSeams],
    blanket: o.blanket.map(({ bay, from, to }) => ({ bay, from: [...from], to: [...to] })),
    ...(o.end ? { end: { ...o.end, loop: o.end.loop.map((p) => [...p] as Corner) } } : {}),
  }
}

type CheckJson = DesignJson['checks'][number]

function checkTree({ worked: _, places, concerns, ...rest }: Check): CheckJson {
  return { ...rest, places: [...places], concerns: [...concerns] }
}

/** Checks alone, rounded as everywhere. */
export function checksJson(checks: readonly Check[]): readonly CheckJson[] {
  return rounded(checks.map(checkTree))
}
