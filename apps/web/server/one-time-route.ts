import 'server-only'
import { sessionFor } from '@almanac/identity/begin-session'
import type { LinkPurpose } from '@almanac/records/one-time-link'
import { AppError } from '@almanac/runtime/errors'
import type * as z from 'zod'
import { admit } from './admit.ts'
import { BODY_BYTES, jsonWithin } from './body.ts'
import type { OneTimeContext } from './context.ts'
import { requestContext } from './request-context.ts'
import { refuseOtherSites } from './route-handler.ts'
import { toWireError } from './wire-error.ts'

/** Nobody keeps the answer, and nobody else learns the address. */
export const QUIET = { 'cache-control': 'no-store', 'referrer-policy': 'no-referrer', 'x-robots-tag': 'noindex' }

/** An input by its schema, or the sentences that say what is wrong with it. */
export function readBody<T>(schema: z.ZodType<T>, body: unknown): T {
  const { success, data, error } = schema.safeParse(body)
  if (success) return data
  throw new AppError('invalid', `Nothing was saved. ${[...new Set(error.issues.map((issue) => issue.message))].join(' ')}`)
}

/** Whoever just made a sign-in and is to be signed in with it. */
export type Begin = { email: string; password: string }

/**
 * Runs what a link that works once is for, behind the one door. The work answers who is to be signed in, or null for whoever is already; when signing in is held
 * up, the page goes to the sign-in instead (`signedIn: false`).
 */
export async function asOnce<T>(
  request: Request,
  purpose: LinkPurpose,
  token: string,
  schema: z.ZodType<T>,
  work: (context: OneTimeContext, input: T) => Promise<Begin | null>,
): Promise<Response> {
  const context = requestContext(request.headers)
  try {
    refuseOtherSites(request)
    return await admit(context, { once: purpose, token }, { link: purpose, method: request.method }, async (admitted) => {
      const begin = await work(admitted, readBody(schema, await jsonWithin(request, BODY_BYTES.signIn)))
      const session = begin && (await sessionFor(request.headers, begin))
      const answer = Response.json({ signedIn: begin === null || session !== null }, { headers: QUIET })
      for (const cookie of session ?? []) answer.headers.append('set-cookie', cookie)
      return answer
    })
  } catch (error) {
    const wire = toWireError(error, context)
    return Response.json({ message: wire.message, ...wire.data }, { status: wire.status, headers: QUIET })
  }
}
