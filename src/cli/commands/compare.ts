/** `compare OLD NEW`: everything that changes from one definition to the other, most consequential first. */
import { design } from '../../checks/index.js'
import { shareUnchanged } from '../../definition/share-unchanged.js'
import type { Definition } from '../../definition/types.js'
import { createMemo } from '../../derive/memo.js'
import { changeNote } from '../../ripple/change-note.js'
import { compare } from '../../ripple/compare.js'
import { rippleJson } from '../../ripple/ripple-json.js'
import { rippleText } from '../../ripple/ripple-text.js'
import { json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { pdfOf, writeNamed } from '../pages-file.js'
import { type Refusal, Refused, refuse } from '../refused.js'
import type { ExitCode, Terminal } from '../terminal.js'

export interface CompareArguments {
  readonly inch?: boolean
  readonly json?: boolean
  /** file of the change note, a PDF */
  readonly note?: string
}

/** Ends with 0 where the two are one revision, 1 where they differ. Throws Refused with the faults of both. */
export async function compareCommand(old: string, now: string, options: CompareArguments, terminal: Terminal): Promise<ExitCode> {
  const { note } = options
  if (note !== undefined && !/\.pdf$/i.test(note))
    throw refuse('--note', `${note} should end in .pdf: a change note is printed.`, { found: note })
  const [before, after] = openBoth(old, now)
  const units = options.inch ? 'inch' : 'metric'
  // one memo, so that what the two share is derived once and passed over as the very same objects
  const memo = createMemo()
  const [was, is] = [design(before, memo), design(shareUnchanged(before, after), memo)]
  const ripple = compare(was, is, { units })
  if (note !== undefined) writeNamed('--note', note, await pdfOf(is, changeNote(ripple, is, {}, { units }), 'Change note'))
  terminal.out(options.json ? json(rippleJson(ripple)) : rippleText(ripple, units).join('\n'))
  return ripple.equal ? 0 : 1
}

function openBoth(...files: readonly [string, string]): readonly [Definition, Definition] {
  const faults: Refusal[] = []
  const opened = files.map((file) => {
    try {
      return openCoach(file).definition
    } catch (reason) {
      if (!(reason instanceof Refused)) throw reason
      faults.push(...reason.faults)
      return null
    }
  })
  const [before, after] = opened
  if (!before || !after) throw new Refused(faults)
  return [before, after]
}
