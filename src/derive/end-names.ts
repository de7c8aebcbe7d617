/** Names of what an end section is made of, permanent and alike in every trade that meets them. */
export type End = 'nose' | 'tail'

/** Gores count from the joint on the right of travel to the joint on the left; seam k stands between gores k and k + 1. */
export const gorePart = (end: End, k: number): string => `${end}-gore-${k}`
export const capPart = (end: End): string => `${end}-cap`
/** Panels of its lining count from 1 at the right joint, one a side of each rib; the crown's lies inside the header ring. */
export const liningPart = (end: End, panel: number | 'crown'): string => `${end}-lining-${panel}`

/** A seam on the centre line is one, every other stands on both sides. */
export function goreCount(seams: readonly number[]): number {
  return 2 * seams.length + (seams[0] === 0 ? 0 : 1)
}

/** Azimuths of the gores' edges from the right joint to the left one, +pi/2 to -pi/2, rad. */
export function edgeAzimuths(seams: readonly number[]): readonly number[] {
  const outer = [...seams].filter((a) => a !== 0).reverse()
  const centre = seams[0] === 0 ? [0] : []
  return [Math.PI / 2, ...outer, ...centre, ...outer.map((a) => -a).reverse(), -Math.PI / 2]
}
