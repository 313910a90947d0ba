import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'

/** Has past forecasts held against what came again, now; the worker does it and the page follows by itself. */
export async function askBacktest(scope: Scope & { personId: string }, input: { commandId: string }): Promise<{ asked: true }> {
  return runCommand(scope, 'forecasts.ask-backtest', input, async (_tx, command) => {
    await command.enqueue('backtest-company', {}, scope.companyId)
    return { asked: true as const }
  })
}
