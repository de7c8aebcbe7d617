/** The commands with their words, options and examples: all a person needs to work from. */
import { InvalidArgumentError, Command as Program } from 'commander'
import type { Command } from './command.js'
import type { ExitCode, Terminal } from './terminal.js'
import { version } from './version.js'

type Ended = (code: ExitCode) => void

const ABOUT = `One written definition of a riveted-aluminium travel trailer; everything else derived, checked, drawn and proved.

A definition is a YAML file such as examples/sedge-6.yaml.`

const AFTER = `
Examples:
  coachwright open examples/sedge-6.yaml
  coachwright check examples/sedge-6.yaml
  coachwright packet examples/sedge-6.yaml --out packet/sedge-6
  coachwright at examples/sedge-6.yaml "R 5745 WL 1160"
  coachwright explain examples/sedge-6.yaml total.mass

Ends with 0 when all is well, 1 when a check fails, a proof disagrees or two coaches differ, 2 when what was asked cannot be done
(each fault on a line of its own, file:line:column first), 3 for a fault of the program itself.
From a checkout, write npm run -s coachwright -- in the place of coachwright.`

const json = ['--json', 'print JSON instead of sentences (lengths m, masses kg, angles rad)'] as const
const inch = ['--inch', 'inches and pounds instead of millimetres and kilograms'] as const
const file = ['<file>', 'a definition, such as examples/sedge-6.yaml'] as const

