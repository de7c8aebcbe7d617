/** How a no is said: the sentence a person reads, under `says`, with the status a program reads. */
import type { Context } from 'hono'
import type { ContentfulStatusCode } from 'hono/utils/http-status'

export const no = (c: Context, status: ContentfulStatusCode, says: string, more: object = {}): Response => c.json({ says, ...more }, status)
