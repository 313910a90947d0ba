import { flushCompileCache } from 'node:module'
import { setTimeout as sleep } from 'node:timers/promises'
import { closeClients } from '@almanac/database/client'
import { checkAtStart, whenThere } from '@almanac/database/start-check'
import { resumeForecasts } from '@almanac/operations/forecasts/resume-forecasts'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import type { QueueName } from '@almanac/runtime/queues'
import { closeTaskQueue, mendQueueTimes, scheduleTask, taskQueue } from '@almanac/runtime/task-queue'
import type { PgBoss } from 'pg-boss'
import { GIVE_UP } from './give-up.ts'
import { HANDLERS } from './handlers.ts'
import { workOn } from './work-on.ts'

/** Until they are mended nobody looks for what a dead worker left behind: with its silence and their round it is to stay within half a minute. */
const MEND_EVERY_MS = 5000
const GRACE_MS = 3000
const LAST_MS = 1500

async function start(): Promise<void> {
  await checkAtStart()
  await whenThere(async () => {
    try {
      await workOnAll(await taskQueue(true))
    } catch (error) {
      await closeTaskQueue(0) // begun by half: begin anew
      throw error
    }
  })
  log().info('worker is ready')
  flushCompileCache() // for the next start, should this one be killed
}

async function workOnAll(boss: PgBoss): Promise<void> {
  await mendQueueTimes(boss)
  const begin = <Q extends QueueName>(queue: Q) => workOn(boss, queue, HANDLERS[queue], GIVE_UP[queue])
  for (const queue of Object.keys(HANDLERS) as QueueName[]) await begin(queue)
  await boss.supervise() // what a worker left behind that died is not to wait for a round of looks
  await scheduleTask(boss, 'nightly', '15 2 * * *', {})
  if (config().BOUNCE_IMAP_URL) await scheduleTask(boss, 'read-bounces', '*/5 * * * *', {})
  await resumeForecasts()
}

/** As long as the worker runs: the clock may be set back at any time. */
async function keepTimes(): Promise<void> {
  await taskQueue(true)
    .then(mendQueueTimes)
    .catch((error: Error) => log().warn({ error: error.message }, 'task queue'))
}

/**
 * Lets tasks that are nearly done finish, and hands the others back to the queue: they go on from where they stood, at another worker or at the next start.
 * Ends within a few seconds, whether or not the database is there.
 */
async function stop(): Promise<void> {
  clearInterval(keeping)
  const closed = closeTaskQueue(GRACE_MS).then(closeClients)
  await Promise.race([closed, sleep(GRACE_MS + LAST_MS)]).catch((error: Error) => log().warn({ error: error.message }, 'task queue'))
  process.exit(0)
}

const keeping = setInterval(() => void keepTimes(), MEND_EVERY_MS).unref()
process.on('SIGTERM', () => void stop())
process.on('SIGINT', () => void stop())

start().catch((error: unknown) => {
  if (error instanceof AppError) log().fatal(error.message)
  else log().fatal({ error }, 'the worker cannot start')
  process.exit(1)
})
