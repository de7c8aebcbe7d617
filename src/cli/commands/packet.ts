/** `packet FILE --out DIR`: writes the build packet, saying how far it is; Ctrl-C leaves what was there before. */
import { relative } from 'node:path'
import { design } from '../../checks/index.js'
import { createMemo } from '../../derive/memo.js'
import { type Command, json } from '../command.js'
import { makePacket, type PacketArguments } from '../make-packet.js'
import { openCoach } from '../open-coach.js'
import { Refused } from '../refused.js'
import { count } from '../say-numbers.js'
import { blanksOf } from '../studies/blanks-of.js'
import type { StudyProgress } from '../studies/studies.js'
import type { Terminal } from '../terminal.js'
import type { PacketProgress } from '../write-packet.js'
import { verdictSentence } from './check.js'

export const packetCommand: Command<PacketArguments & { readonly json?: boolean }> = async (file, options, terminal) => {
  const { definition } = openCoach(file)
  const stop = new AbortController()
  const onStop = (): void => stop.abort()
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, onStop)
  const progress = progressLine(terminal)
  try {
    // blanks are worked out in their own thread while the design is checked; with one memo nothing is derived twice
    const memo = createMemo()
    const isFormed = definition.ends.make === 'formed'
    const blanks = isFormed ? blanksOf(definition, { onProgress: progress.wait, signal: stop.signal }, memo) : undefined
    // should the checks throw first, nobody is left to hear of the blanks
    blanks?.catch(() => undefined)
    const made = design(definition, memo)
    const {
      folder,
      documents,
      bytes,
      design: drawn,
    } = await makePacket(made, options, {
      onProgress: progress.show,
      blanks,
      memo,
      signal: stop.signal,
    })
    progress.clear()
    const { coach } = made.definition
    if (options.json) terminal.out(json({ folder, coach: { name: coach.name, revision: made.revision }, documents, bytes }))
    else {
      const where = relative(process.cwd(), folder) || '.'
      terminal.out(
        [
          `${coach.name}, revision ${made.revision}: ${count(documents.length, 'document')}, ${(bytes / 1e6).toFixed(1)} MB, written to ${where}. Open ${where}/cover.pdf first.`,
          verdictSentence(drawn.checks),
        ].join('\n'),
      )
    }
    return 0
  } catch (reason) {
    progress.clear()
    if (!(reason instanceof Refused && stop.signal.aborted)) throw reason
    terminal.err('Stopped. Nothing was changed.')
    return 130
  } finally {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.off(signal, onStop)
  }
}

/** One line written over itself where a person watches; a line every quarter where a log does. */
export function progressLine(terminal: Terminal): {
  show: (p: PacketProgress) => void
  wait: (p: StudyProgress) => void
  clear: () => void
} {
  let quarter = 0
  return {
    show: ({ done, of, path }) => {
      if (terminal.isWatched) terminal.err(`\r${`${done} of ${of}  ${path}`.slice(0, 78).padEnd(78)}`)
      else if (Math.floor((4 * done) / of) > quarter) {
        quarter = Math.floor((4 * done) / of)
        terminal.err(`${done} of ${of} documents written`)
      }
    },
    wait: ({ done, of, says }) => {
      if (terminal.isWatched) terminal.err(`\r${`${done + 1} of ${of}  ${says}`.padEnd(78)}`)
    },
    clear: () => {
      if (terminal.isWatched) terminal.err(`\r${''.padEnd(78)}\r`)
    },
  }
}
