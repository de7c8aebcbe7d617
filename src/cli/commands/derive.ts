/** `derive FILE`: the whole design as JSON, or what it comes to in a few sentences. */
import { design } from '../../checks/index.js'
import type { Design } from '../../derive/design.js'
import type { PartKind } from '../../derive/nouns.js'
import { designJson } from '../../documents/json/design-json.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { count, kg, list, mm } from '../say-numbers.js'
import { verdictSentence } from './check.js'

export const deriveCommand: Command<{ readonly json?: boolean }> = (file, options, terminal) => {
  const made = design(openCoach(file).definition)
  terminal.out(options.json ? json(designJson(made)) : deriveText(made, file))
  return 0
}

const KINDS: Readonly<Record<PartKind, readonly [one: string, many: string]>> = {
  strake: ['strake', 'strakes'],
  frame: ['hoop frame', 'hoop frames'],
  'joint-frame': ['joint frame', 'joint frames'],
  stringer: ['stringer', 'stringers'],
  rim: ['rim ring', 'rim rings'],
  header: ['header or sill', 'headers and sills'],
  post: ['post', 'posts'],
  'edge-channel': ['edge channel', 'edge channels'],
  lining: ['lining panel', 'lining panels'],
  'trim-ring': ['trim ring', 'trim rings'],
  gore: ['gore', 'gores'],
  'crown-cap': ['crown cap', 'crown caps'],
  'end-rib': ['end rib', 'end ribs'],
  'header-ring': ['header ring', 'header rings'],
  'end-base': ['base channel', 'base channels'],
  'end-lining': ['end lining panel', 'end lining panels'],
  'floor-panel': ['floor panel', 'floor panels'],
  rail: ['main rail', 'main rails'],
  'cross-member': ['cross-member', 'cross-members'],
  outrigger: ['outrigger', 'outriggers'],
  'wheel-box-header': ['wheel-box header', 'wheel-box headers'],
  'a-frame': ['leg of the A-frame', 'legs of the A-frame'],
  'chassis-plate': ['chassis plate', 'chassis plates'],
  'bay-bearer': ['bearer of a tank', 'bearers of tanks'],
  'wheel-box': ['wheel box', 'wheel boxes'],
  underbelly: ['underbelly sheet', 'underbelly sheets'],
}

function deriveText(made: Design, file: string): string {
  const { coach } = made.definition
  const { totals } = made
  const kinds = new Map<PartKind, number>()
  for (const part of made.parts) kinds.set(part.kind, (kinds.get(part.kind) ?? 0) + 1)
  const stocks = new Map<string, number>()
  for (const sheet of totals.sheets) stocks.set(sheet.stock, (stocks.get(sheet.stock) ?? 0) + 1)
  const heaviest = Object.entries(totals.masses)
    .sort(([, a], [, b]) => b.value - a.value)
    .slice(0, 3)
  return [
    `${coach.name} by ${coach.maker}, revision ${made.revision}, ${coach.date}.`,
    `It is ${mm(totals.overallLength, 0)} long over all, ${mm(totals.bodyLength, 0)} in the body and ${mm(totals.overallWidth, 0)} wide.`,
    `${count(made.parts.length, 'part')}: ${list([...kinds].map(([kind, n]) => count(n, ...KINDS[kind])))}.`,
    `${count(totals.fasteners.solid, 'solid rivet')} and ${count(totals.fasteners.blind, 'blind one')} in ${count(made.rows.length, 'row')}, through ${count(totals.holes, 'hole')} in the flat patterns.`,
    `The barrel's skin takes ${list([...stocks].map(([stock, n]) => `${count(n, 'sheet')} of ${stock}`))}.`,
    `What is derived here weighs ${kg(totals.mass.value)}; most of it ${list(heaviest.map(([kind, m]) => `${KINDS[kind as PartKind][1]} ${kg(m.value)}`))}.`,
    verdictSentence(made.checks),
    '',
    `The whole design as JSON: coachwright derive ${file} --json`,
    `Every check with its margin: coachwright check ${file}`,
    `Not covered yet: ${made.notCovered.map((each) => each.replace(/\.$/, '').replace(/^./, (c) => c.toLowerCase())).join('; ')}.`,
  ].join('\n')
}
