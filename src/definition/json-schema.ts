/** The JSON Schema of the written form, for editors; from the same description the program reads by. */
import { definitionForm } from './definition-form.js'
import type { JsonSchema, SchemaFor } from './form.js'
import { SCHEMA } from './load-files.js'

/**
 * `file`: one file, which may leave to the files it extends what it does not state, so nothing is required of it.
 * `merged`: the merged form, complete in itself.
 */
export function definitionJsonSchema(kind: SchemaFor = 'file'): JsonSchema {
  const form = definitionForm.schema(kind)
  const name = { type: 'string', minLength: 1 }
  const extending = {
    anyOf: [name, { type: 'array', items: name }],
    description: 'files beside this one to build on, each laid over the one before',
  }
  const schema = { const: SCHEMA, description: 'version of the form' }
  const properties = { ...(kind === 'file' ? { extends: extending } : {}), schema, ...(form.properties as JsonSchema) }
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Coachwright definition',
    ...form,
    properties,
    required: ['schema', ...((form.required as readonly string[] | undefined) ?? [])],
  }
}
