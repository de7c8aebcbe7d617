/** What an end looks like: lines of its outer mould line in space and its outlines square on, for drawings only. */
import { loftAt, stretchesOf } from '../../maths/loft.js'
import type { EndDrawn, EndLine, Point3 } from '../jig-nouns.js'
import type { Ground } from './ground.js'
import type { LocalEnd } from './local.js'

/** Shares a line down the end and a line round it are drawn in: at the scales of a sheet its chords cannot be seen. */
const DOWN = 36
const ROUND = 28

export function endDrawn({ ground }: LocalEnd): EndDrawn {
  const { edges, mids, gores } = ground
  return {
    lines: [
      ...edges.map((phi, i) => {
        const joint = i === 0 || i === gores
        const says = joint ? (i === 0 ? 'right joint' : 'left joint') : `gore seam ${i}`
        return down(ground, joint ? (i === 0 ? 'joint-right' : 'joint-left') : `seam-${i}`, says, joint ? 'joint' : 'seam', phi)
      }),
      ...mids.map((phi, i) => down(ground, `mid-${i + 1}`, `middle of gore ${i + 1}`, 'mid', phi)),
      round(ground, 'cap', 'edge of the crown cap', (phi) => ground.capSigma(phi)),
      round(ground, 'floor', 'WL 0', () => ground.floor),
      round(ground, 'toe', 'toe', () => ground.toe),
    ],
    profile: profileOf(ground),
    plan: planOf(ground),
  }
}

const onLoft = (ground: Ground, phi: number, sigma: number): Point3 => {
  const p = loftAt(ground.loft, phi, sigma)
  return [p.r * Math.cos(phi), p.r * Math.sin(phi), p.z]
}

const sideOf = (phi: number): EndLine['side'] => (Math.abs(phi) < 1e-9 ? 'centre' : phi > 0 ? 'right' : 'left')

/** Equal shares of its own length, so that neighbours can be joined point by point. */
function down(ground: Ground, id: string, says: string, kind: EndLine['kind'], phi: number): EndLine {
  const curve = [...ground.seamCurves, ...ground.midCurves].find((c) => Math.abs(c.phi - phi) < 1e-12)
  if (!curve) throw new Error(`no curve of an end at azimuth ${phi}`)
  const { cap } = ground.input.ends
  const points = Array.from({ length: DOWN + 1 }, (_, i) => onLoft(ground, phi, curve.sigmaAt(cap + ((curve.length - cap) * i) / DOWN)))
  return { id, says, kind, side: sideOf(phi), points }
}

function round(ground: Ground, kind: 'cap' | 'floor' | 'toe', says: string, sigma: (phi: number) => number): EndLine {
  const right = Array.from({ length: ROUND + 1 }, (_, i) => {
    const phi = (Math.PI / 2) * (1 - i / ROUND)
    return onLoft(ground, phi, sigma(phi))
  })
  const left = right.slice(0, -1).map(([x, y, z]): Point3 => [x, -y, z])
  return { id: kind, says, kind, side: 'centre', points: [...right, ...left.reverse()] }
}

function profileOf({ loft }: Ground): EndDrawn['profile'] {
  return stretchesOf(loft, 0.08, 1 / 8).map((sigma) => {
    const p = loftAt(loft, 0, sigma)
    return [p.r, p.z] as const
  })
}

/** Seen from above an end reaches as far as its widest level does, which need not be the same level at every azimuth. */
function planOf({ loft }: Ground): EndDrawn['plan'] {
  const reach = (phi: number): number => {
    let [low, high] = [0, loft.section.length]
    for (let i = 0; i < 24; i++) {
      const m = (low + high) / 2
      if (loftAt(loft, phi, m).rSigma > 0) low = m
      else high = m
    }
    return loftAt(loft, phi, (low + high) / 2).r
  }
  const right = Array.from({ length: ROUND + 1 }, (_, i): readonly [number, number] => {
    const phi = (Math.PI / 2) * (1 - i / ROUND)
    const r = reach(phi)
    return [i === 0 ? 0 : r * Math.cos(phi), r * Math.sin(phi)]
  })
  const left = right.slice(0, -1).map(([x, y]) => [x, -y] as const)
  return [...right, ...left.reverse()]
}
