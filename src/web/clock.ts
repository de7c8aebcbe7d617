/** Days and times by the clock of the screen, as they are written on paper. */

const two = (part: number): string => String(part).padStart(2, '0')

/** `2026-03-04` */
export const dayOf = (date: Date): string => [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())].join('-')

/** An ISO instant as `2026-03-04 10:20`; as it stands where it is none. */
export function onClock(iso: string): string {
  const date = new Date(iso)
  return Number.isNaN(date.getTime()) ? iso : `${dayOf(date)} ${two(date.getHours())}:${two(date.getMinutes())}`
}
