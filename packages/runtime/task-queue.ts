import { type Db, PgBoss } from 'pg-boss'
import { config } from './config.ts'
import { log } from './log.ts'
import { QUEUES, type QueueName, type TaskPayloads } from './queues.ts'

/** The schema of the queue's own tables; installed by the migrations' login. */
export const QUEUE_SCHEMA = 'queue'

const PATIENCE = { retryLimit: 5, retryDelay: 2, retryBackoff: true, expireInSeconds: 900 }

const held = globalThis as typeof globalThis & { almanacQueue?: Promise<PgBoss> }

async function open(working: boolean): Promise<PgBoss> {
  const boss = new PgBoss({
    connectionString: config().DATABASE_URL,
    schema: QUEUE_SCHEMA,
    max: working ? 4 : 2,
    migrate: false,
    createSchema: false,
    supervise: working,
    schedule: working,
    reindex: false,
    monitorVacuum: false,
  })
  boss.on('error', (error) => log().error({ error: error.message }, 'task queue'))
  await boss.start()
  return boss
}

/** This process's queue: opened once. `working` for the worker, which also schedules and tidies. */
export function taskQueue(working = false): Promise<PgBoss> {
  held.almanacQueue ??= open(working).catch((error: unknown) => {
    held.almanacQueue = undefined
    throw error
  })
  return held.almanacQueue
}

/** Puts a task on its queue through `db`, which is the transaction that causes it. The payload carries its company. */
export async function sendTask<Q extends QueueName>(
  queue: Q,
  payload: TaskPayloads[Q],
  db: Db,
  singletonKey?: string,
  startAfter?: Date,
): Promise<void> {
  const boss = await taskQueue()
  await boss.send(queue, payload, { ...PATIENCE, db, singletonKey, startAfter })
}

/** Puts a task on its queue by itself, for the nightly fan-out, which changes nothing else. */
export async function sendTaskAlone<Q extends QueueName>(queue: Q, payload: TaskPayloads[Q], singletonKey?: string): Promise<void> {
  const boss = await taskQueue()
  await boss.send(queue, payload, { ...PATIENCE, singletonKey })
}

/** Creates the queues; run by the migrations' login, since it makes tables. */
export async function installQueues(boss: PgBoss): Promise<void> {
  for (const { name, policy } of QUEUES) await boss.createQueue(name, { policy })
}

/** Lets running tasks finish, then closes. */
export async function closeTaskQueue(): Promise<void> {
  const boss = await held.almanacQueue
  held.almanacQueue = undefined
  await boss?.stop({ graceful: true, timeout: 20_000 })
}
