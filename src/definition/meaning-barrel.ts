/** Frames, seams, strakes and lining: are they in order, on the section, and made of what the shop buys? */
import { girthAtOffset, girthAtZ, girthFromOffset, type TangentChain } from '../maths/tangent-chain.js'
import type { Draft } from './definition-form.js'
import type { Reading } from './faults.js'
import { didYouMean, oneOf } from './near-miss.js'
import { deg, mm } from './say-size.js'
import type { StockSize } from './types.js'
import { type Path, whereIs } from './written.js'

type Items<T> = readonly (T | undefined)[]
type Seams = Items<{ readonly id: string | undefined; readonly girth: number | undefined }>

/** Where the barrel begins and ends, m; null while a frame has a fault. */
export function barrelSpan(draft: Draft): { readonly from: number; readonly to: number } | null {
  const stations = (draft.frames ?? []).map((f) => f?.station)
  if (stations.length < 2 || stations.some((s) => s === undefined)) return null
  return { from: Math.min(...(stations as number[])), to: Math.max(...(stations as number[])) }
}

export function barrelFaults(draft: Draft, chain: TangentChain | null, reading: Reading): void {
  frameFaults(draft, reading)
  const { shell, lining } = draft
  if (shell?.seams) seamFaults(shell.seams, ['shell', 'seams'], lapOn(chain, shell.lap, 0), chain?.length, 'the toe', reading)
  const floorGap = lining?.floorGap
  const liningEnd = chain && floorGap !== undefined ? girthAtZ(chain, floorGap) : null
  if (chain && floorGap !== undefined && liningEnd === null) {
    const because = `the lining would stop at waterline ${mm(floorGap)}, above the whole section`
    reading.impossible(['lining', 'floor gap'], { expected: 'a gap inside the section', because, advice: 'Make the gap smaller.' })
  }
  if (lining?.seams)
    seamFaults(
      lining.seams,
      ['lining', 'seams'],
      lapOn(chain, lining.lap, liningDepth(draft)),
      liningEnd ?? undefined,
      'the lower edge of the lining',
      reading,
    )
  strakeFaults(draft, reading)
  liningJointFaults(draft, reading)
  profileFaults(draft, reading)
  toeFaults(draft, reading)
}

/** Items written in one file must stand in order; an item another file adds takes its place by its size. */
export function orderFaults(values: Items<number>, pathOf: (i: number) => Path, name: (i: number) => string, reading: Reading): boolean {
  const last = new Map<string, number>()
  let wrong = false
  values.forEach((value, i) => {
    if (value === undefined) return
    const file = whereIs(reading.root, pathOf(i)).file
    const j = last.get(file)
    if (j !== undefined && value <= (values[j] as number)) {
      wrong = true
      const because = `${mm(value)} is not beyond ${name(j)} before it, at ${mm(values[j] as number)}`
      reading.impossible(pathOf(i), { expected: `more than ${mm(values[j] as number)}`, because, advice: 'Put them in order.' })
    }
    last.set(file, i)
  })
  return wrong
}

/** Item numbers by growing value; null while one of them is missing. */
function inOrder(values: Items<number>): number[] | null {
  if (values.some((v) => v === undefined)) return null
  return values.map((_, i) => i).sort((a, b) => (values[a] as number) - (values[b] as number))
}

function frameFaults(draft: Draft, reading: Reading): void {
  const frames = draft.frames
  if (!frames) return
  const stations = frames.map((f) => f?.station)
  const name = (i: number): string => frames[i]?.id ?? 'the frame'
  const disordered = orderFaults(stations, (i) => ['frames', i, 'station'], name, reading)
  const order = disordered ? null : inOrder(stations)
  if (!order) return
  const flange = (i: number): number | undefined => (frames[i]?.joint ? draft.shell?.jointFrame?.flange : draft.shell?.frame?.flange)
  order.slice(1).forEach((i, n) => {
    const before = order[n]
    const [a, b] = [flange(before), flange(i)]
    const apart = (stations[i] as number) - (stations[before] as number)
    if (a === undefined || b === undefined || apart >= (a + b) / 2) return
    const because = `${name(before)} stands ${mm(apart)} away, and their flanges would lie on each other`
    reading.impossible(['frames', i, 'station'], {
      expected: `at least ${mm((a + b) / 2)} from ${name(before)}`,
      because,
      advice: 'Move one of the two.',
    })
  })
  jointFaults(draft, order, reading)
}

