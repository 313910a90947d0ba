import type { Command } from '@almanac/database/run-command'

/** Says once that an import or its undoing changed records of these kinds, however many: a notice a record would have every screen fetch for minutes. */
export async function announceRecords(command: Command, batchId: string): Promise<void> {
  await command.announce('import-batch', batchId)
  for (const entity of ['site', 'customer', 'contact', 'softener', 'bed', 'water-supply'] as const) await command.announce(entity, batchId)
}
