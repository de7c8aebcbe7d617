/** What is heavy by name, as the worker knows it: plain data in, plain data out, null when cancelled. */
import type { CoachFiles } from '../../desk/desk-coach-nouns.js'
import type { FirstDrawing } from '../../desk/drawn-ahead.js'
import { computeBlanks } from '../../studies/blanks/compute.js'
import { computeFit } from '../../studies/fit/compute-fit.js'

export interface StudyProgress {
  readonly done: number
  readonly of: number
  readonly says: string
}

export interface StudyWatch {
  readonly onProgress?: (progress: StudyProgress) => void
  readonly cancelled?: () => boolean
}

/** The whole desk is large, and the other studies start without it. */
const drawing = async (coach: CoachFiles): Promise<FirstDrawing | null> => (await import('../../desk/first-drawing.js')).firstDrawing(coach)

export const STUDIES = { blanks: computeBlanks, fit: computeFit, drawing } as const

export type StudyName = keyof typeof STUDIES
export type StudyInput<N extends StudyName> = Parameters<(typeof STUDIES)[N]>[0]
export type StudyResult<N extends StudyName> = Awaited<ReturnType<(typeof STUDIES)[N]>>
