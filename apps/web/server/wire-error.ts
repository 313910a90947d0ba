import 'server-only'
import type { Failure } from '@almanac/contract/shared'
import { asAppError } from '@almanac/database/database-errors'
import { languageOf } from '@almanac/records/language'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { ORPCError } from '@orpc/server'
import { browserLanguage } from './browser-language.ts'
import type { RequestContext } from './context.ts'

/** A wire error carries a code, whether it may be tried again, and the request id. */
export type WireError = ORPCError<string, Failure>

/** Where the contract refused an input, in words: the field and why. */
function invalidInput(error: ORPCError<string, unknown>): AppError {
  const issues = (error.data as { issues?: { path?: PropertyKey[]; message: string }[] } | undefined)?.issues ?? []
  const words = issues.map((issue) => `${issue.path?.map(String).join('.') || 'input'}: ${issue.message}`)
  return new AppError('invalid', `We couldn’t read this, so nothing was saved. ${words.join('; ')}`, { issues: words })
}

/**
 * The error as whoever asked reads it: in the words of its cause, else, in another language than English, in those of its kind. A known field or state that has
 * English words alone follows them: half understood is more than not said.
 */
function sentenceFor(error: AppError, context: RequestContext): string {
  const locale = context.who?.company.locale ?? browserLanguage(context.headers)
  if (error.spoken) return error.spoken(locale)
  if (languageOf(locale) === 'en') return error.message
  const kind = wordsIn(locale, 'refusal')(`code/${error.code}`)
  return error.code === 'invalid' || error.code === 'conflict' ? `${kind} ${error.message}` : kind
}

/** What `toWireError` made already, further in. */
const isWireError = (error: unknown): error is WireError =>
  error instanceof ORPCError && (error.data as Failure | undefined)?.requestId !== undefined

/** The one place where errors become answers. Unexpected ones are logged once, with the request id, and tell nothing of the inside. */
export function toWireError(error: unknown, context: RequestContext): WireError {
  if (isWireError(error)) return error
  const mapped = asAppError(error) // what sign-in and the request limit meet has not passed by inCompany
  let known = mapped instanceof AppError ? mapped : undefined
  if (!known && error instanceof ORPCError && error.code === 'BAD_REQUEST') known = invalidInput(error)
  if (!known) {
    context.log.error({ requestId: context.requestId, error }, 'unexpected')
    known = new AppError('unexpected', (locale) => wordsIn(locale, 'refusal')('code/unexpected'))
  }
  if (known.code === 'unavailable') context.log.warn({ requestId: context.requestId, error: known.cause ?? known }, 'unavailable')
  if (known.code === 'misconfigured') context.log.error({ requestId: context.requestId, error: known }, 'misconfigured')
  return new ORPCError(known.code, {
    status: known.status,
    message: sentenceFor(known, context),
    data: { code: known.code, retryable: known.retryable, requestId: context.requestId, detail: known.detail },
  })
}
