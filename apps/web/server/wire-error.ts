import 'server-only'
import type { Failure } from '@almanac/contract/shared'
import { asAppError } from '@almanac/database/database-errors'
import { AppError } from '@almanac/runtime/errors'
import { ORPCError } from '@orpc/server'
import type { RequestContext } from './context.ts'

/** A wire error carries a code, whether it may be tried again, and the request id. */
export type WireError = ORPCError<string, Failure>

const UNEXPECTED = 'Something went wrong on our side. Nothing was saved; try again, and if it stays, tell us the number below.'

/** Where the contract refused an input, in words: the field and why. */
function invalidInput(error: ORPCError<string, unknown>): AppError {
  const issues = (error.data as { issues?: { path?: PropertyKey[]; message: string }[] } | undefined)?.issues ?? []
  const words = issues.map((issue) => `${issue.path?.map(String).join('.') || 'input'}: ${issue.message}`)
  return new AppError('invalid', `This could not be read, so nothing was saved. ${words.join('; ')}`, { issues: words })
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
    known = new AppError('unexpected', UNEXPECTED)
  }
  if (known.code === 'unavailable') context.log.warn({ requestId: context.requestId, error: known.cause ?? known }, 'unavailable')
  if (known.code === 'misconfigured') context.log.error({ requestId: context.requestId, error: known }, 'misconfigured')
  return new ORPCError(known.code, {
    status: known.status,
    message: known.message,
    data: { code: known.code, retryable: known.retryable, requestId: context.requestId, detail: known.detail },
  })
}
