/**
 * The heavy part: the blank of every distinct panel of an end, from what they depend on and nothing else. About a fifth of a second
 * a panel; the worker runs it, and what it gives is kept under the key of its input.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { type Blank, blankOf } from '../../maths/blank/blank.js'
import { distinctPanels } from './panels.js'
import { type BlanksInput, shapeOf } from './shape.js'

/** A blank's nodes and figures, in its own axes: x down the mid rib, y to the right of travel. m. */
export interface PanelBlank
  extends Pick<
    Blank,
    | 'across'
    | 'along'
    | 'stops'
    | 'x'
    | 'y'
    | 'nodeMajor'
    | 'nodeMinor'
    | 'peakStretch'
    | 'peakShrink'
    | 'meanStretch'
    | 'thinning'
    | 'areaFlat'
    | 'areaFormed'
    | 'iterations'
    | 'converged'
  > {
  readonly panel: string
  /** peak stretch on cells twice the size, which tells how far the peak has settled */
  readonly coarsePeak: number
}

export interface Blanks {
  readonly key: string
  readonly panels: readonly PanelBlank[]
}

export interface Watch {
  readonly onProgress?: (progress: { readonly done: number; readonly of: number; readonly says: string }) => void
  /** asked between panels */
  readonly cancelled?: () => boolean
}

/**
 * Cells across and along. Twice as many both ways move the peak stretch by less than 4 % on every gore of the demonstration coach
 * (see the tests); the peak shrink, in a band of a few centimetres at the edges, still grows by a tenth.
 */
export const MESH = { gore: { across: 16, along: 96 }, cap: { across: 24, along: 24 } } as const

/** Changes when the way blanks are worked out changes, so that nothing kept from before is used. */
const METHOD = 2

/** The name of what the blanks depend on: 64 hex digits. Numbers to 1e-9, so that another engine's last bit changes no key. */
export function blanksKey(input: BlanksInput): string {
  return bytesToHex(sha256(utf8ToBytes(canonical({ method: METHOD, mesh: MESH, input }))))
}

function canonical(value: unknown): string {
  if (typeof value === 'number') return String(Math.round(value * 1e9) / 1e9 + 0)
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  const fields = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${fields.map(([name, below]) => `${JSON.stringify(name)}:${canonical(below)}`).join(',')}}`
}

/** Null when it was cancelled. Throws for a shape that folds: a bug, as the definition has been checked. */
export function computeBlanks(input: BlanksInput, watch: Watch = {}): Blanks | null {
  const distinct = distinctPanels(shapeOf(input))
  const panels: PanelBlank[] = []
  for (const { panel } of distinct) {
    if (watch.cancelled?.()) return null
    watch.onProgress?.({ done: panels.length, of: distinct.length, says: `blank of ${panel.id.replace('-', ' ')}` })
    const mesh = MESH[panel.kind]
    const coarse = blankOf(panel.patch, { across: mesh.across / 2, along: mesh.along / 2 })
    panels.push(kept(panel.id, blankOf(panel.patch, mesh), coarse.peakStretch))
  }
  return Object.freeze({ key: blanksKey(input), panels })
}

/** To a nanometre and a billionth of strain: what is kept and what is worked out afresh must be the same to the last byte. */
function kept(panel: string, blank: Blank, coarsePeak: number): PanelBlank {
  const fine = (list: readonly number[]): number[] => list.map((v) => Math.round(v * 1e9) / 1e9 + 0)
  const { across, along, stops, peakStretch, peakShrink, meanStretch, thinning, areaFlat, areaFormed, iterations, converged } = blank
  const [x, y, nodeMajor, nodeMinor] = [fine(blank.x), fine(blank.y), fine(blank.nodeMajor), fine(blank.nodeMinor)]
  const [peak, shrink, mean, thin, flat, formed, coarse] = fine([
    peakStretch,
    peakShrink,
    meanStretch,
    thinning,
    areaFlat,
    areaFormed,
    coarsePeak,
  ])
  return Object.freeze({
    panel,
    across,
    along,
    stops,
    x,
    y,
    nodeMajor,
    nodeMinor,
    coarsePeak: coarse,
    peakStretch: peak,
    peakShrink: shrink,
    meanStretch: mean,
    thinning: thin,
    areaFlat: flat,
    areaFormed: formed,
    iterations,
    converged,
  })
}
