/**
 * What our actions are called in a machine's program: data a shop edits. {tool}, {x}, {y}, {seconds} are filled in.
 *
 * The defaults are words of ISO 6983-1 (G00 position, G71 millimetres, G90 absolute, M00 stop, M06 tool change, M02 end;
 * from memory). The standard has NO word for a punch hit. The default hit is therefore a comment, which moves nothing: a shop
 * must write its own machine's word before the program makes a hole. Many controls say G21 for G71.
 */
export interface WordTable {
  readonly name: string
  /** first block: units and absolute dimensions */
  readonly start: string
  readonly tool: string
  /** the machine waits here for a person */
  readonly stop: string
  readonly move: string
  readonly hit: string
  /** after each hit; null for none */
  readonly dwell: string | null
  /** used by {seconds} in dwell */
  readonly dwellSeconds: number
  readonly end: string
  /** what opens and closes a remark */
  readonly comment: readonly [open: string, close: string]
}

export const DEFAULT_WORDS: WordTable = {
  name: 'ISO 6983 words, no hit',
  start: 'G71 G90',
  tool: 'T{tool} M06',
  stop: 'M00',
  move: 'G00 X{x} Y{y}',
  hit: '(HIT)',
  dwell: null,
  dwellSeconds: 0,
  end: 'M02',
  comment: ['(', ')'],
}

/** Fills {name} places. Throws when the table names a place that is not given: a wrong word must not reach a machine. */
export function fillWord(word: string, values: Readonly<Record<string, string>>): string {
  return word.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name]
    if (value === undefined)
      throw new Error(
        `The word table says {${name}} in "${word}", where only ${Object.keys(values).join(', ') || 'nothing'} can be filled in`,
      )
    return value
  })
}

/** Sentences about a word table that cannot make a program; none when it can. */
export function wordTableFaults(words: WordTable): readonly string[] {
  const faults: string[] = []
  const need = (key: 'tool' | 'move', places: readonly string[]): void => {
    for (const p of places)
      if (!words[key].includes(`{${p}}`))
        faults.push(`The word table "${words.name}" has no {${p}} in its word for ${key}: write it where the number belongs.`)
  }
  need('tool', ['tool'])
  need('move', ['x', 'y'])
  for (const key of ['start', 'hit', 'end'] as const)
    if (words[key].trim() === '') faults.push(`The word table "${words.name}" has no word for ${key}. Write your machine's word.`)
  return faults
}
