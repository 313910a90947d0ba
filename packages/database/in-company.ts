import { AppError } from '@almanac/runtime/errors'
import { appClient, type Tx } from './client.ts'
import { asAppError } from './database-errors.ts'

/** Who acts, in which company. Made from the session and the membership read afresh; `personId` is null for the worker. */
export type Scope = { companyId: string; personId: string | null }

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

/** How long a transaction may take; imports ask for more. `snapshot`: it sees the company as it was at its first query, however long it reads. */
export type TransactionOptions = { timeoutMs?: number; snapshot?: boolean }

/**
 * Runs `work` in one transaction that sees and writes the rows of one company only. The scope ends with the transaction. Fails closed:
 * without a proper company id nothing runs. Do not run queries of one transaction at the same time, and make no network call inside.
 */
export async function inCompany<T>(
  scope: Pick<Scope, 'companyId'>,
  work: (tx: Tx) => Promise<T>,
  patience: TransactionOptions = {},
): Promise<T> {
  if (!UUID.test(scope.companyId)) throw new AppError('unexpected', 'No company is in scope, so nothing was read or changed.')
  try {
    return await appClient().$transaction(
      async (tx) => {
        // Limits go with the scope and not with the connection: a pooler refuses or forgets what is asked for when it is opened.
        await tx.$executeRaw`select set_config('app.company_id', ${scope.companyId}, true), set_config('lock_timeout', '10s', true),
          set_config('idle_in_transaction_session_timeout', '60s', true)`
        return await work(tx)
      },
      { timeout: patience.timeoutMs ?? 30_000, maxWait: 10_000, isolationLevel: patience.snapshot ? 'RepeatableRead' : undefined },
    )
  } catch (error) {
    throw asAppError(error)
  }
}

/** The ids of all companies, for the nightly fan-out; each task then works inside one of them. */
export async function companyIds(): Promise<string[]> {
  const rows = await appClient().$queryRaw<{ id: string }[]>`select almanac_company_ids() as id`
  return rows.map((row) => row.id)
}
