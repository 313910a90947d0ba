import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import type { CallBackCause } from '@almanac/records/call'
import { newId } from '@almanac/runtime/ids'

type Owed = {
  cause: CallBackCause
  dueDay: string
  callId?: string
  siteId?: string | null
  jobId?: string
  visitId?: string
  note?: string | null
}

/** Puts somebody on the list of whom to call: by their call, or by the site of what they were promised. */
export async function oweCall(tx: Tx, command: Command, owed: Owed): Promise<string> {
  const { companyId, at } = command
  const { dueDay, ...rest } = owed
  const id = newId()
  await tx.callBack.create({ data: { companyId, id, state: 'open', createdAt: at, dueDay: dateOf(dueDay), ...rest } })
  await command.audit('added', 'call-back', id, { cause: owed.cause, dueDay, jobId: owed.jobId, visitId: owed.visitId })
  await command.announce('call-back', id, 1)
  return id
}
