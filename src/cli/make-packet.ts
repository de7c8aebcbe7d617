/** Plans and writes a design's packet: what `coachwright packet` and the desk share. Throws Refused with a sentence. */
import { basename } from 'node:path'
import type { Design } from '../derive/design.js'
import { derive } from '../derive/index.js'
import type { Memo } from '../derive/memo.js'
import { packetPlan } from '../documents/packet/plan.js'
import { type PlannedDocument, standsAlone } from '../documents/packet/planned.js'
import type { ShopTables } from '../documents/text/shop-tables.js'
import { readShopTables } from '../documents/text/shop-tables.js'
import { pagesToPdf } from '../paper/pdf.js'
import type { BlankStudy } from '../studies/blanks/nouns.js'
import { withBlanks } from '../studies/blanks/with-blanks.js'
import type { FitStudy } from '../studies/fit/nouns.js'
import { goresAsPlaced } from '../studies/gores/study.js'
import { withLining } from '../studies/lining/with-lining.js'
import { swayCurves } from '../studies/sway/study.js'
import { openText } from './open-text.js'
import { partNamed } from './part-named.js'
import { Refused, refuse } from './refused.js'
import { blanksOf } from './studies/blanks-of.js'
import { fitOf } from './studies/fit-of.js'
import { version } from './version.js'
import { type PacketProgress, PacketRefused, type PacketSource, type WrittenPacket, writePacket } from './write-packet.js'

export interface PacketArguments {
  readonly out: string
  readonly unit?: string
  /** ISO; the definition's unless told */
  readonly date?: string
  readonly inch?: boolean
  /** file of the shop's own words and tools */
  readonly shop?: string
  /** parts to add at full size on sheets to be laid together */
  readonly tiles?: readonly string[]
}

export interface PacketWatch {
  readonly onProgress?: (progress: PacketProgress) => void
  readonly signal?: AbortSignal
  /** blanks of formed panels that are being worked out already, while the design was checked; null when cancelled */
  readonly blanks?: Promise<BlankStudy | null> | undefined
  /** the memo the design was derived with: nothing is derived twice */
  readonly memo?: Memo
}

export interface MadePacket extends WrittenPacket {
  /** as drawn: with the blanks of formed panels, and what was found about them */
  readonly design: Design
}

export async function makePacket(derived: Design, options: PacketArguments, watch: PacketWatch): Promise<MadePacket> {
  const { coach } = derived.definition
  // both threads run at once, and while they do the documents are written that hang on neither
  const studies = Promise.all([blanksFor(derived, watch), fitFor(derived, watch)])
  // should drawing throw first, nobody is left to hear of them
  studies.catch(() => undefined)
  const head = {
    program: `Coachwright ${version()}`,
    coach: coach.name,
    revision: derived.revision,
    unit: options.unit ?? 'MASTER',
    date: options.date ?? coach.date,
  }
  const tiles = (options.tiles ?? []).map((id) => partNamed(derived, id, '--tiles').id)
  const shop = options.shop === undefined ? null : shopTables(options.shop)
  const sections = derive(derived.definition, watch.memo)
  const gores = goresAsPlaced(sections)
  const sway = swayCurves(derived.towing)
  const planned = (design: Design, blanks: BlankStudy | null, fit: FitStudy | null): readonly PlannedDocument[] =>
    packetPlan(design, {
      unit: head.unit,
      date: head.date,
      units: options.inch ? 'inch' : 'metric',
      program: head.program,
      tiles,
      ...(shop ? { shop } : {}),
      ...(blanks ? { blanks } : {}),
      ...(fit ? { fit } : {}),
      gores,
      ...(sway ? { sway } : {}),
    })
  const first = planned(derived, null, null)
  const changing = new Set<unknown>([derived, derived.parts, derived.checks, gores, ...derived.parts.filter((p) => p.notComputed)])
  let made = derived
  const source: PacketSource = {
    atOnce: first.filter((document) => standsAlone(document, changing)),
    whole: async () => {
      const lined = withLining(derived, sections)
      const [blanks, fit] = await studies
      made = blanks ? withBlanks(lined, blanks) : lined
      return planned(made, blanks, fit)
    },
  }
  const subject = `${coach.name}, revision ${derived.revision}, unit ${head.unit}`
  try {
    const written = await writePacket(source, head, options.out, {
      ...watch,
      expected: first.length,
      renderPdf: (pages, title) => pagesToPdf(pages, { title, author: coach.maker, subject, date: head.date }),
    })
    return { ...written, design: made }
  } catch (reason) {
    throw refusalOf(reason, options.out)
  }
}

/** Trials for the packet's page: enough to put joints in order; `coachwright fit` tries more. */
const TRIALS = 200
const SEED = 1

/** Whether the holes meet; null where the shop has not said how well it punches. */
async function fitFor({ definition }: Design, { signal }: PacketWatch): Promise<FitStudy | null> {
  if (definition.process === null) return null
  const study = await fitOf({ definition, trials: TRIALS, seed: SEED, joint: null }, signal ? { signal } : {})
  if (!study) throw refuse('packet', 'Writing the packet was cancelled; nothing was changed.')
  return study
}

/** The packet waits for the blanks of formed panels; null where there are none to work out. */
async function blanksFor({ definition }: Design, { signal, blanks }: PacketWatch): Promise<BlankStudy | null> {
  if (definition.ends.make !== 'formed') return null
  const study = await (blanks ?? blanksOf(definition, signal ? { signal } : {}))
  if (!study) throw refuse('packet', 'Writing the packet was cancelled; nothing was changed.')
  return study
}

/** What the disk refuses is a sentence; anything else is a bug and stays what it is. */
function refusalOf(reason: unknown, out: string): unknown {
  if (reason instanceof PacketRefused) return refuse('--out', reason.message, { found: out })
  const { code, syscall } = reason as NodeJS.ErrnoException
  if (code === undefined || syscall === undefined) return reason
  const why: Readonly<Record<string, string>> = {
    EACCES: 'you may not write there',
    EPERM: 'you may not write there',
    ENOSPC: 'the disk is full',
    EROFS: 'the disk takes no writing',
    ENOTDIR: 'a part of that name is a file',
  }
  return refuse('--out', `The packet cannot be written to ${out}: ${why[code] ?? `the disk says ${code}`}. Nothing was changed.`, {
    found: out,
  })
}

function shopTables(file: string): ShopTables {
  const { shop, faults } = readShopTables(openText(file, 'a table of words and tools'), basename(file))
  if (shop) return shop
  throw new Refused(
    faults.map((says) => ({ path: '--shop', file, line: null, column: null, expected: 'words and tools', found: '', says })),
  )
}
