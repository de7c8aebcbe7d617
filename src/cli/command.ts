/** What every command gets and gives. */
import type { ExitCode, Terminal } from './terminal.js'

export type Command<Options> = (file: string, options: Options, terminal: Terminal) => ExitCode | Promise<ExitCode>

/** One line of JSON: whatever reads it can lay it out, and it is written twice as fast. */
export const json = (value: unknown): string => JSON.stringify(value)
