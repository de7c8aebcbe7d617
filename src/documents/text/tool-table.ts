/** The punches in a shop's turret: data a shop edits. Which tool makes which hole. Diameters m. */

export interface Tool {
  /** station in the turret or number of the tool */
  readonly tool: number
  readonly says: string
  readonly diameter: number
}

export type ToolTable = readonly Tool[]

/** Places to start from, not anybody's machine: common practice, no source. A shop writes its own. */
export const DEFAULT_TOOLS: ToolTable = [
  { tool: 1, says: 'pilot 2.5', diameter: 0.0025 },
  { tool: 2, says: 'round 3.3', diameter: 0.0033 },
  { tool: 3, says: 'round 4.1', diameter: 0.0041 },
]

/** A punch within this of the wanted hole makes it, m: half the step between number-drill sizes near 1/8 in. Our choice. */
const SAME_SIZE = 0.00003

/** The tool for a hole, or null when the table has none: the caller says so, it never takes the next best. */
export function toolFor(tools: ToolTable, diameter: number): Tool | null {
  return tools.find((t) => Math.abs(t.diameter - diameter) <= SAME_SIZE) ?? null
}
