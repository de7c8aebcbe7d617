/** npm start: derives the Sedge 6 demonstration coach, writes its packet to packet/sedge-6/ and says in a few lines what came of it. */
import { relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { design } from '../src/checks/index.js'
import { progressLine } from '../src/cli/commands/packet.js'
import { makePacket } from '../src/cli/make-packet.js'
import { openCoach } from '../src/cli/open-coach.js'
import { Refused, refusalLine } from '../src/cli/refused.js'
import { count, kg, list } from '../src/cli/say-numbers.js'
import { processTerminal } from '../src/cli/terminal.js'
import type { Design } from '../src/derive/design.js'
import { verdictCounts, worstFirst } from '../src/documents/sheets/checks-list.js'

const at = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url))
/** Failing checks named in the summary; the rest are in the packet. */
const MOST = 3

async function start(): Promise<void> {
  const terminal = processTerminal()
  const made = design(openCoach(at('examples/sedge-6.yaml')).definition)
  const progress = progressLine(terminal)
  const stop = new AbortController()
  process.once('SIGINT', () => stop.abort())
  const { folder, documents } = await makePacket(
    made,
    { out: at('packet/sedge-6') },
    { onProgress: progress.show, signal: stop.signal },
  ).finally(progress.clear)
  terminal.out(
    [
      ...summary(made),
      '',
      `The packet, ${count(documents.length, 'document')}: ${relative(process.cwd(), folder)}/`,
      `Start with its cover: ${relative(process.cwd(), folder)}/cover.pdf`,
    ].join('\n'),
  )
}

function summary(made: Design): readonly string[] {
  const { coach } = made.definition
  const { totals } = made
  const n = verdictCounts(made.checks)
  const stocks = new Map<string, number>()
  for (const { stock } of totals.sheets) stocks.set(stock, (stocks.get(stock) ?? 0) + 1)
  const failing = worstFirst(made.checks).filter((c) => c.verdict === 'fail')
  return [
    `${coach.name} by ${coach.maker}, revision ${made.revision}`,
    '',
    `  ${count(made.parts.length, 'part')}, ${count(totals.fasteners.solid, 'solid rivet')}, ${count(totals.fasteners.blind, 'blind rivet')}, ${count(totals.holes, 'hole')} in the flat patterns`,
    `  skin from ${list([...stocks].map(([stock, k]) => `${k} sheets of ${stock}`))}`,
    `  ${kg(totals.mass.value)} of shell derived here`,
    `  ${count(n.pass, 'check')} pass, ${n.caution} to look at with care, ${n.fail === 0 ? 'none fail' : `${n.fail} FAIL`}, ${n['not-checked']} not checked`,
    ...failing.slice(0, MOST).map((c) => `    FAIL  ${c.says}`),
    ...(failing.length > MOST ? [`    and ${failing.length - MOST} more`] : []),
  ]
}

try {
  await start()
} catch (reason) {
  if (!(reason instanceof Refused)) throw reason
  console.error(reason.faults.map(refusalLine).join('\n'))
  process.exitCode = 2
}
