/** `schema WHICH`: the JSON Schemas of what is written and of what is printed. */
import { definitionJsonSchema } from '../../definition/json-schema.js'
import { didYouMean } from '../../definition/near-miss.js'
import { designJsonSchema } from '../../documents/json/design-schema.js'
import { manifestSchema } from '../../documents/packet/manifest.js'
import { rippleJsonSchema } from '../../ripple/ripple-json.js'
import type { Command } from '../command.js'
import { refuse } from '../refused.js'

const SCHEMAS: Readonly<Record<string, () => object>> = {
  definition: () => definitionJsonSchema('file'),
  merged: () => definitionJsonSchema('merged'),
  design: designJsonSchema,
  packet: manifestSchema,
  ripple: rippleJsonSchema,
}

export const schemaCommand: Command<unknown> = (which, _options, terminal) => {
  const schema = Object.hasOwn(SCHEMAS, which) ? SCHEMAS[which] : undefined
  if (!schema) {
    const known = Object.keys(SCHEMAS)
    const near = didYouMean(which, known)
    throw refuse('schema', `There is no schema ${which}; there are ${known.join(', ')}.${near ? ` ${near}` : ''}`, {
      expected: known.join(', '),
      found: which,
    })
  }
  terminal.out(JSON.stringify(schema(), null, 2))
  return 0
}