export function programFor(terminal: Terminal, ended: Ended): Program {
  const program = new Program('coachwright')
    .description(ABOUT)
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [command]', 'print the help of a command')
    .configureOutput({ writeOut: terminal.out, writeErr: terminal.err, getOutHelpWidth: () => 110, getErrHelpWidth: () => 110 })
    .exitOverride()
    .showHelpAfterError('(coachwright --help tells what it can do)')
    .addHelpText('after', AFTER)

  /** `load` brings a command's own code only when it is asked for, so that a quick command stays quick. */
  const command = (name: string, says: string, example: string) =>
    program.command(name).description(says).addHelpText('after', `\nExample:\n  coachwright ${example}`)
  const doing =
    <O>(load: () => Promise<Command<O>>) =>
    async (named: string, options: O): Promise<void> =>
      ended(await (await load())(named, options, terminal))

  program
    .command('open')
    .description('Open the desk in the browser: see the coach, change it, and see everything that moves.')
    .argument('[file]', 'a definition (the demonstration coach examples/sedge-6.yaml unless told)')
    .option('--port <number>', 'port of this machine to stand on (a free one unless told)', portNumber)
    .option(
      '--host <address>',
      'address to answer on, such as 0.0.0.0; anyone who reaches it may read and save (this machine only unless told)',
    )
    .option('--no-browser', 'print the address and leave the browser alone')
    .addHelpText('after', '\nExample:\n  coachwright open examples/sedge-6.yaml\n\nCtrl-C closes it.')
    .action(async (named: string | undefined, options: { readonly port?: number; readonly host?: string; readonly browser?: boolean }) => {
      ended(await (await import('./commands/open.js')).openCommand(named, options, terminal))
    })

  command('derive', 'Derive the whole coach: sheets, holes, rivets, masses, checks.', 'derive examples/sedge-6.yaml --json > sedge-6.json')
    .argument(...file)
    .option(...json)
    .action(doing(async () => (await import('./commands/derive.js')).deriveCommand))

  command('check', 'Print every check, worst first, with its margin and what would mend it.', 'check examples/sedge-6.yaml')
    .argument(...file)
    .option(...json)
    .addHelpText('after', '\nEnds with 1 when a check fails. Cautions and what was not checked do not fail a coach.')
    .action(doing(async () => (await import('./commands/check.js')).checkCommand))

  command(
    'packet',
    'Write the build packet: drawings, patterns, hole tables, schedules, checks and packet.json, the list of them all.',
    'packet examples/sedge-6.yaml --out packet/sedge-6 --unit 0042',
  )
    .argument(...file)
    .requiredOption('--out <folder>', 'folder to write; a packet already there is replaced whole')
    .option('--unit <serial>', 'serial of the unit it is for (MASTER unless told)', serial)
    .option('--date <date>', "date printed on every sheet, as 2026-03-02 (the definition's unless told)", isoDate)
    .option(...inch)
    .option('--tiles <part...>', 'parts to print at full size on sheets to be laid together as well')
    .option('--shop <file>', "the shop's own words and tools for the programs; start from programs/shop-tables.json of a packet")
    .option(...json)
    .addHelpText('after', '\nCtrl-C stops it and leaves what was there before. Nothing is ever left half written.')
    .action(doing(async () => (await import('./commands/packet.js')).packetCommand))

  command(
    'gores',
    'Bend the gores of an end over their ribs: how far they deviate, how many would stay within a distance, what they cost.',
    'gores examples/sedge-6.yaml --within 6',
  )
    .argument(...file)
    .option('--gores <count>', "how many to place so that all deviate alike (the definition's count unless told)", wholeGores)
    .option('--within <mm>', "how far inside the lofted surface one may lie (the definition's unless told)", millimetres)
    .option(...inch)
    .option(...json)
    .addHelpText('after', '\nTakes some seconds: every gore is bent anew at each try.')
    .action(doing(async () => (await import('./commands/gores.js')).goresCommand))

  command(
    'weight',
    'Weigh the coach in every load case: hitch, axles, wheels, what may still be added, and what something added does.',
    'weight examples/sedge-6.yaml --add "25 kg@7000,0,500"',
  )
    .argument(...file)
    .option('--add <mass@place...>', 'something more, as "25 kg@7000,0,500": mass, then station, y (right positive) and waterline in mm')
    .option('--scales <file>', 'what the scales said: lay it on the masses and give the bias of each group')
    .option('--list-only', 'weigh the stated list alone, without any derived part')
    .option(...inch)
    .option(...json)
    .addHelpText(
      'after',
      '\nEnds with 1 when a check of weight fails, or the scales say what the masses do not explain. Start from examples/sedge-6.scales.yaml.',
    )
    .action(doing(async () => (await import('./commands/weight.js')).weightCommand))

  command(
    'fit',
    'Will the holes meet? Every joint tried with the process the shop states: chances, holes to ream, roles, what would help.',
    'fit examples/sedge-6.yaml --joint joint-seam-1-left',
  )
    .argument(...file)
    .option('--joint <id>', 'one joint only, told in full, with the whole sheets its rows belong to')
    .option('--trials <count>', 'coaches tried (1000 unless told)', wholeTrials)
    .option('--seed <count>', 'start of the draws: the same seed gives the same figures everywhere (1 unless told)', wholeSeed)
    .option(...json)
    .addHelpText('after', '\nFigures for planning. Takes some seconds for a whole coach; progress is shown where a person watches.')
    .action(doing(async () => (await import('./commands/fit.js')).fitCommand))

  command(
    'blanks',
    'Work out the flat blanks of formed gores and caps: stretch, thickness, size, stock sheet.',
    'blanks examples/sedge-6.yaml',
  )
    .argument(...file)
    .option(...inch)
    .option(...json)
    .addHelpText(
      'after',
      '\nTakes some seconds the first time, then keeps what it found. Ends with 1 when a panel cannot be formed as it is.',
    )
    .action(doing(async () => (await import('./commands/blanks.js')).blanksCommand))

  program
    .command('at')
    .description('Say what is at a place on the coach: on the outside, through the skin, and inside.')
    .argument(...file)
    .argument('<address>', 'side, station, and waterline or girth, such as "R 5745 WL 1160"')
    .option(...inch)
    .option(...json)
    .addHelpText(
      'after',
      `
An address is written as a shop writes it. A bare number is in millimetres; inches need their unit.
  "R 5745 WL 1160"       road side, station 5745, waterline 1160
  "C 3620 G 1500"        curb side, girth 1500 from the crown along the outside
  "right 5745 g 1670.9"  the same with a small g: girth on the lining
  "STA 3915 G 0"         on the centre line of the roof
  "roof 4000 BL -300"    on the roof, 300 left of the centre plane
  "C T -300 WL 500"      300 ahead of the last joint frame
  "R 226 in WL 45.7 in"  inches
  "nose gore 4 WL 1160"  nose, on the middle of gore 4 counted from the right joint, waterline 1160
  "tail gore 2 G 1240"   tail, 1240 down the tape from the crown
  "nose WL 1160 BL 200"  nose, 200 right of the centre plane
C is the curb side and R the road side of the coach's market; right and left are as seen looking forward.

Example:
  coachwright at examples/sedge-6.yaml "R 5745 WL 1160"`,
    )
    .action(async (named: string, address: string, options: { readonly json?: boolean; readonly inch?: boolean }) => {
      const { atCommand } = await import('./commands/at.js')
      ended(await atCommand(named, { ...options, address }, terminal))
    })

  program
    .command('explain')
    .description('Show the working behind a number: formula, figures, source, and the numbers it was made from.')
    .argument(...file)
    .argument('[id]', 'which number, such as total.mass or row.hoop-F3.length')
    .option('--list', 'list the ids that can be explained, and what each is')
    .option(...inch)
    .option(...json)
    .addHelpText(
      'after',
      `
Examples:
  coachwright explain examples/sedge-6.yaml row.hoop-F3.strength
  coachwright explain examples/sedge-6.yaml --list
  coachwright explain examples/sedge-6.yaml row.hoop-F3 --list`,
    )
    .action(
      async (
        named: string,
        id: string | undefined,
        options: { readonly list?: boolean; readonly json?: boolean; readonly inch?: boolean },
      ) => {
        const { explainCommand } = await import('./commands/explain.js')
        ended(await explainCommand(named, { ...options, id }, terminal))
      },
    )

  program
    .command('compare')
    .description('Say everything that changes from one definition to another, most consequential first.')
    .argument('<old>', 'the definition as it is built now')
    .argument('<new>', 'the definition as it would be')
    .option(...inch)
    .option('--note <file>', 'write the change note to be printed, a PDF')
    .option(...json)
    .addHelpText(
      'after',
      `
Findings that are new or worse, openings, parts to scrap, fasteners, masses, margins, and the documents to issue again.
Ends with 0 when both are one revision, 1 when they differ, 2 when either has a fault.

Example:
  coachwright compare examples/sedge-6.yaml sedge-6-window-aft.yaml`,
    )
    .action(async (old: string, now: string, options: { readonly inch?: boolean; readonly json?: boolean; readonly note?: string }) => {
      ended(await (await import('./commands/compare.js')).compareCommand(old, now, options, terminal))
    })

  command(
    'prove',
    'Lay a hole list the shop already trusts on our pattern and say where they differ.',
    'prove examples/sedge-6.yaml --part strake-crown --holes punch.csv',
  )
    .argument(...file)
    .requiredOption('--part <id>', 'the part the list is of')
    .requiredOption('--holes <list>', 'the list: CSV with x and y columns, readings taped along a row, or DXF with a circle a hole')
    .option('--tolerance <mm>', 'how far a hole may be off (0.3 mm unless told)', millimetres)
    .option('--face <face>', 'which face of the part, where it has several')
    .option('--row <row>', 'the row the readings were taped along, where the list does not say')
    .option('--unit <unit>', 'mm or in, where the list does not say', listUnit)
    .option('--drawing <file>', 'also draw the differences, as SVG')
    .option(...json)
    .addHelpText('after', '\nEnds with 0 when the list agrees, 1 when it disagrees or the proof is undecided.')
    .action(doing(async () => (await import('./commands/prove.js')).proveCommand))

  command('schema', 'Print the JSON Schema of what is written or printed.', 'schema definition > definition.schema.json')
    .argument(
      '[which]',
      'design: what derive --json prints; definition: what a person writes; merged: the merged form; packet: packet.json; ripple: what compare --json prints',
      'design',
    )
    .action(doing(async () => (await import('./commands/schema.js')).schemaCommand))

  command('merged', 'Print the definition as one file that extends nothing.', 'merged examples/sedge-6.yaml > whole.yaml')
    .argument(...file)
    .option('--json', 'as computed with: SI numbers, every default filled in')
    .action(doing(async () => (await import('./commands/merged.js')).mergedCommand))

  return program
}

