import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { z } from 'zod'
import { definitionJsonSchema } from './json-schema.js'
import { mergedYaml } from './merged-yaml.js'
import { readDefinition } from './read-definition.js'

type SchemaOf = Parameters<typeof z.fromJSONSchema>[0]
const load = (path: string): string => readFileSync(path, 'utf8')
const file = z.fromJSONSchema(definitionJsonSchema() as SchemaOf)
const merged = z.fromJSONSchema(definitionJsonSchema('merged') as SchemaOf)

describe('the JSON Schema for editors', () => {
  it('takes every example file, and the merged form of every coach', () => {
    for (const name of ['sedge.family', 'sedge-4', 'sedge-6', 'sedge-8', 'sedge-4.masses', 'sedge-6.masses', 'sedge-8.masses']) {
      const result = file.safeParse(parse(load(`examples/${name}.yaml`)))
      expect(result.error?.issues ?? []).toEqual([])
    }
    for (const bays of [4, 6, 8]) {
      const path = `examples/sedge-${bays}.yaml`
      const { merged: root } = readDefinition(path, load(path), load)
      const result = merged.safeParse(parse(mergedYaml(root as NonNullable<typeof root>)))
      expect(result.error?.issues ?? []).toEqual([])
    }
  })

  it('asks everything of the merged form only', () => {
    const coach = parse(load('examples/sedge-6.yaml'))
    expect(file.safeParse(coach).success).toBe(true)
    expect(merged.safeParse(coach).success).toBe(false)
    expect(file.safeParse({}).success).toBe(false)
  })

  it('refuses unknown keys, unknown words and bare numbers', () => {
    for (const wrong of [{ opennings: [] }, { coach: { market: 'usa' } }, { shell: { lap: 25 } }, { schema: 2 }]) {
      expect(file.safeParse({ schema: 1, ...wrong }).success).toBe(false)
    }
  })

  it('shows the defaults as they are written', () => {
    const schema = definitionJsonSchema() as {
      properties: Record<string, { properties: Record<string, { default?: unknown; description?: string }> }>
    }
    expect(schema.properties.rules.properties['lap edge'].default).toBe('12.5 mm')
    expect(schema.properties.rules.properties['min pitch'].default).toBe(3)
    expect(schema.properties.rules.properties['lap edge'].description).toBe('nominal edge distance in laps')
  })
})
