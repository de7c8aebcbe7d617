/**
 * Pages to a PDF file at exact scale: one millimetre is 72/25.4 points.
 *
 * The same pages and facts give the same bytes: the creation date is the definition's date, the file id follows from it.
 * Does not cover: pages longer than 5.08 m (14 400 points, the limit of the format); those are tiled by the sheet that makes them.
 */
import { deflate } from 'node:zlib'
import PDFDocument from 'pdfkit'
import type { Page } from '../documents/drawing/page.js'
import type { Encoder } from './content.js'
import { contentOf } from './content.js'
import type { Face } from './fonts.js'
import { faceBytes } from './fonts.js'

export const POINTS_PER_MM = 72 / 25.4
const LONGEST_PAGE_MM = 5080

export interface PdfFacts {
  readonly title: string
  readonly author: string
  readonly subject: string
  /** ISO date printed as the creation date, e.g. 2026-03-02 */
  readonly date: string
}

/** What is used of the embedded font beyond the library's published types (pdfkit 0.20.2, EmbeddedFont). */
interface EmbeddedFace {
  readonly id: string
  readonly font: { glyphForCodePoint(code: number): { readonly id: number; readonly advanceWidth: number } }
  readonly subset: { readonly glyphs: readonly number[]; includeGlyph(id: number): number; encode(): Uint8Array }
  readonly widths: number[]
  readonly unicode: number[][]
  readonly scale: number
  ref(): unknown
}
/** A page's content (PDFReference): given already deflated, it is passed on as it is. */
interface ContentStream {
  compress: boolean
  buffer: Uint8Array[]
  readonly data: { Filter?: string; Length?: number }
  write(bytes: Uint8Array): void
}

type EmbeddedFaceClass = new (document: PDFKit.PDFDocument, font: EmbeddedFace['font'], id: string) => EmbeddedFace

interface DrawingDocument {
  _font: EmbeddedFace
  _fontCount: number
  readonly _fontFamilies: Record<string, EmbeddedFace>
  readonly page: { readonly fonts: Record<string, unknown>; readonly content: ContentStream }
  readonly _root: { readonly data: { ViewerPreferences?: { readonly data: Record<string, unknown> } } }
}

/** Takes one character into the embedded part of a face; its number there as four hexadecimal digits. */
function take(face: EmbeddedFace, character: string): string {
  const code = character.codePointAt(0) ?? 0
  const glyph = face.font.glyphForCodePoint(code)
  const at = face.subset.includeGlyph(glyph.id)
  face.widths[at] ??= glyph.advanceWidth * face.scale
  face.unicode[at] ??= [code]
  return at.toString(16).padStart(4, '0')
}

/** Each face parsed once: taking a font file apart costs more than a small drawing does. */
const PARSED: Partial<Record<Face, EmbeddedFace>> = {}

/** What nearly every sheet is lettered with: taken into each document first, and in this order, so that they share the embedded part. */
const ALPHABET = `${String.fromCharCode(...Array.from({ length: 95 }, (_, i) => 32 + i))}°±²³µ·×Øφ½–—’“”…→−≤≥`

/** The embedded part of each face where a document uses no character beyond the alphabet: packing it takes as long as drawing a sheet. */
const EMBEDDED: Partial<Record<Face, Uint8Array>> = {}

/** Takes the alphabet into a face that has no character yet, so that it is packed as the last document's was. */
function shareAlphabet(font: EmbeddedFace, face: Face): EmbeddedFace {
  const { subset } = font
  for (const character of ALPHABET) take(font, character)
  const whole = subset.glyphs.length
  const pack = subset.encode.bind(subset)
  subset.encode = () => {
    if (subset.glyphs.length > whole) return pack()
    const bytes = EMBEDDED[face] ?? pack()
    EMBEDDED[face] = bytes
    return bytes
  }
  return font
}

/** A face of this document: the first one the library opens itself, later ones share its parsed tables and keep their own subset. */
function embed(document: PDFKit.PDFDocument, inside: DrawingDocument, face: Face): EmbeddedFace {
  const first = PARSED[face]
  if (!first) {
    document.registerFont(face, faceBytes(face))
    document.font(face)
    PARSED[face] = inside._font
    return shareAlphabet(inside._font, face)
  }
  inside._fontCount += 1
  const made = new (first.constructor as EmbeddedFaceClass)(document, first.font, `F${inside._fontCount}`)
  inside._fontFamilies[face] = made
  inside._font = made
  return shareAlphabet(made, face)
}

