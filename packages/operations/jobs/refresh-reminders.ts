import type { Command } from '@almanac/database/run-command'

/**
 * Has the reminders looked at again, for a rebed that is open silences its bed's reminder. Call it last: it waits for other transactions that
 * ask for the same, and whoever waits should hold nothing that they still need.
 */
export async function refreshReminders(command: Command, job: { kind: string; bedId: string | null }): Promise<void> {
  if (job.bedId !== null) await command.enqueue('raise-reminders', {}, command.companyId)
}
