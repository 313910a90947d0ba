import { createHash } from 'node:crypto'
import type { ChangedEntity } from '@almanac/contract/changed-entity'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { CHANNEL } from '@almanac/runtime/live'
import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'
import type { Tx } from './client.ts'
import { enqueueIn } from './enqueue.ts'
import { inCompany, type Scope, type TransactionOptions } from './in-company.ts'

/** What an operation leaves behind beside its rows. */
export type Command = {
  companyId: string
  personId: string | null
  at: Date
  /** Append one line to the audit trail. `detail` holds no personal data: ids, states, days, figures. */
  audit: (action: string, entity: string, entityId: string, detail?: Record<string, unknown>) => Promise<void>
  /** Tell open screens that a record changed, once this transaction commits. */
  announce: (entity: ChangedEntity, id: string, version?: number) => Promise<void>
  /** Put a background task on the queue, in this transaction; it is taken up at once, or not before `startAfter`. */
  enqueue: <Q extends QueueName>(
    queue: Q,
    payload: Omit<TaskPayloads[Q], 'companyId'>,
    singletonKey?: string,
    startAfter?: Date,
  ) => Promise<void>
}

type Stored = { operation: string; bodyHash: string; answer: unknown }

/** JSON with sorted keys, so that the same body has the same hash whatever the order it was written in. */
function stable(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(stable).join(',')}]`
  if (value && typeof value === 'object' && !(value instanceof Date)) {
    const entries = Object.entries(value).filter(([, inner]) => inner !== undefined)
    return `{${entries
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, inner]) => `${JSON.stringify(key)}:${stable(inner)}`)
      .join(',')}}`
  }
  return JSON.stringify(value) ?? 'null'
}

/** A command's tools inside a scoped transaction; also for worker tasks, which have no person and no stored answer. */
export function commandTools(tx: Tx, scope: Scope, operation: string, commandId: string | null): Command {
  const at = now()
  return {
    companyId: scope.companyId,
    personId: scope.personId,
    at,
    audit: async (action, entity, entityId, detail = {}) => {
      await tx.auditEntry.create({
        data: {
          companyId: scope.companyId,
          id: newId(),
          at,
          personId: scope.personId,
          commandId,
          operation: `${operation}: ${action}`,
          entity,
          entityId,
          detail: detail as object,
        },
      })
    },
    announce: async (entity, id, version) => {
      await tx.$executeRaw`select pg_notify(${CHANNEL}, ${JSON.stringify({ company: scope.companyId, entity, id, version })})`
    },
    enqueue: async (queue, payload, singletonKey, startAfter) => {
      const whole = { ...payload, companyId: scope.companyId } as unknown as TaskPayloads[typeof queue]
      await enqueueIn(tx, queue, whole, singletonKey, startAfter)
    },
  }
}

type Sent = { commandId: string }
/** Of a command of a tablet: its queue, and its number there. */
type QueueNumber = { queueId: string; sequence: number }
type Sender = Scope & { personId: string }

const bodyHashOf = (scope: Sender, operation: string, input: Sent) =>
  createHash('sha256')
    .update(stable({ operation, person: scope.personId, input }))
    .digest('hex')

/** The answer that stands under the command's id; null when it was never applied. Throws 422 where the id came with another body. */
async function storedAnswer<A>(tx: Tx, scope: Sender, operation: string, input: Sent): Promise<A | null> {
  const stored: Stored | null = await tx.appliedCommand.findUnique({
    where: { companyId_id: { companyId: scope.companyId, id: input.commandId } },
  })
  if (!stored) return null
  if (stored.bodyHash === bodyHashOf(scope, operation, input)) return stored.answer as A
  throw new AppError(
    'command-reused',
    'This was already sent with other contents. The first version stands; load the page again to see it.',
  )
}

/** What a command was answered before, for an operation with long work ahead of its transaction; null when it is new. `runCommand` asks again. */
export const answeredBefore = <A extends object>(scope: Sender, operation: string, input: Sent): Promise<A | null> =>
  inCompany(scope, (tx) => storedAnswer<A>(tx, scope, operation, input))

/**
 * Applies a command once, in one transaction. The same id with the same body gives the stored answer; the same id with another body is
 * refused (422). Two attempts at the same moment wait for each other. `input.commandId` is made by the caller's screen.
 */
export async function runCommand<I extends { commandId: string }, A extends object>(
  scope: Sender,
  operation: string,
  input: I,
  work: (tx: Tx, command: Command) => Promise<A>,
  { number, ...patience }: TransactionOptions & { number?: QueueNumber } = {},
): Promise<A> {
  const { commandId } = input
  return inCompany(
    scope,
    async (tx) => {
      await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${`${scope.companyId}:${commandId}`}, 0))`
      const stored = await storedAnswer<A>(tx, scope, operation, input)
      if (stored) return stored
      const answer = await work(tx, commandTools(tx, scope, operation, commandId))
      const plain = JSON.parse(JSON.stringify(answer)) as A
      await tx.appliedCommand.create({
        data: {
          companyId: scope.companyId,
          id: commandId,
          personId: scope.personId,
          operation,
          bodyHash: bodyHashOf(scope, operation, input),
          answer: plain,
          at: now(),
          ...number,
        },
      })
      return plain
    },
    patience,
  )
}
