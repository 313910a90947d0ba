import { log } from '@almanac/runtime/log'
import type { PgBoss } from 'pg-boss'

/**
 * Works on one queue, one task at a time. A task that fails is tried again by the queue; after a crash too, so each handler's effect must be
 * the same when it runs twice.
 */
export async function workOn(boss: PgBoss, queue: string, handle: (payload: unknown) => Promise<void>): Promise<void> {
  await boss.work<unknown>(queue, { batchSize: 1, pollingIntervalSeconds: 0.5, heartbeatRefreshSeconds: 3 }, async (tasks) => {
    for (const task of tasks) {
      const begun = performance.now()
      try {
        await handle(task.data)
        log().info({ queue, task: task.id, ms: Math.round(performance.now() - begun) }, 'task done')
      } catch (error) {
        log().error({ queue, task: task.id, error }, 'task failed')
        throw error
      }
    }
  })
}
