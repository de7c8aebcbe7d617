/** Runs every validation case and writes validation/REPORT.md; ends with 1 when any fails. */
import { writeFileSync } from 'node:fs'
import { reportText, runAll } from '../validation/report.js'

const outcomes = runAll()
writeFileSync(new URL('../validation/REPORT.md', import.meta.url), reportText(outcomes))
const failed = outcomes.filter((each) => !each.pass)
for (const { it, ours } of failed) console.error(`${it.case}: expected ${it.expected} ${it.unit} (${it.source}, ${it.at}), ours is ${ours}`)
console.log(`${outcomes.length - failed.length} figures agree, ${failed.length} do not; written to validation/REPORT.md`)
process.exitCode = failed.length > 0 ? 1 : 0
