/** Writes the packet of a text that stands on the desk, saved or not: what the server is handed to make packets with. */
import { design } from '../checks/index.js'
import { readDefinition } from '../definition/read-definition.js'
import { createMemo } from '../derive/memo.js'
import type { PacketAsk, PacketOutcome } from '../server/packets.js'
import { makePacket } from './make-packet.js'
import { Refused } from './refused.js'

export async function deskPacket({ path, text, load, folder, signal, onProgress }: PacketAsk): Promise<PacketOutcome> {
  const { definition, faults } = readDefinition(path, text, load)
  if (!definition) return { faults }
  try {
    const memo = createMemo()
    const made = design(definition, memo)
    const { documents, bytes } = await makePacket(made, { out: folder }, { onProgress, signal, memo })
    return { documents: documents.length, bytes }
  } catch (reason) {
    if (!(reason instanceof Refused)) throw reason
    return { faults: reason.faults }
  }
}