function jointFaults(draft: Draft, order: readonly number[], reading: Reading): void {
  const frames = draft.frames ?? []
  if (frames.some((f) => !f || f.joint === undefined)) return
  for (const [joint, end, word] of [
    ['nose', order[0], 'first'],
    ['tail', order[order.length - 1], 'last'],
  ] as const) {
    if (frames[end]?.joint === null) {
      const advice = `Write joint: ${joint} on it.`
      reading.impossible(['frames', end], {
        expected: `joint: ${joint} on the ${word} frame`,
        because: `the ${word} frame is where the ${joint} meets the barrel`,
        advice,
      })
    }
    frames.forEach((f, i) => {
      if (f?.joint !== joint || i === end) return
      const because = `only the ${word} frame meets the ${joint}, and this one is not the ${word}`
      reading.impossible(['frames', i, 'joint'], {
        expected: `joint: ${joint} on the ${word} frame`,
        because,
        advice: 'Take the joint away here, or look at the stations.',
      })
    })
  }
}

/** A lap's width, and where its edges lie on the mould line when its middle lies at a girth. m */
interface LapReach {
  readonly lap: number
  readonly edges: (girth: number) => readonly [upper: number, lower: number]
}

/** A lap is measured on its own sheet: inside a curve it reaches further on the mould line. */
function lapOn(chain: TangentChain | null, lap: number | undefined, depth: number): LapReach | null {
  if (lap === undefined) return null
  if (!chain || depth === 0) return { lap, edges: (girth) => [girth - lap / 2, girth + lap / 2] }
  return {
    lap,
    edges: (girth) => {
      const middle = girthAtOffset(chain, girth, depth)
      return [girthFromOffset(chain, middle - lap / 2, depth), girthFromOffset(chain, middle + lap / 2, depth)]
    },
  }
}

/** Depth of the lining's middle inside the mould line, m; 0 while it cannot be told. */
function liningDepth({ shell, lining }: Draft): number {
  const parts = [shell?.skin?.thickness?.value, shell?.frame?.height, shell?.tape, lining?.thickness && lining.thickness.value / 2]
  return parts.every((p) => p !== undefined) ? parts.reduce<number>((sum, p) => sum + (p as number), 0) : 0
}

function seamFaults(seams: Seams, path: Path, reach: LapReach | null, end: number | undefined, endName: string, reading: Reading): void {
  const girths = seams.map((s) => s?.girth)
  const pathOf = (i: number): Path => [...path, i, 'girth']
  const name = (i: number): string => seams[i]?.id ?? 'the seam'
  if (orderFaults(girths, pathOf, name, reading) || reach === null) return
  const { lap, edges } = reach
  const order = inOrder(girths)
  order?.forEach((i, n) => {
    const girth = girths[i] as number
    const before = n > 0 ? (girths[order[n - 1]] as number) : -girth
    const [upper, lower] = edges(girth)
    const above = n > 0 ? edges(before)[1] : -upper
    if (end !== undefined && lower >= end) {
      const because = `the lap reaches to girth ${mm(lower)}, off the section, which ends at ${endName} at ${mm(end)}`
      reading.impossible(pathOf(i), {
        expected: `a girth below ${mm(end - (lower - girth))}`,
        because,
        advice: `Write less than ${mm(end - (lower - girth))}.`,
      })
    } else if (upper <= above) {
      const other = n > 0 ? name(order[n - 1]) : 'the same seam on the other side'
      const because = `${other} is only ${mm(girth - before)} away, and the two laps of ${mm(lap)} would lie on each other`
      reading.impossible(pathOf(i), {
        expected: `more than ${mm(lap)} between seams`,
        because,
        advice: 'Move one of them, or make the lap narrower.',
      })
    }
  })
}

function strakeFaults(draft: Draft, reading: Reading): void {
  const { seams, strakes } = draft.shell ?? {}
  if (seams && strakes && strakes.length !== seams.length + 1) {
    const because = `${seams.length} seams make ${seams.length + 1} strakes, but ${strakes.length} are given`
    reading.impossible(['shell', 'strakes'], {
      expected: `${seams.length + 1} strakes`,
      found: String(strakes.length),
      because,
      advice: 'Add or remove a strake or a seam.',
    })
  }
  const bought = draft.stock?.sheets
  for (const [i, s] of (strakes ?? []).entries()) stockFault(s?.stock, bought, ['shell', 'strakes', i, 'stock'], reading)
  stockFault(draft.lining?.stock, bought, ['lining', 'stock'], reading)
}

