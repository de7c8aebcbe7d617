/** Runs one command line and says how it ended: 0 well, 1 something fails, 2 it could not be done, 3 a bug. Never a stack trace. */
import { CommanderError } from 'commander'
import { json } from './command.js'
import { programFor } from './program.js'
import { Refused, refusalLine, refuse } from './refused.js'
import type { ExitCode, Terminal } from './terminal.js'

export async function run(args: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = 0
  const program = programFor(terminal, (ended) => {
    code = ended
  })
  try {
    await program.parseAsync([...args], { from: 'user' })
    return code
  } catch (reason) {
    return ended(reason, args.includes('--json'), terminal)
  }
}

function ended(reason: unknown, asJson: boolean, terminal: Terminal): ExitCode {
  if (reason instanceof CommanderError) return usageEnded(reason, asJson, terminal)
  if (reason instanceof Refused) {
    if (asJson) terminal.out(json({ faults: reason.faults }))
    else terminal.err(reason.faults.map(refusalLine).join('\n'))
    return 2
  }
  const says = bugSentence(reason)
  if (asJson) terminal.out(json({ faults: [], bug: says }))
  terminal.err(says)
  return 3
}

/** Help and version end well; a command line that does not read has already been told to a person, but not to a program. */
function usageEnded(reason: CommanderError, asJson: boolean, terminal: Terminal): ExitCode {
  if (reason.exitCode === 0) return 0
  if (asJson) terminal.out(json({ faults: refuse('command line', reason.message.replace(/^error: /, '')).faults }))
  return 2
}

/** A bug in one sentence with what it threw, and who wants to know. */
function bugSentence(reason: unknown): string {
  const what = (reason instanceof Error ? reason.message : String(reason)).replace(/\s+/g, ' ').trim()
  return `Coachwright met something it was not made for and stopped: ${what || 'no reason given'}. This is a fault of the program, not of your definition; send this line and the definition to whoever looks after Coachwright for you.`
}
