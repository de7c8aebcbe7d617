import { createHash } from 'node:crypto'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import PDFDocument from 'pdfkit'
import decodeQR from 'qr/decode.js'
import { describe, expect, it } from 'vitest'
import { BOLD, CAP_HEIGHT, REGULAR } from '../documents/drawing/glyph-widths.js'
import { textWidth } from '../documents/drawing/lettering.js'
import type { Page } from '../documents/drawing/page.js'
import { circles, letter, path } from '../documents/drawing/page.js'
import { qrMark, qrText } from '../documents/drawing/qr-mark.js'
import { checkSquare } from '../documents/drawing/symbols.js'
import { faceBytes } from './fonts.js'
import { POINTS_PER_MM, pagesToPdf } from './pdf.js'

const facts = { title: 'Sedge 6: test sheet', author: 'Marrowbeck Coachworks', subject: 'test', date: '2026-03-02' }
const page: Page = {
  name: 'one',
  says: 'one',
  widthMm: 420,
  heightMm: 297,
  marks: [
    ...checkSquare(30, 40),
    letter(200, 60, 'LEFT (R, road side) — seen from OUTSIDE', { height: 3.5, bold: true }),
    letter(300, 100, 'hoop-F3 ×31 @ 38.3', { height: 2.5, turn: 90 }),
    letter(250, 200, 'middle', { anchor: 'middle', sits: 'middle' }),
    circles([200, 100, 3.3, 210, 100, 3.3]),
    path(
      [
        {
          points: [
            [100, 200, Math.tan(Math.PI / 8)],
            [150, 250, 0],
          ],
          closed: false,
        },
      ],
      { width: 0.5 },
    ),
  ],
}
const long: Page = { name: 'two', says: 'two', widthMm: 5080, heightMm: 900, marks: [letter(10, 20, 'roll')] }

const open = async (bytes: Uint8Array) => getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise

describe('pages to PDF', () => {
  it('gives the same bytes for the same pages', async () => {
    const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
    const [a, b] = [await pagesToPdf([page, long], facts), await pagesToPdf([page, long], facts)]
    expect(hash(a)).toBe(hash(b))
  })

  it('has pages of the true size, up to 5.08 m', async () => {
    const pdf = await open(await pagesToPdf([page, long], facts))
    const views = [await pdf.getPage(1), await pdf.getPage(2)].map((p) => p.view)
    expect(views[0][2]).toBeCloseTo((420 * 72) / 25.4, 2)
    expect(views[0][3]).toBeCloseTo((297 * 72) / 25.4, 2)
    expect(views[1][2]).toBeCloseTo(14400, 2)
    expect(pdf.numPages).toBe(2)
  })

  it('holds every text where the core put it', async () => {
    const pdf = await open(await pagesToPdf([page], facts))
    const { items } = await (await pdf.getPage(1)).getTextContent()
    const found = items.flatMap((item) => ('str' in item && item.str.trim() ? [item] : []))
    const say = found.find((item) => item.str === 'LEFT (R, road side) — seen from OUTSIDE')
    expect(say).toBeDefined()
    expect((say?.transform[4] ?? 0) / POINTS_PER_MM).toBeCloseTo(200, 2)
    expect(297 - (say?.transform[5] ?? 0) / POINTS_PER_MM).toBeCloseTo(60, 2)
    expect((say?.width ?? 0) / POINTS_PER_MM).toBeCloseTo(textWidth(say?.str ?? '', 3.5, true), 1)
    const turned = found.find((item) => item.str === 'hoop-F3 ×31 @ 38.3')
    expect(Math.atan2(turned?.transform[1] ?? 0, turned?.transform[0] ?? 0)).toBeCloseTo(Math.PI / 2, 6)
  })

  it('draws the check square 100 mm each way', async () => {
    const pdf = await open(await pagesToPdf([page], facts))
    const list = await (await pdf.getPage(1)).getOperatorList()
    // page space times the millimetre scale set at the start: the first path is the square
    const scale = list.argsArray[list.fnArray.indexOf(OPS.transform, list.fnArray.indexOf(OPS.transform) + 1)] as number[]
    const first = list.argsArray[list.fnArray.indexOf(OPS.constructPath)] as [unknown, unknown, ArrayLike<number>]
    const [x0, y0, x1, y1] = Array.from(first[2])
    expect(((x1 - x0) * scale[0]) / POINTS_PER_MM).toBeCloseTo(100, 4)
    expect(((y1 - y0) * scale[3]) / POINTS_PER_MM).toBeCloseTo(100, 4)
  })

  it('says its title, and no date but the one given', async () => {
    const { info } = await (await open(await pagesToPdf([page], facts))).getMetadata()
    expect(info).toMatchObject({
      Title: facts.title,
      Author: facts.author,
      CreationDate: 'D:20260302000000Z',
      ModDate: 'D:20260302000000Z',
    })
  })

  it('asks the print dialogue for no scaling', async () => {
    const pdf = await open(await pagesToPdf([page], facts))
    expect(await pdf.getViewerPreferences()).toMatchObject({ PrintScaling: 'None' })
  })

  it('refuses what the format cannot hold', async () => {
    await expect(pagesToPdf([{ ...page, widthMm: 5081 }], facts)).rejects.toThrow(/5080/)
    await expect(pagesToPdf([], facts)).rejects.toThrow(/No pages/)
    await expect(pagesToPdf([page], { ...facts, date: 'today' })).rejects.toThrow(/today/)
  })

  it('writes a hundred sheets of figures in a second or two', async () => {
    const marks = Array.from({ length: 1000 }, (_, i) => letter(20 + (i % 10) * 36, 20 + Math.floor(i / 10) * 2.5, (i * 17.3).toFixed(2)))
    const began = performance.now()
    await pagesToPdf(
      Array.from({ length: 100 }, (_, i) => ({ ...page, name: `p${i}`, marks })),
      facts,
    )
    expect(performance.now() - began).toBeLessThan(8000)
  })
})

