/** The change note on paper: what it says, and that nothing of it lies over anything else. */
import { describe, expect, it } from 'vitest'
import { exampleText } from '../../tests/examples.js'
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import { setInText } from '../definition/set-in-text.js'
import { shareUnchanged } from '../definition/share-unchanged.js'
import { createMemo } from '../derive/memo.js'
import { overlappingTexts, textsOffPaper } from '../documents/drawing/overlaps.js'
import type { Page } from '../documents/drawing/page.js'
import { changeNote } from './change-note.js'
import { compare } from './compare.js'

const memo = createMemo()
function made(edit: (text: string) => string) {
  const { path, text, load } = exampleText('sedge-6')
  const [before, after] = [text, edit(text)].map((each) => readDefinition(path, each, load).definition!)
  const [was, is] = [design(before, memo), design(shareUnchanged(before, after), memo)]
  return { is, ripple: compare(was, is) }
}
const lettering = (pages: readonly Page[]): string =>
  pages.flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))).join('\n')

describe('the change note', () => {
  const { is, ripple } = made((text) =>
    setInText(setInText(text, ['openings', { id: 'RW3' }, 'station'], '5825 mm'), ['weight', 'gross'], '2400 kg'),
  )
  const pages = changeNote(ripple, is, { before: 'as ordered' }, { date: '2026-03-05' })
  const said = lettering(pages)

  it('says from which revision to which, when, and what to do with metal in hand', () => {
    expect(said).toContain(`From as ordered (revision ${ripple.coach.before.revision}) to revision ${ripple.coach.after.revision}.`)
    expect(said).toContain('2026-03-05')
    expect(said).toMatch(/stop, and hold it against/)
  })

  it('groups what changed, counted, with before and after', () => {
    for (const head of ['Findings, ', 'Written, 2', 'Openings, 1', 'Parts, ', 'Fasteners, ', 'Weight and balance, ', 'Documents, '])
      expect(said).toContain(head)
    expect(said).toMatch(/openings RW3 station\n5745 mm\n5825 mm/)
    expect(said).toMatch(/weight gross\n2360\n2400/)
    expect(said).toContain('issue again')
    // every document of the ripple is on it
    for (const { path } of ripple.documents) expect(said).toContain(path.slice(0, 20))
  })

  it('runs over several sheets of which each is clear', () => {
    expect(pages.length).toBeGreaterThan(2)
    for (const page of pages) expect([overlappingTexts(page), textsOffPaper(page, 5)]).toEqual([[], []])
  })

  it('says that nothing changes where nothing does', () => {
    const same = made((text) => text)
    expect(lettering(changeNote(same.ripple, same.is))).toContain('nothing changes')
  })
})
