import { describe, expect, it } from 'vitest'
import type { FirstDrawing } from '../desk/drawn-ahead.js'
import type { OpenedFiles } from './coach-files.js'
import { type DrawsFirst, firstDrawings } from './first-drawings.js'

const coach = (text: string, path = 'wren.yaml'): OpenedFiles => ({ path, stamp: '', files: { [path]: text } })
/** What was drawn is told by its text. */
const drawn = ({ path, files }: OpenedFiles): FirstDrawing => ({ state: { text: files[path] } }) as FirstDrawing
const textOf = (drawing: FirstDrawing | null): string | undefined => drawing?.state.text
const rested = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20))

describe('drawings made ahead', () => {
  it('are of the very texts they are asked for, and made once for each', async () => {
    const asked: string[] = []
    const draw: DrawsFirst = async (one) => {
      asked.push(one.files[one.path])
      return drawn(one)
    }
    const drawings = firstDrawings(draw, 0)
    expect(drawings.of(coach('a'))).toBe(null)
    await rested()
    expect(textOf(drawings.of(coach('a')))).toBe('a')
    expect(drawings.of(coach('b'))).toBe(null)
    expect(textOf(drawings.of(coach('a')))).toBe('a')
    await rested()
    expect(textOf(drawings.of(coach('b')))).toBe('b')
    drawings.ahead(coach('c', 'robin.yaml'))
    await rested()
    expect(textOf(drawings.of(coach('c', 'robin.yaml')))).toBe('c')
    expect(asked).toEqual(['a', 'b', 'c'])
  })

  it('are none of a family that changed, nor of a coach that cannot be drawn', async () => {
    const drawings = firstDrawings((one) => (one.path === 'wren.yaml' ? Promise.resolve(drawn(one)) : Promise.reject(new Error('no'))), 0)
    const withFamily = (family: string): OpenedFiles => ({ ...coach('a'), files: { 'wren.yaml': 'a', 'birds.yaml': family } })
    drawings.ahead(withFamily('small'))
    drawings.ahead(coach('x', 'broken.yaml'))
    await rested()
    expect(textOf(drawings.of(withFamily('small')))).toBe('a')
    expect(drawings.of(withFamily('large'))).toBe(null)
    expect(drawings.of(coach('x', 'broken.yaml'))).toBe(null)
  })
})
