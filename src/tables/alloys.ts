/**
 * Sheet and extrusion alloys. Strengths are the lesser of the two grain directions where the source gives both.
 * Aluminium skins, linings, frames; not steel, not rivets (see rivets.ts). Allowables must be confirmed from the
 * current printed handbook before a coach is certified on them; the status letter says how far each is verified.
 */

import type { Datum, Found, Status } from './datum.js'
import { datum } from './datum.js'

export interface Alloy {
  readonly name: string
  readonly says: string
  /** other names it goes by */
  readonly aliases: readonly string[]
  /** thickness the figures hold for, m; null where the source gives none */
  readonly thickness: readonly [from: number, to: number] | null
  readonly density: Datum
  /** Young's modulus in tension and in compression, Pa */
  readonly E: Datum
  readonly Ec: Datum
  readonly nu: Datum
  /** ultimate and yield strengths, Pa: tension, compression, shear, bearing at edge distance 2.0 D and 1.5 D */
  readonly Ftu: Datum
  readonly Fty: Datum
  readonly Fcy: Datum | null
  readonly Fsu: Datum
  readonly Fbru20: Datum | null
  readonly Fbru15: Datum | null
  /** thermal expansion, 1/K */
  readonly cte: Datum
  /** least elongation at break, a plain number */
  readonly elongation: Datum
}

interface Row {
  readonly name: string
  readonly says: string
  readonly aliases?: readonly string[]
  /** in */
  readonly inches?: readonly [string, string]
  readonly lbPerIn3: string
  /** Msi */
  readonly E: string
  readonly Ec: string
  /** ksi; a trailing ~M marks a figure of another status than the row's */
  readonly Ftu: string
  readonly Fty: string
  readonly Fcy: string | null
  readonly Fsu: string
  readonly Fbru: readonly [at20: string, at15: string] | readonly [at20: string, at15: null] | null
  /** 1e-6 per F */
  readonly cte: string
  /** percent */
  readonly elongation: string
  readonly source: string
  readonly status: Status
}

const MIL = 'MIL-HDBK-5J'
const CTE = 'Aluminum Association table, 68 to 212 F'

const ROWS: readonly Row[] = [
  {
    name: '5052-H34',
    says: 'sheet, strain hardened and stabilised half hard',
    lbPerIn3: '0.097',
    E: '10.1',
    Ec: '10.2',
    Ftu: '34',
    Fty: '25',
    Fcy: '25',
    Fsu: '20',
    Fbru: ['71', '54'],
    cte: '13.2',
    elongation: '4',
    source: `${MIL}, table 3.5.1.0(b1), S basis`,
    status: 'R2',
  },
  {
    name: '5052-H32',
    says: 'sheet, strain hardened and stabilised quarter hard',
    lbPerIn3: '0.097',
    E: '10.1',
    Ec: '10.2',
    inches: ['0.020', '0.113'],
    Ftu: '31',
    Fty: '22',
    Fcy: '22',
    Fsu: '19',
    Fbru: ['65', '50'],
    cte: '13.2',
    elongation: '5',
    source: `${MIL}, table 3.5.1.0(b1), S basis`,
    status: 'R2',
  },
  {
    name: '5052-O',
    says: 'sheet, annealed for stretch forming',
    lbPerIn3: '0.097',
    E: '10.1',
    Ec: '10.2',
    Ftu: '25',
    Fty: '9.5',
    Fcy: '9.5',
    Fsu: '16',
    Fbru: null,
    cte: '13.2',
    elongation: '16',
    source: 'AMS-QQ-A-250/8 minimums, to be confirmed',
    status: 'M',
  },
  {
    name: '3003-H14',
    says: 'sheet, half hard, for linings',
    lbPerIn3: '0.099',
    E: '10.0',
    Ec: '10.1~M',
    Ftu: '20~M',
    Fty: '17~M',
    Fcy: null,
    Fsu: '14',
    Fbru: ['40~M', null],
    cte: '12.9',
    elongation: '8',
    source: "Kutz, Mechanical Engineers' Handbook, table 5 (typical); minimums and bearing by Aluminum Design Manual convention",
    status: 'R2',
  },
  {
    name: '6061-T6',
    says: 'sheet, aged',
    lbPerIn3: '0.098',
    E: '9.9',
    Ec: '10.1',
    inches: ['0.010', '0.249'],
    Ftu: '42',
    Fty: '35',
    Fcy: '35',
    Fsu: '27',
    Fbru: ['88', '67'],
    cte: '13.1',
    elongation: '8',
    source: `${MIL}, table 3.6.2.0(b1), A basis`,
    status: 'R2',
  },
  {
    name: '6063-T6',
    says: 'extrusion',
    lbPerIn3: '0.0975',
    E: '10.0',
    Ec: '10.1',
    Ftu: '30',
    Fty: '25',
    Fcy: '25',
    Fsu: '18',
    Fbru: ['60', null],
    cte: '13.0',
    elongation: '8',
    source: 'Aluminum Design Manual minimums, to be confirmed',
    status: 'M',
  },
  {
    name: 'clad 2024-T3',
    says: 'sheet, clad, to 0.062 in',
    aliases: ['alclad 2024-T3', '2024-T3 clad', '2024-T3 alclad'],
    inches: ['0.010', '0.062'],
    lbPerIn3: '0.100',
    E: '10.5',
    Ec: '10.7',
    Ftu: '59',
    Fty: '39',
    Fcy: '36',
    Fsu: '37',
    Fbru: ['121', '97'],
    cte: '12.9',
    elongation: '12',
    source: `${MIL}, table 3.2.3.0(e1), A basis`,
    status: 'R2',
  },
  {
    name: 'clad 2024-T3',
    says: 'sheet, clad, 0.063 in and over',
    aliases: ['alclad 2024-T3', '2024-T3 clad', '2024-T3 alclad'],
    inches: ['0.063', '0.128'],
    lbPerIn3: '0.100',
    E: '10.5',
    Ec: '10.7',
    Ftu: '61',
    Fty: '40',
    Fcy: '37',
    Fsu: '38',
    Fbru: ['125', '101'],
    cte: '12.9',
    elongation: '15',
    source: `${MIL}, table 3.2.3.0(e1), A basis`,
    status: 'R2',
  },
]

