import { closeClients } from '@almanac/database/client'
import { refuseBypassingLogins } from '@almanac/database/login-check'
import { resumeForecasts } from '@almanac/operations/forecasts/resume-forecasts'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import { closeTaskQueue, taskQueue } from '@almanac/runtime/task-queue'
import { HANDLERS } from './handlers.ts'
import { workOn } from './work-on.ts'

async function start(): Promise<void> {
  await refuseBypassingLogins()
  const boss = await taskQueue(true)
  for (const [queue, handle] of Object.entries(HANDLERS)) await workOn(boss, queue, handle as (payload: unknown) => Promise<void>)
  await boss.schedule('nightly', '15 2 * * *', {}, { tz: 'UTC' })
  await resumeForecasts()
  log().info('worker is ready')
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
