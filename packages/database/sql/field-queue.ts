import { AppError } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { asAppError } from '../database-errors.ts'

type Queue = { companyId: string; personId: string; queueId: string }

/** The highest number taken from a tablet's queue, 0 for none; holds the queue until the transaction ends, so that two of its commands never pass each other. */
export async function lockQueue(tx: Tx, { companyId, personId, queueId }: Queue): Promise<number> {
  await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${`${companyId}:${personId}:${queueId}`}, 0))`
  const [last] = await tx.$queryRaw<{ taken: number }[]>`
    select coalesce(max(sequence), 0)::int as taken from applied_command
    where company_id = ${companyId}::uuid and person_id = ${personId}::uuid and queue_id = ${queueId}::uuid`
  return last?.taken ?? 0
}

/** What may succeed later without a change: then nothing is decided, and the whole transaction ends. */
const mayYetSucceed = (error: AppError) => error.retryable || error.code === 'misconfigured' || error.detail.busy === true

/**
 * Does work inside a transaction so that a refusal takes back that work alone and the transaction goes on: answers the refusal, where there was one. Throws what may
 * succeed later; an unknown error is a refusal too.
 */
export async function attempt<T>(tx: Tx, work: () => Promise<T>): Promise<{ done: T } | { refused: unknown }> {
  await tx.$executeRaw`savepoint attempted`
  try {
    const done = await work()
    await tx.$executeRaw`release savepoint attempted`
    return { done }
  } catch (error) {
    const known = asAppError(error)
    if (known instanceof AppError && mayYetSucceed(known)) throw known
    await tx.$executeRaw`rollback to savepoint attempted`
    return { refused: known }
  }
}
