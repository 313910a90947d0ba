import { closeClients } from '@almanac/database/client'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll } from 'vitest'
import { leaveTestDatabase } from './test-database.ts'

// Where test files share a process: what one leaves behind, the next would take for its own.
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  forgetConfig()
  leaveTestDatabase()
})
