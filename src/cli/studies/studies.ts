/** The heavy studies by name, as the worker knows them: plain data in, plain data out, null when cancelled. */
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

export const STUDIES = { blanks: computeBlanks, fit: computeFit } as const

export type StudyName = keyof typeof STUDIES
export type StudyInput<N extends StudyName> = Parameters<(typeof STUDIES)[N]>[0]
export type StudyResult<N extends StudyName> = ReturnType<(typeof STUDIES)[N]>
