/** `weight FILE`: every load case against every limit, what may still be added where, and what something added would do. */
import { design } from '../../checks/index.js'
import { type Put, roomFor, withAdded } from '../../checks/weight/added.js'
import { reconcile } from '../../checks/weight/scales.js'
import { readScales } from '../../definition/scales-form.js'
import type { Definition } from '../../definition/types.js'
import type { Design } from '../../derive/design.js'
import type { WeightDerived } from '../../derive/weight-nouns.js'
import { rounded } from '../../documents/json/rounded.js'
import { weightJson } from '../../documents/json/weight-json.js'
import { scalesText } from '../../documents/text/scales-text.js'
import { weightText } from '../../documents/text/weight-text.js'
import { parseQuantity } from '../../quantity/doors.js'
import { type Command, json } from '../command.js'
import { openCoach } from '../open-coach.js'
import { openText } from '../open-text.js'
import { Refused, refuse } from '../refused.js'
import { count } from '../say-numbers.js'
import type { ExitCode, Terminal } from '../terminal.js'

export interface WeightArguments {
  readonly add?: readonly string[]
  readonly scales?: string
  readonly listOnly?: boolean
  readonly inch?: boolean
  readonly json?: boolean
}

export const weightCommand: Command<WeightArguments> = (file, options, terminal) => {
  const { definition } = openCoach(file)
  const coach = options.listOnly ? alone(definition) : definition
  const put = (options.add ?? []).map(readPut)
  const first = design(coach)
  const before = weighed(first)
  if (options.scales !== undefined) return onScales(before, coach.coach.name, options.scales, options, terminal)
  const made = put.length === 0 ? null : design(withAdded(coach, put))
  const after = made ? weighed(made) : before
  const fails = (made ?? first).checks.filter((check) => check.id.startsWith('weight.') && check.verdict === 'fail')
  const added = put.map((each, i) => ({ says: (options.add ?? [])[i] as string, mass: each.mass, room: roomFor(before, each) }))
  if (options.json)
    terminal.out(
      json(
        rounded({
          coach: { name: coach.coach.name },
          ...weightJson({ weight: after }),
          added: added.map(({ says, room }) => ({ says, room })),
        }),
      ),
    )
  else
    terminal.out(
      [
        ...weightText(coach.coach.name, after, options.inch ? 'inch' : 'metric', added, made ? before : null),
        ...(fails.length > 0
          ? ['', ...fails.flatMap((check) => [`FAIL ${check.says}`, ...(check.mend ? [`     ${check.mend}`] : [])])]
          : []),
      ].join('\n'),
    )
  return fails.length > 0 ? 1 : 0
}

function alone(definition: Definition): Definition {
  return { ...definition, weight: definition.weight && { ...definition.weight, listOnly: true } }
}

function weighed({ weight, definition }: Design): WeightDerived {
  if ('notComputed' in weight)
    throw refuse('weight', `${definition.coach.name} was not weighed. ${weight.notComputed}`, { expected: 'weight, gear and masses' })
  return weight
}

/** Ends with 1 where the scales say what the list does not explain. */
function onScales(weight: WeightDerived, coach: string, file: string, options: WeightArguments, terminal: Terminal): ExitCode {
  const { readings, faults } = readScales(file.replaceAll('\\', '/'), openText(file, 'a file of scale readings'))
  if (!readings) throw new Refused(faults)
  const one = weight.cases.find((each) => each.id === readings.case)
  const known = weight.cases.map((each) => each.id).join(', ')
  if (!one) throw refuse('case', `${file}: there is no load case ${readings.case}; there are ${known}.`, { found: readings.case })
  if (readings.axles.length !== one.axles.length)
    throw refuse('axles', `${file}: the coach has ${count(one.axles.length, 'axle')}, and ${readings.axles.length} were weighed.`)
  const found = reconcile(weight, readings, one)
  if (options.json) terminal.out(json(rounded({ coach: { name: coach }, on: readings.on, ...found })))
  else terminal.out(scalesText(coach, found, options.inch ? 'inch' : 'metric').join('\n'))
  return found.agrees ? 0 : 1
}

/** `25 kg@7000,0,500`: mass, then station, buttock line and waterline, in millimetres unless they say. */
function readPut(written: string): Put {
  const wrong = (found: string) =>
    refuse('--add', `--add: expected a mass and its place such as "25 kg@7000,0,500" (station, y, waterline in mm), found ${found}.`, {
      found: written,
    })
  const [kg, where, ...more] = written.split('@')
  const places = where?.split(',') ?? []
  if (kg === undefined || more.length > 0 || places.length !== 3) throw wrong(`"${written}"`)
  const mass = parseQuantity(kg.trim(), 'mass')
  if (!mass.ok) throw wrong(mass.found)
  if (!(mass.value > 0)) throw wrong(`"${kg}", which adds nothing`)
  const [station, y, waterline] = places.map((each) => {
    const text = each.trim()
    const read = parseQuantity(/^-?[\d.]+$/.test(text) ? `${text} mm` : text, 'length')
    if (!read.ok) throw wrong(read.found)
    return read.value
  }) as [number, number, number]
  return { mass: mass.value, station, y, waterline }
}
