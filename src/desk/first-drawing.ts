/** Draws a coach ahead of the page that opens it. */
import { deskCoach } from './desk-coach.js'
import type { CoachFiles } from './desk-coach-nouns.js'
import type { FirstDrawing } from './drawn-ahead.js'

/** From the side that is looked at first. */
const LOOK = 'left'

/** Null for a coach that does not read: its page opens as text. */
export function firstDrawing(coach: CoachFiles): FirstDrawing | null {
  const opened = deskCoach(coach)
  if ('faults' in opened) return null
  const elevation = opened.elevation(LOOK)
  return { state: opened.state(), elevation: { ...elevation, rivets: Array.from(elevation.rivets, tenth) } }
}

const tenth = (metres: number): number => Math.round(metres * 1e4) / 1e4