/** Characters to glyph numbers, one at a time and remembered: no kerning, so that lengths are those the core measured. */
function encoderOf(document: PDFKit.PDFDocument): Encoder {
  const inside = document as unknown as DrawingDocument
  const glyphs: Record<Face, Map<string, string>> = { regular: new Map(), bold: new Map() }
  const faces: Partial<Record<Face, EmbeddedFace>> = {}
  const open = (face: Face): EmbeddedFace => {
    const known = faces[face]
    if (known) return known
    const font = embed(document, inside, face)
    faces[face] = font
    return font
  }
  return {
    font(face) {
      const font = open(face)
      inside.page.fonts[font.id] ??= font.ref()
      return font.id
    },
    hex(face, text) {
      const font = open(face)
      const known = glyphs[face]
      let out = ''
      for (const character of text) {
        const code = known.get(character) ?? take(font, character)
        known.set(character, code)
        out += code
      }
      return out
    },
  }
}

/** All pages as one PDF. Throws when a page is longer than the format allows. */
export async function pagesToPdf(pages: readonly Page[], facts: PdfFacts): Promise<Uint8Array> {
  if (pages.length === 0) throw new Error(`No pages for ${facts.title}`)
  const long = pages.find((page) => page.widthMm > LONGEST_PAGE_MM || page.heightMm > LONGEST_PAGE_MM)
  if (long)
    throw new Error(`Page ${long.name} is ${Math.max(long.widthMm, long.heightMm)} mm long; a PDF page ends at ${LONGEST_PAGE_MM} mm`)
  const day = new Date(`${facts.date}T00:00:00Z`)
  if (Number.isNaN(day.getTime())) throw new Error(`The date ${facts.date} is not an ISO date`)
  const document = new PDFDocument({
    autoFirstPage: false,
    // no built-in face: only the bundled ones are opened
    font: null as unknown as string,
    // pages stay open until all are packed
    bufferPages: true,
    margin: 0,
    pdfVersion: '1.7',
    lang: 'en',
    displayTitle: true,
    info: {
      Title: facts.title,
      Author: facts.author,
      Subject: facts.subject,
      Creator: 'Coachwright',
      Producer: 'Coachwright',
      CreationDate: day,
      ModDate: day,
    },
  })
  // asks the print dialogue for 100 % rather than fit to page
  const preferences = (document as unknown as DrawingDocument)._root.data.ViewerPreferences
  if (preferences) preferences.data.PrintScaling = 'None'
  const chunks: Uint8Array[] = []
  const done = new Promise<void>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk))
    document.on('end', () => resolve())
    document.on('error', reject)
  })
  const encoder = encoderOf(document)
  const packing = pages.map((page) => {
    document.addPage({ size: [page.widthMm * POINTS_PER_MM, page.heightMm * POINTS_PER_MM], margin: 0 })
    return writeContent((document as unknown as DrawingDocument).page.content, contentOf(page, encoder))
  })
  await Promise.all(packing)
  document.end()
  await done
  return joined(chunks)
}

const packed = (bytes: Uint8Array): Promise<Uint8Array> =>
  new Promise((resolve, reject) => deflate(bytes, { level: 1 }, (error, out) => (error ? reject(error) : resolve(out))))

/**
 * Drawings are long lists of short numbers: the quickest level packs them nearly as well in a third of the time, and other threads
 * do it while the next page is drawn. What the library has written first (the axes turned y down) is kept before them.
 */
async function writeContent(stream: ContentStream, content: string): Promise<void> {
  const whole = Buffer.concat([...stream.buffer, Buffer.from(`${content}\n`, 'latin1')])
  stream.buffer = []
  stream.compress = false
  stream.data.Filter = 'FlateDecode'
  stream.data.Length = 0
  stream.write(await packed(whole))
}

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0))
  let at = 0
  for (const chunk of chunks) {
    out.set(chunk, at)
    at += chunk.length
  }
  return out
}
