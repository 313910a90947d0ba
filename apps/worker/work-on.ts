import { asAppError } from '@almanac/database/database-errors'
import { AppError } from '@almanac/runtime/errors'
import { log } from '@almanac/runtime/log'
import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'
import { countOwnError, isLastTry } from '@almanac/runtime/task-queue'
import type { PgBoss } from 'pg-boss'

/** A database that is away, a turn that has not come, a row that somebody else held at that moment: nothing that the task itself got wrong. */
const isPassing = (error: unknown) =>
  error instanceof AppError && (error.code === 'unavailable' || error.code === 'rate-limited' || error.detail.busy === true)

/** What the same facts will be refused for each time. */
const isRefusal = (error: unknown) => error instanceof AppError && (error.code === 'invalid' || error.code === 'too-large')

/** Tasks of a queue at one time, where it is not one: a file that was made to take its whole minute holds up no other firm's. */
const AT_ONCE: { [Q in QueueName]?: number } = { 'read-file': 2 }

/**
 * Works on one queue, one task at a time if `AT_ONCE` says nothing else. A task that fails is tried again by the queue; after a crash too, so each handler's effect must be the same when it
 * runs twice. What stopped it from outside is no try of its own; a refusal is its end at once, another error after ten of them: then `giveUp` is told.
 */
export async function workOn<Q extends QueueName>(
  boss: PgBoss,
  queue: Q,
  handle: (payload: TaskPayloads[Q]) => Promise<void>,
  giveUp: (payload: TaskPayloads[Q], error: unknown) => Promise<void> = async () => {},
): Promise<void> {
  const options = { batchSize: 1, pollingIntervalSeconds: 0.5, heartbeatRefreshSeconds: 3, localConcurrency: AT_ONCE[queue] ?? 1 }
  await boss.work<TaskPayloads[Q]>(queue, options, async (tasks) => {
    for (const task of tasks) {
      const begun = performance.now()
      try {
        await handle(task.data)
        log().info({ queue, task: task.id, ms: Math.round(performance.now() - begun) }, 'task done')
      } catch (thrown) {
        const error = asAppError(thrown)
        if (isPassing(error)) {
          log().warn({ queue, task: task.id, error }, 'task broken off; it is taken up again')
          throw error
        }
        log().error({ queue, task: task.id, error }, 'task failed')
        const givenUp = isRefusal(error) || (await isLastTry(boss, task))
        if (givenUp) await giveUp(task.data, error)
        await countOwnError(boss, task, givenUp)
        throw error
      }
    }
  })
}
