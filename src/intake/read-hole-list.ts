/** A hole list from a file's text, whichever of the two forms it is in: a drawing or lines of figures. */
import type { ReadList, ReadOptions } from '../checks/prove/read-csv-list.js'
import { readCsvList } from '../checks/prove/read-csv-list.js'
import { readDxfList } from './read-dxf-list.js'

/** A DXF opens with group code 0 and the word SECTION, perhaps after comments (group code 999). */
function looksLikeDxf(text: string): boolean {
  return /^\uFEFF?(\s*999\r?\n.*\r?\n)*\s*0\r?\n\s*SECTION\b/.test(text)
}

/** `name` is how the list is called in sentences. */
export function readHoleList(text: string, name: string, options: ReadOptions = {}): ReadList {
  if (text.startsWith('AutoCAD Binary DXF')) return { list: null, faults: [`${name} is a binary DXF. Save it as text DXF.`] }
  return looksLikeDxf(text) || /\.dxf$/i.test(name) ? readDxfList(text, name, options) : readCsvList(text, name, options)
}
