/** What a command cannot do, as faults a person can act on. Thrown inside the command room only; ends it with 2. */
import type { Fault } from '../definition/types.js'

/** A fault of a definition, or one of the command line itself, which has no line. */
export type Refusal = Omit<Fault, 'line' | 'column'> & { readonly line: number | null; readonly column: number | null }

export class Refused extends Error {
  readonly faults: readonly Refusal[]
  constructor(faults: readonly Refusal[]) {
    super(faults.map((f) => f.says).join('\n'))
    this.name = 'Refused'
    this.faults = faults
  }
}

/** One sentence about something asked for on the command line. `path` names it: the file, an option, an id. */
export function refuse(
  path: string,
  says: string,
  about: { readonly expected?: string; readonly found?: string; readonly file?: string } = {},
): Refused {
  return new Refused([
    { path, file: about.file ?? '', line: null, column: null, expected: about.expected ?? '', found: about.found ?? '', says },
  ])
}

/** `file:line:column path: sentence`, or the sentence alone where there is no line. */
export function refusalLine(fault: Refusal): string {
  return fault.line === null ? fault.says : `${fault.file}:${fault.line}:${fault.column} ${fault.says}`
}