function stockFault(stock: StockSize | undefined, bought: Items<StockSize> | undefined, path: Path, reading: Reading): void {
  if (!stock || !bought || bought.some((b) => !b)) return
  const sizes = bought as readonly StockSize[]
  const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6
  if (sizes.some((b) => same(b.width, stock.width) && same(b.length, stock.length))) return
  const names = sizes.map((b) => b.name)
  reading.wrong(path, {
    expected: `a size listed under stock sheets (${oneOf(names)})`,
    advice: didYouMean(stock.name, names) || 'Add it to stock sheets if the shop buys it.',
  })
}

function liningJointFaults(draft: Draft, reading: Reading): void {
  const { frames } = draft
  const span = barrelSpan(draft)
  const joints = draft.lining?.joints
  if (!frames || !joints || frames.some((f) => f?.id === undefined)) return
  const ids = frames.map((f) => f?.id as string)
  joints.forEach((joint, i) => {
    if (joint === undefined) return
    const path = ['lining', 'joints', i]
    const frame = frames.find((f) => f?.id === joint)
    if (!frame) reading.wrong(path, { expected: 'the id of a frame', advice: didYouMean(joint, ids) || `The frames are ${oneOf(ids)}.` })
    else if (span && (frame.station === span.from || frame.station === span.to)) {
      reading.impossible(path, {
        expected: 'a frame between the joint frames',
        because: `the lining ends at ${joint} anyway, it is a joint frame`,
        advice: 'Take it out.',
      })
    } else if (joints.indexOf(joint) < i) {
      reading.impossible(path, { expected: 'each frame once', because: `${joint} is in the list already`, advice: 'Take it out.' })
    }
  })
}

function profileFaults(draft: Draft, reading: Reading): void {
  const { frame, joint } = draft.shell ?? {}
  if (frame?.rowOffset !== undefined && frame.flange !== undefined && frame.rowOffset >= frame.flange / 2) {
    const because = `a row ${mm(frame.rowOffset)} from the web is off the flange, which reaches ${mm(frame.flange / 2)}`
    reading.impossible(['shell', 'frame', 'row offset'], {
      expected: `less than ${mm(frame.flange / 2)}`,
      because,
      advice: 'Move the row in, or widen the flange.',
    })
  }
  if (joint?.overlap !== undefined && joint.rowSpacing !== undefined && joint.rowSpacing >= joint.overlap) {
    const because = `two rows ${mm(joint.rowSpacing)} apart do not fit in an overlap of ${mm(joint.overlap)}`
    reading.impossible(['shell', 'joint', 'row spacing'], {
      expected: `less than ${mm(joint.overlap)}`,
      because,
      advice: 'Bring the rows together, or widen the overlap.',
    })
  }
}

/** A flange must be longer than what its bend takes up of it, measured on the sheet's outer face. */
function toeFaults(draft: Draft, reading: Reading): void {
  const { flange, turn, bendRadius } = draft.shell?.toe ?? {}
  const skin = draft.shell?.skin?.thickness?.value
  if (flange === undefined || turn === undefined || bendRadius === undefined || skin === undefined || turn === 0) return
  if (Math.abs(turn) >= Math.PI) {
    const because = `turned by ${deg(turn)} the flange would lie on its own sheet`
    reading.impossible(['shell', 'toe', 'turn'], { expected: 'a turn of less than 180 deg', because, advice: 'Write a smaller angle.' })
    return
  }
  const setback = (turn > 0 ? bendRadius + skin : bendRadius) * Math.tan(Math.abs(turn) / 2)
  if (flange > setback) return
  const because = `a bend of ${deg(turn)} with an inside radius of ${mm(bendRadius)} takes up ${mm(setback)} of it, so nothing is left to rivet`
  reading.impossible(['shell', 'toe', 'flange'], {
    expected: `more than ${mm(setback)}`,
    because,
    advice: 'Widen the flange, or bend it less or tighter.',
  })
}
