/** The command. What it can do is told in program.ts; here is only how it starts and how it ends. */
import { run } from './run.js'
import { processTerminal } from './terminal.js'

// the exit code is set rather than exited with, so that a long output is written to its end
process.exitCode = await run(process.argv.slice(2), processTerminal())
