import type { ProposeJobs } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { type Proposed, proposeRebeds } from './propose-rebeds.ts'

/**
 * Proposes a rebed for each of several beds somebody chose, with the due window of its forecast: from the day by which 10 of 100 such beds fail to that by
 * which 90 do.
 */
export async function proposeJobs(scope: Scope & { personId: string }, input: ProposeJobs): Promise<{ results: Proposed[] }> {
  return runCommand(scope, 'jobs.propose-jobs', input, async (tx, command) => {
    const bedIds = input.beds.map(({ bedId }) => bedId)
    const results = await proposeRebeds(tx, command, bedIds, ({ forecast }) => ({
      dueEarliest: forecast?.due10Day ?? null,
      dueLatest: forecast?.due90Day ?? null,
    }))
    return { results }
  })
}
