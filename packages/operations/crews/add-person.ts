import type { AddPerson } from '@almanac/contract/crews'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { personAudit, personColumns } from './write-person.ts'

/** Takes someone on: from now on they can stand on day sheets. */
export async function addPerson(scope: Scope & { personId: string }, input: AddPerson): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'crews.add-person', input, async (tx, command) => {
    const { commandId: _, ...values } = input
    const id = newId()
    await tx.colleague.create({ data: { companyId: scope.companyId, id, ...personColumns(values) } })
    await command.audit('added', 'colleague', id, personAudit(values))
    await command.announce('colleague', id, 1)
    return { id, version: 1 }
  })
}
