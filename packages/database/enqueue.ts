import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'
import { sendTask } from '@almanac/runtime/task-queue'
import { fromPrisma } from 'pg-boss'
import type { Tx } from './client.ts'

/** Puts a task on the queue inside the transaction that causes it: if that rolls back, there is no task. */
export async function enqueueIn<Q extends QueueName>(
  tx: Tx,
  queue: Q,
  payload: TaskPayloads[Q],
  singletonKey?: string,
  startAfter?: Date,
): Promise<void> {
  await sendTask(queue, payload, fromPrisma(tx), singletonKey, startAfter)
}
