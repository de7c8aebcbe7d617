/** Sizes in sentences, in the unit of the examples. */
const round = (n: number): string => String(Math.round(n * 10) / 10)

/** m to `560 mm` */
export const mm = (metres: number): string => `${round(metres * 1000)} mm`

/** rad to `82 deg` */
export const deg = (radians: number): string => `${round((radians * 180) / Math.PI)} deg`
