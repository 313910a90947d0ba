import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'

/** Marks the address that a mail came back from, if it is still its reader's: nothing is sent there until it is corrected. */
export async function markDeadEmail(
  tx: Tx,
  command: Command,
  { contactId, channel, address }: { contactId: string; channel: string; address: string },
): Promise<void> {
  if (channel !== 'email') return
  const { companyId } = command
  const { count } = await tx.contact.updateMany({
    where: { companyId, id: contactId, email: address },
    data: { deadEmail: address, version: { increment: 1 } },
  })
  if (count > 0) await command.announce('contact', contactId)
}
