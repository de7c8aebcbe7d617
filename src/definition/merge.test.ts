import { describe, expect, it } from 'vitest'
import { beside, loadFiles } from './load-files.js'
import { mergedYaml } from './merged-yaml.js'
import type { Written } from './written.js'

function merge(files: Readonly<Record<string, string>>): { yaml: string; says: readonly string[] } {
  const loaded = loadFiles('a/coach.yaml', files['a/coach.yaml'], (path) => files[path] ?? null)
  return {
    yaml: loaded.root ? mergedYaml(loaded.root as Written) : '',
    says: loaded.faults.map((f) => `${f.file}:${f.line}:${f.column} ${f.found}`),
  }
}

const family =
  'schema: 1\nshell: {lap: 25 mm, tape: 1 mm}\nopenings:\n  - {id: A, width: 1 mm, mass: 1 kg}\n  - {id: B, width: 2 mm}\nstations: [1 mm, 2 mm]\n'

describe('laying a coach over its family', () => {
  it('merges maps by key, lists by id, and replaces other lists', () => {
    const coach =
      'extends: family.yaml\nschema: 1\nshell: {lap: 26 mm}\nopenings:\n  - {id: B, omit: yes}\n  - {id: A, width: 9 mm}\n  - {id: C, width: 3 mm}\nstations: [3 mm]\n'
    const { yaml, says } = merge({ 'a/coach.yaml': coach, 'a/family.yaml': family })
    expect(says).toEqual([])
    expect(yaml).toBe(
      'schema: 1\nshell: {lap: 26 mm, tape: 1 mm}\nopenings:\n  - {id: A, width: 9 mm, mass: 1 kg}\n  - {id: C, width: 3 mm}\nstations: [3 mm]\n',
    )
  })

  it('lays a list of named items over another where it could not stand by itself, and else replaces it', () => {
    const list = 'schema: 1\nmasses:\n  - {item: sink, mass: 3 kg, y: 1 mm, twins: a}\n  - {item: oven, mass: 9 kg, y: 2 mm}\n'
    const over = (items: string) =>
      merge({ 'a/coach.yaml': `extends: list.yaml\nschema: 1\nmasses:\n${items}`, 'a/list.yaml': list }).yaml.replace('schema: 1\n', '')
    expect(over('  - {item: oven, y: 5 mm}\n')).toBe(
      'masses:\n  - {item: sink, mass: 3 kg, y: 1 mm, twins: a}\n  - {item: oven, mass: 9 kg, y: 5 mm}\n',
    )
    expect(over('  - {item: sink, omit: yes}\n')).toBe('masses:\n  - {item: oven, mass: 9 kg, y: 2 mm}\n')
    // everything is said of it, though it has no twin: another list
    expect(over('  - {item: sink, mass: 4 kg, y: 1 mm}\n')).toBe('masses:\n  - {item: sink, mass: 4 kg, y: 1 mm}\n')
    expect(over('  - {item: kettle, y: 1 mm}\n')).toBe('masses:\n  - {item: kettle, y: 1 mm}\n')
  })

  it('follows a chain, and a list of files in order', () => {
    const files = {
      'a/coach.yaml': 'extends: [../b/one.yaml, two.yaml]\nschema: 1\n',
      'b/one.yaml': 'extends: ../a/family.yaml\nschema: 1\nshell: {lap: 2 mm, tape: 2 mm}\n',
      'a/two.yaml': 'schema: 1\nshell: {lap: 3 mm}\n',
      'a/family.yaml': family,
    }
    const { yaml, says } = merge(files)
    expect(says).toEqual([])
    expect(yaml).toContain('shell: {lap: 3 mm, tape: 2 mm}')
    expect(yaml).toContain('{id: A, width: 1 mm, mass: 1 kg}')
  })

  it('reads a file two others extend once, and does not call it a circle', () => {
    const files = {
      'a/coach.yaml': 'extends: [one.yaml, two.yaml]\nschema: 1\n',
      'a/one.yaml': 'extends: base.yaml\nschema: 1\n',
      'a/two.yaml': 'extends: base.yaml\nschema: 1\n',
      'a/base.yaml': 'lap: 1 mm\n',
    }
    expect(merge(files).says).toEqual(['a/base.yaml:1:1 nothing'])
  })

  it('says where each slip lies, in whichever file', () => {
    const files = { 'a/coach.yaml': 'extends: [family.yaml, gone.yaml, 3]\nschema: 1\n', 'a/family.yaml': 'schema: 1\nlap: {a: 1\n' }
    expect(merge(files).says).toEqual(['a/coach.yaml:1:35 "3"', 'a/family.yaml:2:11 the end of the file', 'a/coach.yaml:1:24 "gone.yaml"'])
  })

  it('finds files beside the one that names them', () => {
    expect(beside('examples/broken/a.yaml', '../b.yaml')).toBe('examples/b.yaml')
    expect(beside('a.yaml', './b.yaml')).toBe('b.yaml')
    expect(beside('a.yaml', '../b.yaml')).toBe('../b.yaml')
    expect(beside('/x/a.yaml', 'b.yaml')).toBe('/x/b.yaml')
    expect(beside('../x/a.yaml', '../../b.yaml')).toBe('../../b.yaml')
  })
})