describe('lettering', () => {
  it('has the widths of the bundled faces', () => {
    const document = new PDFDocument({ autoFirstPage: false })
    for (const [face, widths] of [
      ['regular', REGULAR],
      ['bold', BOLD],
    ] as const) {
      document.registerFont(face, faceBytes(face))
      document.font(face).fontSize(2048)
      const measured = (text: string): number => document.widthOfString(text, { features: [] })
      widths.basic.forEach((width, i) => {
        expect(measured(String.fromCharCode(32 + i)), `${face} ${32 + i}`).toBeCloseTo(width, 6)
      })
      widths.latin.forEach((width, i) => {
        // a soft hyphen has a width in the font and none in a line
        if (160 + i === 0xad) return
        expect(measured(String.fromCharCode(160 + i)), `${face} ${160 + i}`).toBeCloseTo(width, 6)
      })
      for (const [character, width] of Object.entries(widths.more))
        expect(measured(character), `${face} ${character}`).toBeCloseTo(width, 6)
    }
    expect(CAP_HEIGHT).toBe(1493)
  })
})

describe('QR code', () => {
  it('reads back as the sheet’s own text', () => {
    const text = qrText('Sedge 6', '0123456789ab', 'strake-side-left')
    const side = 400
    const data = new Uint8ClampedArray(side * side * 4).fill(255)
    const { x: left, y: top, module, runs } = qrMark(text, 40, 40, 320)
    for (let i = 0; i < runs.length; i += 3) {
      const [column, row, length] = runs.slice(i, i + 3)
      const [x0, y0] = [left + column * module, top + row * module].map(Math.round)
      const [x1, y1] = [left + (column + length) * module, top + (row + 1) * module].map(Math.round)
      for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) data.set([0, 0, 0, 255], (y * side + x) * 4)
    }
    expect(decodeQR({ width: side, height: side, data })).toBe('coachwright Sedge 6 rev 0123456789ab strake-side-left')
  })
})
