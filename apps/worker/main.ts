import { closeClients } from '@almanac/database/client'
import { checkAtStart } from '@almanac/database/start-check'
import { resumeForecasts } from '@almanac/operations/forecasts/resume-forecasts'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import { closeTaskQueue, mendQueueTimes, taskQueue } from '@almanac/runtime/task-queue'
import type { PgBoss } from 'pg-boss'
import { HANDLERS } from './handlers.ts'
import { workOn } from './work-on.ts'

const MEND_EVERY_MS = 20_000

async function start(): Promise<void> {
  await checkAtStart()
  const boss = await taskQueue(true)
  await keepTimes(boss)
  for (const [queue, handle] of Object.entries(HANDLERS)) await workOn(boss, queue, handle as (payload: unknown) => Promise<void>)
  await boss.schedule('nightly', '15 2 * * *', {}, { tz: 'UTC' })
  await resumeForecasts()
  log().info('worker is ready')
}

/** Now, and as long as the worker runs: the clock may be set back at any time. */
async function keepTimes(boss: PgBoss): Promise<void> {
  await mendQueueTimes(boss)
  const again = () => mendQueueTimes(boss).catch((error: Error) => log().warn({ error: error.message }, 'task queue'))
  setInterval(again, MEND_EVERY_MS).unref()
}

async function stop(): Promise<void> {
  await closeTaskQueue()
  await closeClients()
  process.exit(0)
}

process.on('SIGTERM', () => void stop())
process.on('SIGINT', () => void stop())

start().catch((error: unknown) => {
  if (error instanceof AppError) log().fatal(error.message)
  else log().fatal({ error }, 'the worker cannot start')
  process.exit(1)
})
