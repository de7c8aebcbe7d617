/** The thickest shank a hole has to take. */
import type { FastenerType } from '../../definition/types.js'

/** As the shop gives it; where nobody has said, the fastener's nominal size, and the study says so. m. */
export const largestShank = (type: Pick<FastenerType, 'shank' | 'diameter'>): number => type.shank?.[1] ?? type.diameter.value
