/** packet.json: what is in a packet, with the SHA-256 of each document, so that a changed or missing sheet can be told. */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { z } from 'zod'

const PACKET_FORMAT = 1

const documentForm = z.object({
  path: z.string().describe('where it is in the packet, with forward slashes'),
  says: z.string().describe('what it is, in a sentence'),
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .describe('SHA-256 of its bytes, in hexadecimal'),
})

const manifestForm = z
  .object({
    packet: z.literal(PACKET_FORMAT).describe('version of this form'),
    program: z.string().describe('name and version of the program that made the packet'),
    coach: z.string(),
    revision: z
      .string()
      .regex(/^[0-9a-f]{12}$/)
      .describe('first 12 hexadecimal digits of SHA-256 over the canonical definition'),
    unit: z.string().describe('serial of the unit, or MASTER'),
    date: z.string().describe("ISO date printed on every sheet: the definition's, or the one asked for; never the day of printing"),
    documents: z.array(documentForm),
  })
  .describe('Manifest of a build packet. The same definition, unit and date give the same bytes.')

export type Manifest = Readonly<z.infer<typeof manifestForm>>
export type ManifestDocument = Readonly<z.infer<typeof documentForm>>
export type ManifestHead = Omit<Manifest, 'documents' | 'packet'>

/** JSON Schema of packet.json. */
export const manifestSchema = (): object => z.toJSONSchema(manifestForm)

export const sha256Of = (content: string | Uint8Array): string =>
  bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content))

/** The text of packet.json: keys in a fixed order, two-space indent, a line end. */
export function manifestText(head: ManifestHead, documents: readonly ManifestDocument[]): string {
  const { program, coach, revision, unit, date } = head
  return `${JSON.stringify({ packet: PACKET_FORMAT, program, coach, revision, unit, date, documents }, null, 2)}\n`
}

/** The manifest, or sentences about what is wrong with it. */
export function readManifest(text: string): { readonly manifest: Manifest | null; readonly faults: readonly string[] } {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return { manifest: null, faults: ['packet.json is not JSON. Write the packet again.'] }
  }
  const read = manifestForm.safeParse(value)
  if (read.success) return { manifest: read.data, faults: [] }
  return {
    manifest: null,
    faults: read.error.issues.map((i) => `packet.json, ${i.path.join('.') || 'as a whole'}: ${i.message}. Write the packet again.`),
  }
}
