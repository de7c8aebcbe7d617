/** npm start: opens the desk on the Sedge 6 demonstration coach. Words after `npm start --` are those of `coachwright open`. */
import { run } from '../src/cli/run.js'
import { processTerminal } from '../src/cli/terminal.js'

process.exitCode = await run(['open', ...process.argv.slice(2)], processTerminal())
