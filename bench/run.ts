/**
 * Measures the speed budgets and says how each stands.
 *
 *   npm run bench                 every bench
 *   npm run bench -- edit packet  those whose id holds one of these words
 *   npm run bench -- --write      keeps the figures in bench/last.json
 *   npm run bench -- --ci         ends with 1 when a figure is over three times its budget
 */
import { writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { BENCHES } from './benches.js'
import { type Bench, type Figure, fails, measure, sentence } from './measure.js'

const flags = new Set(process.argv.slice(2).filter((word) => word.startsWith('--')))
const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const chosen = BENCHES.filter((bench) => asked.length === 0 || asked.some((word) => bench.id.includes(word)))

function tryMeasure(bench: Bench): Figure | null {
  try {
    const figure = measure(bench, flags.has('--ci'))
    console.log(sentence(figure))
    return figure
  } catch (error) {
    console.log(`${bench.says}: could not be measured. ${error instanceof Error ? error.message : String(error)}`)
    return null
  }
}

const results = chosen.map(tryMeasure)
const figures = results.filter((figure) => figure !== null)
if (chosen.length === 0) console.log(`No bench is named ${asked.join(' or ')}. There are: ${BENCHES.map((bench) => bench.id).join(', ')}`)

if (flags.has('--write') && asked.length > 0) console.log('bench/last.json is left as it was: --write keeps all the benches or none.')
if (flags.has('--write') && asked.length === 0) {
  const kept = { node: process.version, cores: availableParallelism(), figures: figures.map(({ says: _, ...figure }) => figure) }
  writeFileSync(new URL('last.json', import.meta.url), `${JSON.stringify(kept, null, 2)}\n`)
}

const isBroken = chosen.length === 0 || figures.length < results.length
if (isBroken || (flags.has('--ci') && figures.some(fails))) process.exitCode = 1
