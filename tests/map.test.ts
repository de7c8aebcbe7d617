import { describe, expect, it } from 'vitest'
import { mapFaults, standing } from './map.js'
import { readTree, treeOf } from './tree.js'

describe('src/README.md, the map', () => {
  it('names every room that is there, in reading order, and no other', () => expect(mapFaults(readTree())).toEqual([]))
})

describe('the map test itself', () => {
  const rooms = { 'src/maths/arc.ts': '', 'src/derive/index.ts': '', 'src/derive/shell/hoop.ts': '' }
  const map = (...lines: string[]) => treeOf({ ...rooms, 'src/README.md': lines.join('\n') })

  it('sees folders at any depth and files at the top', () => {
    expect(standing(treeOf({ ...rooms, 'src/loose.ts': '' }))).toEqual(['derive/', 'derive/shell/', 'loose.ts', 'maths/'])
  })

  it('lets a true map through', () => {
    expect(mapFaults(map('# Map', '- `maths/` curves', '- `derive/` trades', '  - `derive/shell/` the shell'))).toEqual([])
  })

  it('catches a room left out', () => {
    expect(mapFaults(map('- `maths/` curves', '- `derive/` trades'))).toEqual(['src/derive/shell/ is not on the map, src/README.md'])
  })

  it('catches a room that is gone, and one without a word of explanation', () => {
    const all = ['- `maths/` curves', '- `derive/` trades', '- `derive/shell/` the shell']
    expect(mapFaults(map(...all, '- `paper/` sheets'))).toEqual(['src/README.md names paper/, which is not there'])
    expect(mapFaults(map('- `maths/`', ...all.slice(1)))).toEqual(['src/maths/ is not on the map, src/README.md'])
  })

  it('catches a wrong order', () => {
    expect(mapFaults(map('- `derive/` trades', '- `derive/shell/` the shell', '- `maths/` curves'))).toEqual([
      'src/README.md names maths/ out of reading order',
    ])
    expect(mapFaults(map('- `maths/` curves', '- `derive/shell/` the shell', '- `derive/` trades'))).toEqual([
      'src/README.md names derive/shell/ before the folder it stands in',
    ])
  })

  it('catches a room named twice', () => {
    const all = ['- `maths/` curves', '- `derive/` trades', '- `derive/shell/` the shell']
    expect(mapFaults(map(...all, '- `derive/` again'))).toEqual(['src/README.md names derive/ twice'])
  })
})