function fromRow(row: Row): Alloy {
  const read = (text: string, unit: string, kind: 'pressure' | 'density' | 'number'): Datum => {
    const [figure = '', status] = text.split('~')
    return datum(`${figure} ${unit}`.trim(), kind, row.source, (status as Status | undefined) ?? row.status)
  }
  const ksi = (text: string): Datum => read(text, 'ksi', 'pressure')
  const band = row.inches
  return Object.freeze({
    name: row.name,
    says: row.says,
    aliases: row.aliases ?? [],
    thickness: band
      ? ([
          datum(`${band[0]} in`, 'length', row.source, row.status).value,
          datum(`${band[1]} in`, 'length', row.source, row.status).value,
        ] as const)
      : null,
    density: read(row.lbPerIn3, 'lb/in3', 'density'),
    E: read(row.E, 'Msi', 'pressure'),
    Ec: read(row.Ec, 'Msi', 'pressure'),
    nu: datum('0.33', 'number', row.source, row.name === '3003-H14' ? 'M' : row.status),
    Ftu: ksi(row.Ftu),
    Fty: ksi(row.Fty),
    Fcy: row.Fcy === null ? null : ksi(row.Fcy),
    Fsu: ksi(row.Fsu),
    Fbru20: row.Fbru ? ksi(row.Fbru[0]) : null,
    Fbru15: row.Fbru?.[1] ? ksi(row.Fbru[1]) : null,
    cte: datum(`${row.cte}e-6 /F`, 'expansion', row.name === '6063-T6' ? row.source : CTE, row.name === '6063-T6' ? 'M' : 'R2'),
    elongation: read(row.elongation, '%', 'number'),
  })
}

export const ALLOYS: readonly Alloy[] = Object.freeze(ROWS.map(fromRow))

const plain = (name: string): string => name.toLowerCase().replace(/\s+/g, ' ').trim()

/** The alloy of that name; with a thickness (m) the band it falls in, nearest where it falls between or outside. */
export function findAlloy(name: string, thickness?: number): Found<Alloy> {
  const named = ALLOYS.filter((each) => plain(each.name) === plain(name) || each.aliases.some((other) => plain(other) === plain(name)))
  const known = [...new Set(ALLOYS.map((each) => each.name))]
  if (named.length === 0) {
    return { ok: false, says: `The alloy "${name}" is not in the table; known are ${known.join(', ')}.`, known }
  }
  const away = ({ thickness: band }: Alloy): number =>
    band && thickness !== undefined ? Math.max(band[0] - thickness, thickness - band[1], 0) : 0
  return { ok: true, row: named.reduce((best, each) => (away(each) < away(best) ? each : best)) }
}
