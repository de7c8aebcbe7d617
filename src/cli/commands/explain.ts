/** `explain FILE ID`: the working behind a number; `--list` the ids there are. */

import { designFormulas } from '../../checks/explain/design-formulas.js'
import type { Subject } from '../../checks/explain/entry.js'
import { checkText } from '../../checks/explain/explain-checks.js'
import { explainable, type Working, working } from '../../checks/explain/working.js'
import { design } from '../../checks/index.js'
import { derive } from '../../derive/index.js'
import { createMemo } from '../../derive/memo.js'
import { checksJson } from '../../documents/json/design-json.js'
import { rounded } from '../../documents/json/rounded.js'
import { explain, explainText } from '../../quantity/explain.js'
import type { UnitSystem } from '../../quantity/format.js'
import type { Worked } from '../../quantity/formula.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { refuse } from '../refused.js'

export interface ExplainArguments {
  readonly id: string | undefined
  readonly list?: boolean
  readonly inch?: boolean
  readonly json?: boolean
}

export const explainCommand: Command<ExplainArguments> = (file, { id, list, ...options }, terminal) => {
  if (id === undefined && !list)
    throw refuse('id', `Say which number to explain, such as total.mass; coachwright explain ${file} --list names them all.`)
  const { definition } = openCoach(file)
  const memo = createMemo()
  const subject: Subject = { design: design(definition, memo), derived: derive(definition, memo) }
  if (list) terminal.out(listText(subject, id, options.json === true))
  else terminal.out(workingText(subject, id ?? '', options.json === true, options.inch ? 'inch' : 'metric', file))
  return 0
}

function listText(subject: Subject, under: string | undefined, asJson: boolean): string {
  const ids = explainable(subject).filter((each) => under === undefined || each.id.startsWith(under))
  if (ids.length === 0)
    throw refuse('id', `No id that can be explained starts with ${under}. Leave it out to list them all.`, { found: under ?? '' })
  if (asJson) return json(ids)
  const widest = Math.min(60, Math.max(...ids.map((each) => each.id.length)))
  return ids.map(({ id, says }) => `${id.padEnd(widest)}  ${says}`).join('\n')
}

function workingText(subject: Subject, id: string, asJson: boolean, units: UnitSystem, file: string): string {
  const found = working(subject, id)
  if (found.kind === 'none') {
    const near = found.near.length ? ` Try ${found.near.join(', ')}.` : ` coachwright explain ${file} --list names them all.`
    throw refuse('id', `${found.says}${near}`, { expected: 'an id of explain --list', found: id })
  }
  return asJson ? json(rounded(workingJson(found, units))) : whole(found, units)
}

type Found = Exclude<Working, { readonly kind: 'none' }>

function workingJson(found: Found, units: UnitSystem): object {
  const { id, says } = found
  if (found.kind === 'check') {
    const [check] = checksJson([found.check])
    return { id, says, check, text: whole(found, units), workings: found.check.worked.map((w) => explain(w, designFormulas, units)) }
  }
  const { value, unit } = found.worked
  return { id, says, value, unit, text: whole(found, units), working: explain(found.worked, designFormulas, units) }
}

function whole(found: Found, units: UnitSystem): string {
  if (found.kind === 'number') return [`${found.id}: ${found.says}`, '', shortText(found.worked, units)].join('\n')
  const workings = found.check.worked.map((w) => shortText(w, units))
  return [`${found.id}`, '', ...checkText(found.check, units), ...workings.flatMap((text) => ['', text])].join('\n')
}

/** More links than this are not read by anybody at once: the first is shown with where to find the others. */
const MOST_LINKS = 12

function shortText(worked: Worked, units: UnitSystem): string {
  if (linksOf(worked) <= MOST_LINKS) return explainText(worked, designFormulas, units)
  const bare: Worked = {
    ...worked,
    inputs: Object.fromEntries(Object.entries(worked.inputs).map(([name, it]) => [name, typeof it === 'number' ? it : it.value])),
  }
  return `${explainText(bare, designFormulas, units)}\n  Each of these has its own working: ask for its id (explain --list), or for all of it with --json.`
}

function linksOf(worked: Worked): number {
  return Object.values(worked.inputs).reduce<number>((sum, it) => sum + (typeof it === 'number' ? 0 : linksOf(it)), 1)
}