function isoDate(written: string): string {
  const real = /^\d{4}-\d{2}-\d{2}$/.test(written) && new Date(`${written}T00:00:00Z`).toJSON()?.startsWith(written)
  if (!real) throw new InvalidArgumentError('Write a day that exists as year-month-day, such as 2026-03-02.')
  return written
}

function portNumber(written: string): number {
  const value = Number(written)
  if (!(Number.isInteger(value) && value >= 0 && value <= 65535))
    throw new InvalidArgumentError('Write a whole number from 0 to 65535, such as 8460; 0 takes any free one.')
  return value
}

function wholeGores(written: string): number {
  const value = Number(written)
  if (!(Number.isInteger(value) && value >= 1 && value <= 60))
    throw new InvalidArgumentError('Write a whole number from 1 to 60, such as 9.')
  return value
}

function wholeTrials(written: string): number {
  const value = Number(written)
  if (!(Number.isInteger(value) && value >= 1 && value <= 10_000_000))
    throw new InvalidArgumentError('Write a whole number from 1 to 10000000, such as 5000.')
  return value
}

function wholeSeed(written: string): number {
  const value = Number(written)
  if (!(Number.isInteger(value) && value >= 0 && value < 2 ** 48)) throw new InvalidArgumentError('Write a whole number such as 1.')
  return value
}

/** Metres from millimetres. */
function millimetres(written: string): number {
  const value = Number(written.replace(/\s*mm$/, ''))
  if (!(value > 0 && value <= 100)) throw new InvalidArgumentError('Write millimetres above 0 and up to 100, such as 0.3.')
  return value / 1000
}

function listUnit(written: string): 'mm' | 'in' {
  if (written !== 'mm' && written !== 'in') throw new InvalidArgumentError('Write mm or in.')
  return written
}

/** It is printed on every sheet, so it must be readable and stay on its line. */
function serial(written: string): string {
  const tidy = written.trim()
  const plain = tidy !== '' && tidy.length <= 40 && ![...tidy].some((c) => c < ' ' || c === '\u007f')
  if (!plain) throw new InvalidArgumentError('Write a serial of 1 to 40 letters and figures, such as 0042.')
  return tidy
}
