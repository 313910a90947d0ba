import { giveUpImport } from '@almanac/operations/imports/apply-import'
import { giveUpReading } from '@almanac/operations/imports/read-stored-file'
import { giveUpPlan } from '@almanac/operations/jobs/work-out-plan'
import { giveUpExport } from '@almanac/operations/keeping/export-company'
import type { QueueName, TaskPayloads } from '@almanac/runtime/queues'

/** What is told, and to whom, when a task failed by an error of its own for the last time: where somebody waits at a page that shows its state. */
export const GIVE_UP: { [Q in QueueName]?: (payload: TaskPayloads[Q], error: unknown) => Promise<void> } = {
  'read-file': giveUpReading,
  'apply-import': giveUpImport,
  'export-company': giveUpExport,
  'work-out-plan': giveUpPlan,
}
