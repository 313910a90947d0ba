import { type Clock, type Db, PgBoss } from 'pg-boss'
import { config } from './config.ts'
import { log } from './log.ts'
import { QUEUES, type QueueName, type TaskPayloads } from './queues.ts'

/** The schema of the queue's own tables; installed by the migrations' login. */
export const QUEUE_SCHEMA = 'queue'

/**
 * A worker says every few seconds that it is still at a task (see work-on.ts). A task whose worker has been silent for `heartbeatSeconds` is tried again, which
 * the others look for every `LOOK_EVERY_SECONDS`, and a new one at once: taken up anew within half a minute, whereas long tasks may take their quarter of an hour.
 *
 * A kill, a stop, a lost database say nothing against a task: it is tried again after `retryDelay`, and only one that ends its worker each time is given up,
 * hours later. What is the task's own error costs it a tenth of its tries and a longer wait: see `countOwnError`.
 */
const PATIENCE = { retryLimit: 1000, retryDelay: 2, retryBackoff: false, expireInSeconds: 900, heartbeatSeconds: 12 }
const OWN_ERROR_COSTS = 100
const LONGEST_WAIT_SECONDS = 60
const LOOK_EVERY_SECONDS = 4

/** Runs on when the wall clock is set back: the library's own would wait with every poll and timer until the old time comes again. */
const steadyClock: Clock = {
  now: () => performance.timeOrigin + performance.now(),
  setTimeout: (work, ms) => setTimeout(work, ms),
  clearTimeout: (handle) => clearTimeout(handle as NodeJS.Timeout),
  setInterval: (work, ms) => setInterval(work, ms),
  clearInterval: (handle) => clearInterval(handle as NodeJS.Timeout),
}

const held = globalThis as typeof globalThis & { almanacQueue?: Promise<PgBoss> }

async function open(working: boolean): Promise<PgBoss> {
  const boss = new PgBoss({
    connectionString: config().DATABASE_URL,
    schema: QUEUE_SCHEMA,
    max: working ? 4 : 2,
    migrate: false,
    createSchema: false,
    supervise: working,
    superviseIntervalSeconds: LOOK_EVERY_SECONDS,
    monitorIntervalSeconds: LOOK_EVERY_SECONDS,
    schedule: working,
    clock: steadyClock,
    clockMonitorIntervalSeconds: 30, // how soon the schedule follows the database's clock
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

/** Asks for a task by the clock: `cron` in UTC. */
export async function scheduleTask<Q extends QueueName>(boss: PgBoss, queue: Q, cron: string, payload: TaskPayloads[Q]): Promise<void> {
  await boss.schedule(queue, cron, payload, { ...PATIENCE, tz: 'UTC' })
}

type Claimed = { id: string; retryCount: number }

/** Whether a task that has just failed by an error of its own was at its last try. */
export async function isLastTry(boss: PgBoss, { id, retryCount }: Claimed): Promise<boolean> {
  const { rows } = await boss.getDb().executeSql(`select retry_limit as "limit" from ${QUEUE_SCHEMA}.job where id = $1`, [id])
  return rows.length > 0 && rows[0].limit - OWN_ERROR_COSTS <= retryCount
}

/** Makes a task that failed by an error of its own wait twice as long before its next try, and have fewer of them; none when it is given up. */
export async function countOwnError(boss: PgBoss, { id, retryCount }: Claimed, givenUp: boolean): Promise<void> {
  await boss.getDb().executeSql(
    `update ${QUEUE_SCHEMA}.job set retry_delay = least(${LONGEST_WAIT_SECONDS}, retry_delay * 2),
      retry_limit = case when $3 then retry_count else retry_limit - ${OWN_ERROR_COSTS} end
      where id = $1 and state = 'active' and retry_count = $2`,
    [id, retryCount, givenUp],
  )
}

/**
 * Takes back to the present what was stamped while the database's clock stood in the future: nothing would be scheduled, looked after or tried again before
 * that time came. A task put off on purpose keeps its distance from when it was asked for.
 */
export async function mendQueueTimes(boss: PgBoss): Promise<void> {
  const ahead = (column: string) => `${column} > now() + interval '1 minute'`
  const claims = (table: string, columns: string[]) =>
    `update ${QUEUE_SCHEMA}.${table} set ${columns.map((name) => `${name} = least(${name}, now())`).join(', ')} where ${columns.map(ahead).join(' or ')}`
  const job = `${QUEUE_SCHEMA}.job`
  for (const statement of [
    claims('version', ['cron_on', 'bam_on', 'flow_on', 'reindex_on', 'monitor_backoff_on']),
    claims('queue', ['monitor_claim_on', 'monitor_on', 'maintain_on']),
    `update ${job} set started_on = least(started_on, now()), heartbeat_on = least(heartbeat_on, now())
      where state = 'active' and (${ahead('heartbeat_on')} or ${ahead('started_on')})`,
    // A retry is put off by a minute at the most.
    `update ${job} set start_after = now() where state = 'retry' and start_after > now() + interval '3 minutes'`,
    `update ${job} set start_after = now() + (start_after - created_on), created_on = now() where state = 'created' and ${ahead('created_on')}`,
    // A night's run of that time would count as run already when its night comes.
    `delete from ${job} where state > 'active' and singleton_on > now() at time zone 'utc' + interval '1 hour'`,
  ])
    await boss.getDb().executeSql(statement)
}

/** Creates the queues; run by the migrations' login, since it makes tables. */
export async function installQueues(boss: PgBoss): Promise<void> {
  for (const { name, policy } of QUEUES) await boss.createQueue(name, { policy })
}

/** Lets running tasks finish for so long, hands back what is not done by then, to be tried again, and closes. */
export async function closeTaskQueue(graceMs = 20_000): Promise<void> {
  const opened = held.almanacQueue
  held.almanacQueue = undefined
  const boss = await opened?.catch(() => undefined) // one that could not be opened need not be closed
  await boss?.stop({ graceful: graceMs > 0, timeout: graceMs })
}
