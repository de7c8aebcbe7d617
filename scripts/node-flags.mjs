/** What Node is told when it runs the program, as package.json has it: benches and tests run it just so. See docs/decisions/0012. */
import { readFileSync } from 'node:fs'

const { scripts } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'))
const LINE = /node (--.*) scripts\/run\.mjs/

/** Of every script that runs the program, by its name. */
export const flagsOf = Object.fromEntries(
  Object.entries(scripts)
    .filter(([, line]) => line.includes('scripts/run.mjs'))
    .map(([name, line]) => [name, LINE.exec(line)?.[1].split(' ') ?? []]),
)

export const NODE_FLAGS = flagsOf.coachwright
