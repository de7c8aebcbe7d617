import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { beside } from './load-files.js'
import { readDefinition } from './read-definition.js'
import type { Fault } from './types.js'

interface Expected {
  readonly in?: string
  readonly line: number
  readonly column: number
  /** how the sentence starts: the path */
  readonly says: string
  /** words in it */
  readonly and: string
}

const folder = 'examples/broken'
const load = (path: string): string | null => (existsSync(path) ? readFileSync(path, 'utf8') : null)
const expected = parse(readFileSync(`${folder}/expected.yaml`, 'utf8')) as Readonly<Record<string, readonly Expected[]>>
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml') && name !== 'expected.yaml')

describe('definitions wrong in one way', () => {
  it('are at least forty, each with its faults expected', () => {
    expect(files.length).toBeGreaterThanOrEqual(40)
    expect(Object.keys(expected).sort()).toEqual(files.sort())
  })

  for (const name of files) {
    it(name.replace('.yaml', '').replaceAll('-', ' '), () => {
      const path = `${folder}/${name}`
      const { definition, faults } = readDefinition(path, load(path) as string, load)
      expect(definition).toBeNull()
      const wanted = expected[name] ?? []
      // exactly these, at exactly these places
      expect(faults.map(place)).toEqual(wanted.map((e) => `${e.in ? beside(path, e.in) : path}:${e.line}:${e.column}`))
      faults.forEach((fault, i) => {
        expect(fault.says.startsWith(wanted[i].says), fault.says).toBe(true)
        expect(fault.says).toContain(wanted[i].and)
        expect(fault.says).toMatch(/[.?]$/)
        expect([fault.expected, fault.found].every((phrase) => phrase.length > 0)).toBe(true)
      })
    })
  }
})

function place(fault: Fault): string {
  return `${fault.file}:${fault.line}:${fault.column}`
}
